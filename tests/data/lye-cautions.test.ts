import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { CAUTION_WORDS } from '../setup/caution-words'
import { lyeCautions } from '../../src/data/cautions'
import { batchFacts } from '../../src/data/batch-facts'
import { library } from '../../src/data/library'
import { planBatch } from '../../src/domain/batch/result/plan'
import { sheetOf } from '../../src/domain/batch/sheet/sheet'
import { sheetText } from '../../src/domain/batch/sheet/sheet-text'

test.for(CAUTION_WORDS)('the cautions say what %s asks for', ([, words]) => {
  expect(lyeCautions.join('\n')).toMatch(words)
})

test.for(CAUTION_WORDS)('so does the sheet as text: %s', ([, words]) => {
  const plan = planBatch(
    {
      blend: { olive: 100 },
      oilGrams: 1000,
      alkali: { naoh: 100 },
      purity: { naoh: 98 },
      superfat: 12,
      water: { lyeConcentration: 33 },
    },
    library,
    batchFacts,
  )
  if (plan.status !== 'ready') throw new Error(JSON.stringify(plan.problems))
  const printed = sheetOf(plan, lyeCautions)
  if (printed.status !== 'ready') throw new Error(printed.reasons.join(' '))
  expect(sheetText(printed.sheet, 'g')).toMatch(words)
})

test('every precautionary statement they follow is named in data/lye-cautions.md', () => {
  const notes = readFileSync(new URL('../../data/lye-cautions.md', import.meta.url), 'utf8')
  for (const code of ['P301+P330+P331', 'P303+P361+P353', 'P305+P351+P338', 'P260', 'P280'])
    expect(notes).toContain(code)
})
