import type { ReadyPlan } from '../domain/batch/result/plan'
import type { BuyingNeed } from '../domain/cost/buying'
import { batchNeeds } from '../domain/cost/run-cost'
import type { BuyingRun, Ledger } from './ledger'

/** What all batches on the list need, with what is there of it: the one in hand and those kept. */
export function buyingNeeds(
  { buying: { times, runs, stock }, work }: Ledger,
  inHand: ReadyPlan | undefined,
): BuyingNeed[] {
  const sums = new Map<string, number>()
  const add = (id: string, amount: number) => sums.set(id, (sums.get(id) ?? 0) + amount)
  if (inHand && times > 0) for (const { id, amount } of batchNeeds(inHand, times)) add(id, amount)
  for (const run of runs)
    for (const [id, amount] of Object.entries(run.needs)) add(id, amount * run.times)
  const bars = (inHand?.bars?.count ?? 0) * times
  for (const { material, perBar } of work.packaging) add(material, bars * perBar)
  return [...sums]
    .filter(([, need]) => need > 0)
    .map(([material, need]) => ({ material, need, stock: stock[material] ?? 0 }))
}

/** The Ledger with a batch kept on its buying list. */
export function withRun(ledger: Ledger, run: BuyingRun): Ledger {
  const { buying } = ledger
  return { ...ledger, buying: { ...buying, runs: [...buying.runs, run] } }
}

/** An id that no batch on the list has. */
export function freshRunId({ buying }: Ledger): string {
  const numbers = buying.runs.map(({ id }) => Number(id.replace('run-', '')))
  return `run-${Math.max(0, ...numbers.filter(Number.isFinite)) + 1}`
}

/** The Ledger with a kept batch made so often; undefined takes it off the list. */
export function withRunTimes(ledger: Ledger, id: string, times: number | undefined): Ledger {
  const { buying } = ledger
  const runs =
    times === undefined
      ? buying.runs.filter((run) => run.id !== id)
      : buying.runs.map((run) => (run.id === id ? { ...run, times } : run))
  return { ...ledger, buying: { ...buying, runs } }
}

/** The Ledger with what is there of a material, in g or pieces; undefined means nothing. */
export function withStock(ledger: Ledger, material: string, amount: number | undefined): Ledger {
  const others = Object.entries(ledger.buying.stock).filter(([id]) => id !== material)
  const stock = Object.fromEntries(
    amount === undefined ? others : [...others, [material, amount] as const],
  )
  return { ...ledger, buying: { ...ledger.buying, stock } }
}
