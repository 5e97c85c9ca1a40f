import { type Problem, problem } from '../blend/check-blend'
import { WHOLE_PERCENT } from '../units'
import type { CostChoices } from './run-cost'

/** The figures among the choices. */
type Figure = Exclude<keyof CostChoices, 'charge' | 'packaging'>

const NOT_BELOW_ZERO: readonly Figure[] = [
  'minutesPerBatch',
  'minutesPerBar',
  'rateMinorPerHour',
  'overheadMinorPerBatch',
  'overheadMinorPerMonth',
]
const PARTS_LOST: readonly Figure[] = ['wastePercent', 'rejectPercent']

/** What is wrong with the choices of a cost; empty where it can be reckoned. */
export function checkCostChoices(choices: CostChoices, path: string): Problem[] {
  const below = NOT_BELOW_ZERO.filter((key) => !(choices[key] >= 0)).map((key) =>
    problem(`${path}.${key}`, `${choices[key]} stands here; give 0 or more.`),
  )
  const lost = PARTS_LOST.filter((key) => {
    const percent = choices[key]
    return !(percent >= 0 && percent < WHOLE_PERCENT)
  }).map((key) =>
    problem(
      `${path}.${key}`,
      `${choices[key]} % is lost; a loss is from 0 to under 100 %. Give one in that range.`,
    ),
  )
  const uses = choices.packaging.flatMap(({ perBar }, at) =>
    perBar >= 0
      ? []
      : [problem(`${path}.packaging[${at}].perBar`, `${perBar} a bar; give 0 or more.`)],
  )
  const { overheadMinorPerMonth: month, batchesPerMonth: batches } = choices
  const spread =
    month > 0 && !(batches > 0)
      ? [
          problem(
            `${path}.batchesPerMonth`,
            `Overhead of a month is shared by its batches, and ${batches} are given. Give how many you make.`,
          ),
        ]
      : []
  return [...below, ...lost, ...uses, ...spread]
}
