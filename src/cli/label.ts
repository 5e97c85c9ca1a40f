import { batchFile } from '../data/batch-file'
import { fileSchema } from '../data/ledger-schemas'
import { labelFacts } from '../data/label-facts'
import { library } from '../data/library'
import { labelOf } from '../domain/label/label'
import { labelText } from '../domain/label/label-text'
import { planFile } from './batch-plan'
import { allInvalid, type Command, type Result, solved } from './command'

export const label: Command = {
  flags: { text: { type: 'boolean' } },
  flagHelp: ['--text   as text instead of JSON'],
  schema: () => fileSchema(batchFile),
  run: (text, flags) => Promise.resolve(answer(text, flags.text === true)),
}

function answer(text: string, asText: boolean): Result {
  const file = planFile(text)
  if (file.status === 'invalid') return allInvalid(file.problems)
  const answered = labelOf(file.plan, library, labelFacts, file.release)
  if (answered.status === 'refused')
    return allInvalid(answered.reasons.map((message) => ({ path: 'superfat', message })))
  return solved(asText ? labelText(answered.label) : answered.label)
}
