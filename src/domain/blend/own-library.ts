import { WHOLE_PERCENT } from '../units'
import { plain, problem, type Problem, unknownOil } from './check-blend'
import type { Library } from './library'
import type { Oil } from './oil'
import { statedSum, SUM_SLACK_G, unstated } from './own-acids'
import { alkaliFromAcids, oilOfOwn, OWN_PREFIX, type OwnLibrary, type OwnOil } from './own-oil'

/** Oils of a maker's own ready to be used, and what is wrong with the others, by path. */
export interface OwnOils {
  readonly oils: readonly Oil[]
  readonly problems: readonly Problem[]
}

/** Further from what its acids come to, as a part, a value is of another unit or another oil: assumed. */
const BEYOND_BELIEF = 0.15

/**
 * The oils that a maker describes. One with anything wrong is left out and told of at `path[index]`; figures
 * that do not agree are no such fault: they keep the oil from lye (`Oil.own.noLye`), not from looking.
 */
export function ownOilsOf(owns: readonly OwnOil[], library: OwnLibrary, path = 'ownOils'): OwnOils {
  const problems: Problem[] = []
  const oils: Oil[] = []
  owns.forEach((own, index) => {
    const known = libraryWith(library, oils)
    const found = ownOilProblems(own, known, `${path}[${index}]`)
    const base = library.oils.get(own.from)
    if (found.length > 0 || !base) problems.push(...found)
    else oils.push(oilOfOwn(own, base, known))
  })
  return { oils, problems }
}

/** The library with further oils; one that is there already throws, as `ownOilsOf` never lets it through. */
export function libraryWith<T extends Library>(library: T, oils: readonly Oil[]): T {
  if (oils.length === 0) return library
  const all = new Map(library.oils)
  for (const oil of oils) {
    if (all.has(oil.id)) throw new Error(`The library has an oil ${oil.id} already`)
    all.set(oil.id, oil)
  }
  return { ...library, oils: all }
}

/** What is wrong with a maker's description of an oil; empty when an oil can be made of it. */
export function ownOilProblems(own: OwnOil, library: OwnLibrary, path: string): Problem[] {
  const base = library.oils.get(own.from)
  if (!base) return unknownOil(own.from, library, `${path}.from`)
  if (base.own)
    return [problem(`${path}.from`, `${base.name} is an oil of your own. Copy from the library.`)]
  const acids = acidProblems(own, base, library, path)
  return [
    ...idProblems(own, library, path),
    ...nameProblems(own, library, path),
    ...tagProblems(own, library, path),
    ...acids,
    ...figureProblems(own, path),
    ...(acids.length > 0 ? [] : beliefProblems(own, base, library, path)),
  ]
}

function idProblems({ id }: OwnOil, { oils }: OwnLibrary, path: string): Problem[] {
  if (!id.startsWith(OWN_PREFIX) || id === OWN_PREFIX)
    return [
      problem(`${path}.id`, `The id is "${id}". Begin it with ${OWN_PREFIX}, as in own-laurel.`),
    ]
  return oils.has(id) ? [problem(`${path}.id`, `The id "${id}" stands twice. Give another.`)] : []
}

function nameProblems({ id, name }: OwnOil, { oils }: OwnLibrary, path: string): Problem[] {
  if (name === undefined) return []
  const typed = name.trim().toLowerCase()
  const other = [...oils.values()].find(
    (oil) =>
      oil.id !== id && [oil.name, ...oil.synonyms].some((one) => one.toLowerCase() === typed),
  )
  return other
    ? [
        problem(
          `${path}.name`,
          `"${name}" is a name of ${other.name}. Give one that tells them apart.`,
        ),
      ]
    : []
}

/** A slip in a tag would take an oil out of a ban or hide an allergen. */
function tagProblems({ tags = [] }: OwnOil, { oils }: OwnLibrary, path: string): Problem[] {
  const known = new Set([...oils.values()].flatMap((oil) => oil.tags))
  return tags.flatMap((tag, index) =>
    known.has(tag)
      ? []
      : [
          problem(
            `${path}.tags[${index}]`,
            `There is no tag "${tag}". Use ${[...known].sort().join(', ')}.`,
          ),
        ],
  )
}

function acidProblems(
  { acids: stated }: OwnOil,
  base: Oil,
  { acids: known }: OwnLibrary,
  path: string,
): Problem[] {
  if (!stated) return []
  const each = Object.entries(stated).flatMap(([id, { value }]) => {
    const at = `${path}.acids.${id}`
    if (!known.has(id))
      return [problem(at, `There is no acid "${id}". Use one of ${[...known.keys()].join(', ')}.`)]
    return value >= 0 && value <= WHOLE_PERCENT
      ? []
      : [problem(at, `The share is ${plain(value)} %. Give 0 to 100 %.`)]
  })
  if (each.length > 0) return each
  const sum = statedSum(stated)
  if (sum > WHOLE_PERCENT + SUM_SLACK_G)
    return [
      problem(
        `${path}.acids`,
        `The acids add to ${plain(sum)} %; they add to ${WHOLE_PERCENT} % within ${SUM_SLACK_G}. Look for one that stands twice.`,
      ),
    ]
  const rest = Object.values(unstated(stated, base.acids))
  if (WHOLE_PERCENT - sum <= SUM_SLACK_G || rest.some(({ typical }) => typical > 0)) return []
  return [
    problem(
      `${path}.acids`,
      `The acids add to ${plain(sum)} % and ${base.name} has no others to fill up with. State those that are missing.`,
    ),
  ]
}

function figureProblems(own: OwnOil, path: string): Problem[] {
  const figures = [
    ...Object.entries(own.acids ?? {}).map(([id, one]) => [`acids.${id}`, one] as const),
    ['saponificationValue', own.saponificationValue] as const,
    ['iodineValue', own.iodineValue] as const,
    ['unsaponifiableGPerKg', own.unsaponifiableGPerKg] as const,
  ]
  return figures.flatMap(([key, figure]) => {
    if (!figure) return []
    const { value, within = 0 } = figure
    const at = `${path}.${key}`
    const least = key === 'saponificationValue' ? 1 : 0
    if (!(value >= least) || !Number.isFinite(value))
      return [problem(`${at}.value`, `The value is ${value}. Give ${least} or more.`)]
    if (key === 'unsaponifiableGPerKg' && value >= MOST_UNSAPONIFIABLE)
      return [
        problem(
          `${at}.value`,
          `The value is ${value} g per kg. Give less than ${MOST_UNSAPONIFIABLE}.`,
        ),
      ]
    return within >= 0 && (within < value || value === 0 || key.startsWith('acids.'))
      ? []
      : [
          problem(
            `${at}.within`,
            `The tolerance is ${within}. Give 0 or more, and less than the value of ${value}.`,
          ),
        ]
  })
}

/** The whole of a kilogram, g: nothing of it would be fat. */
const MOST_UNSAPONIFIABLE = 1000

/** A value that no oil of these acids can have; lot and paper do not make it so. */
function beliefProblems(own: OwnOil, base: Oil, library: OwnLibrary, path: string): Problem[] {
  const stated = own.saponificationValue?.value
  if (stated === undefined || !(stated >= 1)) return []
  const free: OwnOil = { ...own, saponificationValue: undefined }
  const calculated = alkaliFromAcids(oilOfOwn(free, base, library), library.acids)
  if (Math.abs(stated - calculated) <= BEYOND_BELIEF * calculated) return []
  return [
    problem(
      `${path}.saponificationValue.value`,
      `The value is ${plain(stated)}; acids like these take about ${calculated.toFixed(0)} mg KOH per g. Give mg KOH per g of oil, not NaOH and not g: other units come to ${(calculated / 1402.7).toFixed(3)} or ${(calculated / 1.4027).toFixed(0)}.`,
    ),
  ]
}
