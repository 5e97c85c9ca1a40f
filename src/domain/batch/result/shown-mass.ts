import { GRAMS_PER, type MassUnit } from '../../units'
import type { Ingredient, IngredientKind } from './ingredients'
import { decimalsOf } from '../weigh/rounding'
import { NOISE_COUNT, NOISE_PART } from '../../noise'

/** Decimals of a weight that was not rounded to a scale, in g. */
const EXACT_DECIMALS = 1

/** How a figure is cut to its decimals. */
export type Direction = 'nearest' | 'down' | 'up'

/**
 * Hydroxide is shown no heavier than it is; fat, acid and water no lighter. So a batch weighed as shown is
 * never more alkaline than it was reckoned, whatever the unit and with or without a scale.
 */
const DIRECTIONS: Readonly<Record<IngredientKind, Direction>> = {
  alkali: 'down',
  oil: 'up',
  extraFat: 'up',
  acid: 'up',
  water: 'up',
  cookWater: 'up',
  liquid: 'up',
  additive: 'nearest',
  scent: 'nearest',
}

/** The kind of the line with this key, such as `alkali:naoh`. */
export function kindOfKey(key: string): IngredientKind {
  const [kind = ''] = key.split(':')
  return isKind(kind) ? kind : 'additive'
}

function isKind(kind: string): kind is IngredientKind {
  return kind in DIRECTIONS
}

const OPPOSITE: Readonly<Record<Direction, Direction>> = {
  down: 'up',
  up: 'down',
  nearest: 'nearest',
}

/**
 * How a weight of this kind is cut: one that goes into the pot or lies in it as the table says, one that is to
 * be taken out the other way, so that what stays is never more alkaline either.
 */
export function directionOf(kind: IngredientKind, way: 'in' | 'out' = 'in'): Direction {
  return way === 'in' ? DIRECTIONS[kind] : OPPOSITE[DIRECTIONS[kind]]
}

/** What decides how a line's weight is shown. */
export type ShownLine = Pick<Ingredient, 'kind' | 'grams' | 'stepG'>

/** A figure in a unit, already cut to the decimals it is to be written with. */
export interface ShownFigure {
  readonly value: number
  readonly decimals: number
}

/** A weight of a weighing list as text, cut the way its kind asks for: "17.3 g". */
export function shownLine({ kind, grams, stepG }: ShownLine, unit: MassUnit): string {
  return shownMass(grams, unit, stepG, DIRECTIONS[kind])
}

/** The same as a figure, for whoever writes numbers in another way. */
export function lineFigure({ kind, grams, stepG }: ShownLine, unit: MassUnit): ShownFigure {
  return massFigure(grams, unit, stepG, DIRECTIONS[kind])
}

/**
 * A weight in a unit, with as many decimals as the scale's step needs: read back and put to the nearest
 * mark it is the same weight, whatever the unit. Without a step, a tenth of a gram.
 */
export function shownMass(
  grams: number,
  unit: MassUnit,
  stepG: number | null,
  direction: Direction = 'nearest',
): string {
  const { value, decimals } = massFigure(grams, unit, stepG, direction)
  return `${value.toFixed(decimals)} ${unit}`
}

/** A weight in g as a figure in a unit, with the decimals of the scale's step, g. */
export function massFigure(
  grams: number,
  unit: MassUnit,
  stepG: number | null,
  direction: Direction,
): ShownFigure {
  const decimals = massDecimals(unit, stepG)
  const places = (grams / GRAMS_PER[unit]) * 10 ** decimals
  const noise = stepG === null ? NOISE_COUNT : ON_MARK_PLACES
  const whole = {
    nearest: () => Math.round(places),
    down: () => Math.floor(places + noise),
    up: () => Math.ceil(places - noise),
  }[direction]()
  return { value: whole / 10 ** decimals, decimals }
}

/** The part of the last place that may be noise where a weight lies on a scale's mark. */
const ON_MARK_PLACES = 1e-3

/** Decimals of steps that are written short, such as 0.005 g; more belong to a step of another unit. */
const MOST_DECIMALS = 3

/**
 * Decimals for a weight in a unit: the figure's last place is a step of the scale (g) where that is a short
 * figure, else worth at most half of one, so that a figure cut down or up still reads as the same mark.
 */
export function massDecimals(unit: MassUnit, stepG: number | null): number {
  const step = (stepG ?? 10 ** -EXACT_DECIMALS) / GRAMS_PER[unit]
  const written = decimalsOf(Number(step.toPrecision(MOST_DECIMALS + 1)))
  if (written <= MOST_DECIMALS) return written
  const places = Math.max(0, Math.ceil(-Math.log10(step) - NOISE_COUNT))
  const place = 10 ** -places
  const exact = Math.abs(place / step - 1) < NOISE_PART
  return exact || place <= step / 2 ? places : places + 1
}
