import {
  checkBlend,
  plain,
  problem,
  type Problem,
  shareProblem,
  unknownOil,
} from '../../blend/check-blend'
import type { Library } from '../../blend/library'
import { COST } from '../../blend/measure'
import { leavesRoom } from '../../lp/touching'
import { WHOLE_PERCENT } from '../../units'
import { type Brief, goalMeasure, type Limits } from './brief'
import { rulesProblems } from './check-rules'

/** Prices and limits beyond this are slips of the hand, and solvers take them for infinite. */
const LARGEST_FIGURE = 1e9
const LIMIT_ADVICE = 'Give a number that the measure can have, or leave it out.'

/** All that is wrong with a brief beyond its shape; empty when it can be solved. */
export function checkBrief(brief: Brief, library: Library): Problem[] {
  return [
    ...shelfProblems(brief, library),
    ...groupProblems(brief),
    ...measureProblems(brief, library),
    ...goalProblems(brief, library),
    ...priceProblems(brief),
    ...rulesProblems(brief),
  ]
}

function shelfProblems(brief: Brief, library: Library): Problem[] {
  const shelf = Object.entries(brief.oils)
  if (shelf.length === 0)
    return [{ path: 'oils', message: 'The shelf is empty. Add at least one oil.' }]
  return shelf.flatMap(([oil, limits]) => {
    const path = `oils.${oil}`
    return [
      ...unknownOil(oil, library, path),
      ...wrongPrice(limits.pricePerKg, `${path}.pricePerKg`),
      ...shareLimits(limits, path),
    ]
  })
}

function wrongPrice(price: number | undefined, path: string): Problem[] {
  if (price === undefined || (price >= 0 && price <= LARGEST_FIGURE)) return []
  return [problem(path, `The price is ${price}. Give 0 to ${LARGEST_FIGURE} per kg.`)]
}

function groupProblems(brief: Brief): Problem[] {
  return brief.groups.flatMap((group, number) => {
    const path = `groups[${number}]`
    const strangers = group.oils
      .filter((oil) => !Object.hasOwn(brief.oils, oil))
      .map((oil) =>
        problem(
          `${path}.oils`,
          `"${oil}" is not on the shelf. Add it to oils or take it out here.`,
        ),
      )
    const repeated = [...new Set(group.oils.filter((oil, at) => group.oils.indexOf(oil) < at))].map(
      (oil) => problem(`${path}.oils`, `"${oil}" stands here more than once. Name it once.`),
    )
    const empty =
      group.oils.length === 0 ? [problem(`${path}.oils`, 'The group names no oil. Add one.')] : []
    return [...empty, ...strangers, ...repeated, ...shareLimits(group, path)]
  })
}

function measureProblems(brief: Brief, library: Library): Problem[] {
  return Object.entries(brief.measures).flatMap(([id, limits]) => {
    const path = `measures.${id}`
    return [...unknownMeasure(id, library, path), ...rangeProblems(limits, path)]
  })
}

function goalProblems(brief: Brief, library: Library): Problem[] {
  const { goal } = brief
  if ('closestTo' in goal) return checkBlend(goal.closestTo, library, 'goal.closestTo')
  const path = 'minimise' in goal ? 'goal.minimise' : 'goal.maximise'
  return unknownMeasure(goalMeasure(goal) ?? '', library, path)
}

/** A brief that limits or optimises cost needs a price for every oil. */
function priceProblems(brief: Brief): Problem[] {
  const limits = brief.measures[COST]
  const ranged = limits?.min !== undefined || limits?.max !== undefined
  if (!ranged && goalMeasure(brief.goal) !== COST) return []
  return Object.entries(brief.oils)
    .filter(([, { pricePerKg }]) => pricePerKg === undefined)
    .map(([oil]) =>
      problem(
        `oils.${oil}.pricePerKg`,
        `"${oil}" has no price, but the brief asks about cost. Give its price per kg or take it off the shelf.`,
      ),
    )
}

function shareLimits(limits: Limits, path: string): Problem[] {
  const outside = (['min', 'max'] as const).flatMap((side) => {
    const value = limits[side]
    if (value === undefined || isShareLimit(value)) return []
    return [shareProblem(`${path}.${side}`, value)]
  })
  return outside.length > 0 ? outside : rangeProblems(limits, path)
}

function isShareLimit(value: number): boolean {
  return leavesRoom(0, value) && leavesRoom(value, WHOLE_PERCENT)
}

function rangeProblems({ min, max }: Limits, path: string): Problem[] {
  const broken = (
    [
      ['min', min],
      ['max', max],
    ] as const
  ).flatMap(([side, value]) =>
    value === undefined || Math.abs(value) <= LARGEST_FIGURE
      ? []
      : [problem(`${path}.${side}`, `The limit is ${value}. ${LIMIT_ADVICE}`)],
  )
  if (broken.length > 0 || leavesRoom(min ?? -Infinity, max ?? Infinity)) return broken
  const message = `At least ${plain(min ?? NaN)} is over at most ${plain(max ?? NaN)}. Lower the first or raise the second.`
  return [problem(path, message)]
}

function unknownMeasure(id: string, library: Library, path: string): Problem[] {
  if (library.measures.some((measure) => measure.id === id)) return []
  const known = library.measures.map((measure) => measure.id).join(', ')
  return [problem(path, `There is no measure "${id}". Use one of ${known}.`)]
}
