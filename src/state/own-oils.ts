import { shipped } from './library'
import { libraryWith, ownOilsOf } from '../domain/blend/own-library'
import { oilOfOwn, OWN_PREFIX, type OwnOil } from '../domain/blend/own-oil'
import type { Work } from './work'

/** Where a work names an oil, in words for a sentence such as "It stands in …". */
export function placesOfOil(work: Work, oil: string): string[] {
  const { brief, bar, bench } = work
  const has = (blend: Readonly<Record<string, unknown>>) => Object.hasOwn(blend, oil)
  const rules = [
    ...(brief.rules?.requires ?? []).flatMap((rule) => [rule.oil, rule.with]),
    ...(brief.rules?.oneOf ?? []).flat(),
  ]
  const places: readonly (readonly [string, boolean])[] = [
    ['the bar', bar?.parts.some((part) => part.oil === oil) ?? false],
    ['a kept version of the bar', bar?.versions.some(({ blend }) => has(blend)) ?? false],
    ['what gives way in the bar', isGiver(bar?.givesWay, oil)],
    ['the shelf', brief.shelf.some((row) => row.oil === oil)],
    ['a group of the shelf', brief.groups.some(({ oils }) => oils.includes(oil))],
    ['the goal', 'closestTo' in brief.goal && has(brief.goal.closestTo)],
    ['the rules', rules.includes(oil)],
    ['the Bench', bench.candidates.some(({ blend }) => has(blend))],
  ]
  return places.flatMap(([place, is]) => (is ? [place] : []))
}

function isGiver(givesWay: NonNullable<Work['bar']>['givesWay'], oil: string): boolean {
  return typeof givesWay === 'object' && givesWay.oil === oil
}

/** The oils of one's own among some ids, as a file carries them. */
export function carriedWith(
  ownOils: readonly OwnOil[] | undefined,
  ids: readonly string[],
): readonly OwnOil[] {
  return (ownOils ?? []).filter(({ id }) => ids.includes(id))
}

/** The work with an oil of one's own described anew, or added. */
export function withOwnOil(work: Work, own: OwnOil): Work {
  const before = work.ownOils ?? []
  const stands = before.some(({ id }) => id === own.id)
  const ownOils = stands ? before.map((one) => (one.id === own.id ? own : one)) : [...before, own]
  return { ...work, ownOils }
}

/** The work without an oil of one's own; it must be named nowhere, see `placesOfOil`. */
export function withoutOwnOil({ ownOils = [], ...work }: Work, oil: string): Work {
  const left = ownOils.filter(({ id }) => id !== oil)
  return left.length > 0 ? { ...work, ownOils: left } : work
}

/** An id for an oil that begins as a copy of another: told from all there are by a number. */
export function freeOwnId(name: string, taken: (id: string) => boolean): string {
  const letters = name
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/\p{M}/gu, '')
    .replaceAll(/[^a-z0-9]+/gu, '-')
    .replaceAll(/^-|-$/gu, '')
  const stem = `${OWN_PREFIX}${letters || 'oil'}`
  if (!taken(stem)) return stem
  let number = 2
  while (taken(`${stem}-${number}`)) number++
  return `${stem}-${number}`
}

/**
 * A formula's own oils beside those there are: one that is described just so already counts once; one whose id
 * stands for another oil here goes by a new one, which `rename` puts wherever the formula names it.
 */
export function besideOwnOils(
  here: readonly OwnOil[] | undefined,
  carried: readonly OwnOil[],
): { readonly ownOils: readonly OwnOil[]; readonly rename: <T>(formula: T) => T } {
  const ownOils = [...(here ?? [])]
  const names = new Map<string, string>()
  for (const own of carried) {
    const same = ownOils.find((one) => isSameOil(one, own))
    const taken = (id: string) => ownOils.some((one) => one.id === id)
    const id =
      same?.id ?? (taken(own.id) ? freeOwnId(own.id.slice(OWN_PREFIX.length), taken) : own.id)
    if (id !== own.id) names.set(own.id, id)
    if (!same) ownOils.push({ ...own, id, ...freeName(own.name, ownOils) })
  }
  return { ownOils, rename: (formula) => (names.size > 0 ? renamed(formula, names) : formula) }
}

/** A name that no other oil has: two that are described otherwise are told apart by a number. */
function freeName(name: string | undefined, among: readonly OwnOil[]): { readonly name?: string } {
  if (name === undefined) return {}
  const taken = (text: string) =>
    among.some((one) => one.name?.toLowerCase() === text.toLowerCase())
  let free = name
  for (let number = 2; taken(free); number++) free = `${name} ${number}`
  return { name: free }
}

function isSameOil({ id: a, ...one }: OwnOil, { id: b, ...other }: OwnOil): boolean {
  return a === b && JSON.stringify(sorted(one)) === JSON.stringify(sorted(other))
}

/** With keys in one order, and none that holds nothing. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted)
  if (typeof value !== 'object' || value === null) return value
  const entries = Object.entries(value).filter(([, one]) => one !== undefined)
  return Object.fromEntries(
    entries.sort(([a], [b]) => (a < b ? -1 : 1)).map(([k, v]) => [k, sorted(v)]),
  )
}

/** A plain value with ids put for others, as keys and as whole texts. */
function renamed<T>(value: T, names: ReadonlyMap<string, string>): T {
  const other = (text: string) => names.get(text) ?? text
  const walk = (one: unknown): unknown => {
    if (typeof one === 'string') return other(one)
    if (Array.isArray(one)) return one.map(walk)
    if (typeof one !== 'object' || one === null) return one
    return Object.fromEntries(Object.entries(one).map(([key, inner]) => [other(key), walk(inner)]))
  }
  return walk(value) as T
}

/** The work with a new oil under a name that nothing here has, copied from one of the library; and its id. */
export function withBegunOil(
  work: Work,
  name: string,
  from: string,
): { readonly work: Work; readonly id: string } {
  const base = shipped.oils.get(from)
  if (!base) throw new Error(`There is no oil ${from} to copy from`)
  const { ownOils = [] } = work
  const id = freeOwnId(name, (one) => ownOils.some((own) => own.id === one))
  const own: OwnOil = { id, from, name }
  const { colour } = oilOfOwn(own, base, libraryWith(shipped, ownOilsOf(ownOils, shipped).oils))
  return { work: withOwnOil(work, { ...own, colour }), id }
}
