import {
  addDependencies,
  create,
  evaluateDependencies,
  multiplyDependencies,
  unitDependencies,
} from 'mathjs'
import { said, type Typed } from './typed-field'

const math = create(
  { ...addDependencies, ...evaluateDependencies, ...multiplyDependencies, ...unitDependencies },
  { predictable: true },
)

/** Two quantities side by side add up, as in "1 lb 4 oz". */
const SIDE_BY_SIDE = /([a-z])\s+(?=\d)/giu

/** Signs for times between two figures. */
const TIMES = /(?<=\d|\))\s*[x×·]\s*(?=[\d(])/giu

/** Symbols that a sum or a quantity can hold: plus and times only, since a minus is a range. */
const ALLOWED = /^[\d\s.,+*()a-z]+$/iu

/**
 * Reads a quantity such as "1.5 kg" or a sum such as "2 * 450 g" as a number of `unit`; without a unit
 * of its own the text must come to a plain number.
 */
export function readQuantity(text: string, unit: string | undefined): Typed {
  const example = unit === undefined ? 'Try 5.5' : `Try 5.5 or 5.5 ${unit}`
  const sum = text.replace(TIMES, ' * ')
  if (!ALLOWED.test(sum) || !/\d/u.test(sum))
    return { status: 'invalid', message: `Not a number. ${example}` }
  const value = evaluated(sum.replace(/(\d),(\d)/gu, '$1.$2').replace(SIDE_BY_SIDE, '$1 + '), unit)
  if (value === undefined || !Number.isFinite(value))
    return { status: 'invalid', message: `Not a number. ${example}` }
  const figure = `${said(value)} ${unit ?? ''}`.trim()
  const understood = sum.includes('+') ? `${figure}, added up` : figure
  return { status: 'number', value, understood }
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
