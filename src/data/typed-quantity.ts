import {
  addDependencies,
  create,
  divideDependencies,
  evaluateDependencies,
  multiplyDependencies,
  subtractDependencies,
  unitDependencies,
  unaryMinusDependencies,
} from 'mathjs'
import type { Typed } from './typed-number'

const math = create(
  {
    ...addDependencies,
    ...divideDependencies,
    ...evaluateDependencies,
    ...multiplyDependencies,
    ...subtractDependencies,
    ...unaryMinusDependencies,
    ...unitDependencies,
  },
  { predictable: true },
)

/** Two quantities side by side add up, as in "1 lb 4 oz". */
const SIDE_BY_SIDE = /([a-z])\s+(?=\d)/giu

/** Symbols that a sum or a quantity can hold; anything else is no business of a number field. */
const ALLOWED = /^[\d\s.,+\-*/()a-z]+$/iu

/**
 * Reads a quantity such as "1.5 kg" or a sum such as "2 * 450 g" as a number of `unit`; without a unit
 * of its own the text must come to a plain number.
 */
export function readQuantity(text: string, unit: string | undefined): Typed {
  const example = unit === undefined ? 'Try 5.5' : `Try 5.5 or 5.5 ${unit}`
  if (!ALLOWED.test(text) || !/\d/u.test(text))
    return { status: 'invalid', message: `Not a number. ${example}` }
  const value = evaluated(text.replace(/(\d),(\d)/gu, '$1.$2').replace(SIDE_BY_SIDE, '$1 + '), unit)
  if (value === undefined || !Number.isFinite(value))
    return { status: 'invalid', message: `Not a number. ${example}` }
  return { status: 'number', value }
}

/** The value in `unit`, or undefined where the text means nothing as such. */
function evaluated(expression: string, unit: string | undefined): number | undefined {
  try {
    const value: unknown = math.evaluate(expression)
    if (typeof value === 'number') return value
    if (!(value instanceof math.Unit) || unit === undefined) return undefined
    return value.toNumber(unit)
  } catch (error) {
    if (error instanceof Error) return undefined
    throw error
  }
}
