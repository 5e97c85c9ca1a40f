import { jsonSchemas } from '../data/json-schema'
import { labelFacts } from '../data/label-facts'
import { library } from '../data/library'
import { labelOf } from '../domain/label/label'
import { labelText } from '../domain/label/label-text'
import { planFile } from './batch-plan'
import { allInvalid, type Command, type Result, solved } from './command'

export const label: Command = {
  says: 'the words of a bar’s label: ingredients both ways, allergens, net weight, what the law still asks',
  flags: { text: { type: 'boolean' } },
  flagHelp: ['--text   as text instead of JSON'],
  schema: jsonSchemas.batch,
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
