import type { Amount as Dose } from '../../domain/batch/order/additions'
import { fractionFromPercent } from '../../domain/units'
import { type Dosed, type Draft, type Entry, unread } from './draft'
import type {
  LineRead,
  LyeFound,
  RecipeFacts,
  ScentFound,
  SizeFound,
  ThingFound,
  WaterFound,
} from './recipe-reading'

type FactDraft = Extract<Draft, { kind: 'fact' }>

/** Gathers the facts of a text; one that stands twice with different figures is asked about. */
export class FoundFacts {
  readonly #lye: LyeFound[] = []
  readonly #scents: ScentFound[] = []
  readonly #things: Record<'additive' | 'acid' | 'liquid', ThingFound[]> = {
    additive: [],
    acid: [],
    liquid: [],
  }
  #water: WaterFound | undefined
  #superfat: RecipeFacts['superfat']
  #size: SizeFound | undefined
  #process: RecipeFacts['process']

  get found(): RecipeFacts {
    return {
      lye: this.#lye,
      water: this.#water,
      superfat: this.#superfat,
      scents: this.#scents,
      additives: this.#things.additive,
      acids: this.#things.acid,
      liquids: this.#things.liquid,
      size: this.#size,
      process: this.#process,
    }
  }

  /** Takes a fact that was said by itself; answers what its line was read as. */
  say({ line, text }: Entry, { fact, about, name, figure, note }: FactDraft): LineRead {
    const place = { line, text }
    const read = { kind: about, name, figure, note }
    if ('solution' in fact) {
      const { alkali, grams, strengthPercent } = fact.solution
      const pureG = grams * fractionFromPercent(strengthPercent)
      if (this.#hasLye(alkali)) return TWICE('Lye')
      this.#lye.push({ ...place, alkali, grams: pureG })
      this.#water ??= { ...place, grams: grams - pureG }
      return read
    }
    if ('water' in fact) {
      if (this.#water !== undefined) return TWICE('Water')
      this.#water = { ...place, ...fact.water }
    } else if ('superfat' in fact) {
      if (this.#superfat && this.#superfat.percent !== fact.superfat) return TWICE('Superfat')
      this.#superfat = { ...place, percent: fact.superfat }
    } else if ('size' in fact) {
      this.#size ??= { ...place, ...fact.size }
    } else this.#process ??= { ...place, process: fact.process }
    return read
  }

  /** Takes the sum of the oils as the size, where nothing else says it. */
  oilTotal({ line, text }: Entry, grams: number) {
    this.#size ??= { line, text, grams, of: 'oils' }
  }

  /** Takes something dosed; answers only where it can't be taken. */
  dose(
    { line, text }: Entry,
    what: Exclude<Dosed, { is: 'total' }>,
    dose: Dose,
    strengthPercent: number | undefined,
  ): LineRead | undefined {
    const place = { line, text, ...dose }
    if (what.is === 'lye') {
      if (this.#hasLye(what.alkali)) return TWICE('Lye')
      this.#lye.push({ ...place, alkali: what.alkali, purityPercent: strengthPercent })
    } else if (what.is === 'water') {
      if (this.#water !== undefined) return TWICE('Water')
      this.#water = waterOf({ line, text }, dose)
    } else if (what.is === 'scent') this.#scents.push({ ...place, scent: what.id, name: what.name })
    else this.#things[what.is].push({ ...place, id: what.id, strengthPercent })
    return undefined
  }

  #hasLye(alkali: string): boolean {
    return this.#lye.some((one) => one.alkali === alkali)
  }
}

function waterOf(place: Entry, { grams, percentOfOils }: Dose): WaterFound {
  return grams === undefined
    ? { ...place, rule: { percentOfOils: percentOfOils ?? 0 } }
    : { ...place, grams }
}

const TWICE = (what: string): LineRead =>
  unread(`${what} stands here a second time. Leave one, or write the sum`, 'stands twice', {
    touchesLye: what !== 'Water',
  })
