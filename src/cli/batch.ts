import { batchFacts } from '../data/batch-facts'
import { lyeCautions } from '../data/cautions'
import { batchFile } from '../data/batch-file'
import { fileSchema } from '../data/ledger-schemas'
import { actualReport } from '../domain/batch/actual/actuals'
import type { ReadyPlan } from '../domain/batch/result/plan'
import { sheetOf } from '../domain/batch/sheet/sheet'
import { sheetText } from '../domain/batch/sheet/sheet-text'
import { soapComposition } from '../domain/batch/react/soap-composition'
import type { MassUnit } from '../domain/units'
import { planFile } from './batch-plan'
import { allInvalid, type Command, type Flags, invalid, type Result, solved } from './command'
import { OILS_FLAG, OILS_HELP } from './own-oils'
import { isMassUnit, isSheetForm, SHEET_FORMS, withSheetForm } from './sheet-flag'
import { sheetHtml } from './sheet-html'
import type { Surroundings } from './surroundings'

export const batch: Command = {
  flags: { sheet: { type: 'string' }, unit: { type: 'string' }, ...OILS_FLAG },
  flagHelp: [
    '--sheet [text|html]     print the sheet for the workshop',
    '--unit g|kg|oz|lb       unit of the weights on the sheet, g if left out',
    OILS_HELP,
  ],
  schema: () => fileSchema(batchFile),
  arrange: withSheetForm,
  run: answer,
}

async function answer(text: string, flags: Flags, around: Surroundings): Promise<Result> {
  const { sheet, unit = 'g' } = flags
  if (!isMassUnit(unit))
    return invalid('--unit', `There is no unit "${String(unit)}". Use g, kg, oz or lb.`)
  const file = await planFile(text, flags, around)
  if (file.status === 'invalid') return allInvalid(file.problems)
  if (sheet !== undefined) return sheetResult(file.plan, sheet, unit)
  const { library } = file
  const actual = file.actual && actualReport(file.plan, file.actual, library, batchFacts)
  if (actual?.status === 'invalid') return allInvalid(actual.problems)
  return solved({
    ...file.plan,
    soaps: soapComposition(file.plan.outcome, library.oils, library.acids),
    ...(actual ? { actual: actual.report } : {}),
    release: file.release,
    cautions: lyeCautions,
  })
}

function sheetResult(plan: ReadyPlan, form: string | boolean, unit: MassUnit): Result {
  if (!isSheetForm(form))
    return invalid(
      '--sheet',
      `There is no sheet as "${String(form)}". Use ${SHEET_FORMS.join(' or ')}.`,
    )
  const printed = sheetOf(plan, lyeCautions)
  if (printed.status === 'refused')
    return allInvalid(printed.reasons.map((message) => ({ path: 'superfat', message })))
  return solved(form === 'html' ? sheetHtml(printed.sheet, unit) : sheetText(printed.sheet, unit))
}
