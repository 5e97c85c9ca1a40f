import { library } from '../../state/library'
import type { Blend } from '../../domain/blend/blend'
import { standingOf } from '../../domain/blend/compare'
import type { Measure } from '../../domain/blend/measure'
import type { Oil } from '../../domain/blend/oil'
import { measureOfOil } from '../../domain/blend/measure'
import type { Interval } from '../../domain/interval'

/** What is said of one measure on Bar. */
interface MeasureWords {
  /** What it is, in a few words under its name. */
  readonly is: string
  /** The same in a line, where there is no figure yet. */
  readonly means: string
  /** The least and the most of it. */
  readonly ends: readonly [string, string]
  /** Of a bar that can't be told apart from another in it. */
  readonly like: (name: string) => string
  readonly more: (name: string) => string
  readonly less: (name: string) => string
  /** For the line of figures on a phone. */
  readonly short: string
}

const WORDS: Readonly<Record<string, MeasureWords>> = {
  hardness: {
    is: 'resists a thumb',
    means: 'how firmly a dry bar resists a thumb',
    ends: ['soft', 'hard'],
    like: (name) => `as firm as ${name}`,
    more: (name) => `firmer than ${name}`,
    less: (name) => `softer than ${name}`,
    short: 'Hard',
  },
  wear: {
    is: 'less lasts longer',
    means: 'how fast washing eats it',
    ends: ['lasts', 'soon gone'],
    like: (name) => `lasts like ${name}`,
    more: (name) => `sooner gone than ${name}`,
    less: (name) => `lasts longer than ${name}`,
    short: 'Wear',
  },
  lather: {
    is: 'foam in a hand wash',
    means: 'how much foam a hand wash makes',
    ends: ['little', 'much'],
    like: (name) => `foams like ${name}`,
    more: (name) => `foams more than ${name}`,
    less: (name) => `foams less than ${name}`,
    short: 'Lather',
  },
  mildness: {
    is: 'reckoned from the acids',
    means: 'reckoned from acids, not a promise',
    ends: ['harsh', 'mild'],
    like: (name) => `as mild as ${name}`,
    more: (name) => `milder than ${name}`,
    less: (name) => `harsher than ${name}`,
    short: 'Mild',
  },
  conditioning: {
    is: 'leaves skin supple',
    means: 'how supple skin feels after',
    ends: ['dry', 'supple'],
    like: (name) => `as supple as ${name}`,
    more: (name) => `more supple than ${name}`,
    less: (name) => `less supple than ${name}`,
    short: 'Supple',
  },
  keeping: {
    is: 'against going rancid',
    means: 'how well it resists going rancid',
    ends: ['soon off', 'keeps'],
    like: (name) => `keeps like ${name}`,
    more: (name) => `keeps longer than ${name}`,
    less: (name) => `goes off before ${name}`,
    short: 'Keeps',
  },
}

/** What is said of a measure; plain words for one that has none of its own. */
export function wordsFor({ id, name }: Measure): MeasureWords {
  const low = name.toLowerCase()
  return (
    WORDS[id] ?? {
      is: '',
      means: '',
      ends: ['least', 'most'],
      like: (bar) => `as ${bar} in ${low}`,
      more: (bar) => `more ${low} than ${bar}`,
      less: (bar) => `less ${low} than ${bar}`,
      short: name,
    }
  )
}

/** A bar that others are looked at beside. */
export interface KnownBar {
  readonly letter: string
  /** As it stands in a sentence: "all olive". */
  readonly name: string
  readonly blend: Blend
  /** The maker's own version: named first where it does as well. */
  readonly own: boolean
}

/**
 * A value in words: like the bar nearest to it that it can't be told apart from, own ones first; else beside
 * the nearest of all. Undefined where there is nothing to look at it beside.
 */
export function besideBars(
  measure: Measure,
  value: number,
  bars: readonly { readonly name: string; readonly value: number; readonly own: boolean }[],
): string | undefined {
  const { like, more, less } = wordsFor(measure)
  const near = bars.toSorted(
    (a, b) =>
      Math.abs(a.value - value) - Math.abs(b.value - value) || Number(b.own) - Number(a.own),
  )
  const ties = near.filter((bar) => standingOf(value - bar.value, measure.tie) === 'tie')
  const tie = ties.find(({ own }) => own) ?? ties[0]
  if (tie) return like(tie.name)
  const [nearest] = near
  if (!nearest) return undefined
  return value > nearest.value ? more(nearest.name) : less(nearest.name)
}

/** The least and most of a measure over all oils of the library that soap is made of. */
export function libraryRange(measure: Measure): Interval {
  return rangeOver(
    measure,
    [...library.oils.values()].filter(({ kind }) => kind === 'triglyceride'),
  )
}

/** The least and most of a measure over any mix of some oils. */
export function rangeOver(measure: Measure, oils: readonly Oil[]): Interval {
  const values = 'weights' in measure ? oils.map((oil) => measureOfOil(measure, oil)) : []
  return { min: Math.min(...values), max: Math.max(...values) }
}
