import { batchFile } from '../data/batch-file'
import { fileSchema } from '../data/ledger-schemas'
import { labelFacts } from '../data/label-facts'
import { labelOf } from '../domain/label/label'
import { labelText } from '../domain/label/label-text'
import { planFile } from './batch-plan'
import { allInvalid, type Command, type Flags, type Result, solved } from './command'
import { OILS_FLAG, OILS_HELP } from './own-oils'
import type { Surroundings } from './surroundings'

export const label: Command = {
  flags: { text: { type: 'boolean' }, ...OILS_FLAG },
  flagHelp: ['--text             as text instead of JSON', OILS_HELP],
  schema: () => fileSchema(batchFile),
  run: answer,
}

async function answer(text: string, flags: Flags, around: Surroundings): Promise<Result> {
  const file = await planFile(text, flags, around)
  if (file.status === 'invalid') return allInvalid(file.problems)
  const answered = labelOf(file.plan, file.library, labelFacts, file.release)
  if (answered.status === 'refused')
    return allInvalid(answered.reasons.map((message) => ({ path: 'superfat', message })))
  return solved(flags.text === true ? labelText(answered.label) : answered.label)
}
