import measuresFile from '../../data/measures.json'
import oilsFile from '../../data/oils.json'
import type { Brief } from '../../src/domain/optimise/brief/brief'

/*
 * An answer's check without a line of the product: straight from the data files, by the definition of
 * a measure that data/measures.md gives.
 */

/** In percent, points, or of money one part in a million. */
const TOLERANCE = 1e-6

interface MeasureRow {
  readonly id: string
  readonly offset?: number
  readonly weights?: Readonly<Record<string, { readonly weight: number }>>
  readonly unsaponifiable?: { readonly pointsPerGPer100G: number; readonly cap: number } | null
}
interface OilRow {
  readonly id: string
  readonly acids: Readonly<Record<string, { readonly typical: number }>>
  readonly unsaponifiableGPerKg: { readonly typical: number }
}
const MEASURES: readonly MeasureRow[] = measuresFile
const OILS: readonly OilRow[] = oilsFile

/** A measure's value of a blend: the weight average of its oils' values. */
export function valueOf(brief: Brief, measure: string, blend: Readonly<Record<string, number>>) {
  let value = 0
  for (const [oil, share] of Object.entries(blend))
    value += (share / 100) * oilsValue(brief, measure, oil)
  return value
}

/**
 * All that is wrong with a blend as an answer to a brief, of typical lots. A robust brief asks more; but
 * typical lots lie between the others, so what is wrong for them is wrong for it.
 */
export function faults(brief: Brief, blend: Readonly<Record<string, number>>): string[] {
  const wrong: string[] = []
  const keep = (what: string, value: number, min = -Infinity, max = Infinity) => {
    const slack = TOLERANCE * (what === 'cost' ? Math.max(1, Math.abs(value)) : 1)
    if (!(value >= min - slack && value <= max + slack))
      wrong.push(`${what} ${value}: ${min} to ${max}`)
  }
  const shareOf = (oils: readonly string[]) => oils.reduce((sum, oil) => sum + (blend[oil] ?? 0), 0)
  keep('sum', shareOf(Object.keys(blend)), 100, 100)
  for (const oil of Object.keys(blend))
    if (!brief.oils[oil]) wrong.push(`${oil} is not on the shelf`)
  for (const [oil, { min, max }] of Object.entries(brief.oils))
    keep(oil, blend[oil] ?? 0, min ?? 0, max ?? 100)
  for (const { name, oils, min, max } of brief.groups) keep(name, shareOf(oils), min, max)
  for (const [measure, { min, max }] of Object.entries(brief.measures))
    keep(measure, valueOf(brief, measure, blend), min, max)
  return wrong
}

function oilsValue(brief: Brief, measure: string, oil: string): number {
  if (measure === 'cost') return brief.oils[oil]?.pricePerKg ?? NaN
  const row = MEASURES.find(({ id }) => id === measure)
  const { acids, unsaponifiableGPerKg } = OILS.find(({ id }) => id === oil) ?? NO_OIL
  const shares = Object.entries(acids).map(([acid, { typical }]) => ({ acid, typical }))
  const whole = shares.reduce((sum, { typical }) => sum + typical, 0)
  const points = shares.reduce(
    (sum, { acid, typical }) =>
      sum + (row?.weights?.[acid]?.weight ?? NaN) * ((100 * typical) / whole),
    row?.offset ?? NaN,
  )
  const extra = row?.unsaponifiable
  if (!extra) return points
  return points + Math.min(extra.cap, (extra.pointsPerGPer100G * unsaponifiableGPerKg.typical) / 10)
}

const NO_OIL = { acids: {}, unsaponifiableGPerKg: { typical: NaN } }
