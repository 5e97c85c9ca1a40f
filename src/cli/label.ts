import { jsonSchemas } from '../data/json-schema'
import { labelFacts } from '../data/label-facts'
import { library } from '../data/library'
import { type Label, labelOf } from '../domain/label/label'
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
  const answered = labelOf(file.plan, library, labelFacts)
  if (answered.status === 'refused')
    return allInvalid(answered.reasons.map((message) => ({ path: 'superfat', message })))
  return solved(asText ? labelText(answered.label) : answered.label)
}

function labelText(one: Label): string {
  const named = one.allergens.filter(({ naming }) => naming !== 'below')
  const net = one.netWeight
  return [
    one.product ?? 'Soap',
    ...(net ? [`Net weight ${net.nominalG} g (${net.ounces.toFixed(2)} oz)`] : []),
    ...(one.batchCode === null ? [] : [`Batch ${one.batchCode}`]),
    ...(one.readyOn === null ? [] : [`Ready on ${one.readyOn}`]),
    '',
    `Ingredients, as put in: ${one.ingredientsAsPutIn}`,
    '',
    `Ingredients, as made: ${one.ingredientsAsMade}`,
    ...(named.length > 0 ? ['', `Allergens named (list as of ${one.allergenListAsOf}):`] : []),
    ...named.map(({ name, lowPercent, mostPercent, naming }) => {
      const why = naming === 'certain' ? '' : ', named to be safe'
      return `  ${name}: ${lowPercent.toFixed(3)} to ${mostPercent.toFixed(3)} %${why}`
    }),
    '',
    ...one.cautions,
    ...(one.responsiblePerson === null ? [] : ['', one.responsiblePerson]),
    '',
    'To settle before printing:',
    ...one.toSettle.map((line) => `- ${line}`),
    ...one.duties.flatMap(({ name, asOf, duties }) => [
      '',
      `What the law still asks, ${name} (as of ${asOf}):`,
      ...duties.map((line) => `- ${line}`),
    ]),
    '',
    one.notice,
  ].join('\n')
}
