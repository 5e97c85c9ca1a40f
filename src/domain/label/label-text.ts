import { releaseLine } from '../batch/release/release'
import type { Label } from './label'

/** All that a label says, with what is still to settle, as plain text. */
export function labelText(one: Label): string {
  const named = one.allergens.filter(({ naming }) => naming !== 'below')
  const net = one.netWeight
  return [
    one.product ?? 'Soap',
    releaseLine(one.release),
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
