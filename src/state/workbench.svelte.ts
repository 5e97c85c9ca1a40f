import { batchFacts } from '../data/batch-facts'
import { library } from './library'
import { cookedPot } from '../domain/batch/workshop/cooked-pot'
import { judgePart, withMoreOil, withPartUsed } from '../domain/batch/workshop/gate'
import type { Mend } from '../domain/batch/workshop/line-mends'
import type { ReadyPlan } from '../domain/batch/result/plan'
import { type Known, PART_KEY, standingOf } from '../domain/batch/workshop/standing'
import { workSteps } from '../domain/batch/sheet/steps'
import { batterG, readingsOf, type Vessel } from '../domain/batch/actual/vessels'
import {
  gateVerdict,
  isDone,
  lineVerdict,
  lyePlaceOf,
  mayLeave,
  openScreens,
  type Progress,
  withAssumed,
  type WorkScreen,
  workScreens,
} from '../domain/batch/workshop/work-screens'
import type { BatchDesk } from './batch.svelte'
import { kept } from './kept'
import { without } from './without'

const KNOWN: Known = { library, facts: batchFacts }

/** The work at the bench, step by step: what is done, what it comes to, what may come next. */
export class Workbench {
  readonly #desk: BatchDesk
  readonly #plan: () => ReadyPlan

  constructor(desk: BatchDesk, plan: () => ReadyPlan) {
    this.#desk = desk
    this.#plan = plan
  }

  readonly progress: Progress = $derived.by(() => {
    const { actual, left = {}, part, ticks, cautionRead } = this.#desk.run
    const of = this.#desk.actual
    const used = actual[PART_KEY]
    const run = { actual: used === undefined ? of : { ...of, [PART_KEY]: used }, left, part }
    return withAssumed(this.#plan(), { ...run, ticks, cautionRead })
  })
  readonly standing = $derived.by(() => standingOf(this.#plan(), this.progress, KNOWN))
  readonly screens: readonly WorkScreen[] = $derived.by(() =>
    workScreens(this.#plan(), this.standing.part !== undefined),
  )
  /** How many screens are open; the last of them is the first that is not done. */
  readonly open = $derived.by(() => openScreens(this.#plan(), this.screens, this.progress, KNOWN))
  readonly lye = $derived.by(() => lyePlaceOf(this.progress))
  readonly #steps = $derived.by(() => workSteps(this.#plan()))
  readonly readings = $derived.by(() =>
    readingsOf(this.#steps, this.standing.weighed, {
      tares: this.#desk.run.tares ?? {},
      part: this.standing.part,
    }),
  )
  /** What the pot holds before the cook, g. */
  readonly batterG = $derived.by(() =>
    batterG(this.#steps, this.standing.weighed, this.standing.part),
  )
  /** What the pot says after the cook; undefined before it was weighed. */
  readonly cooked = $derived.by(() => {
    const { pot, tares } = this.#desk.run
    if (pot === undefined || tares?.pot === undefined) return undefined
    const reading = { potG: tares.pot, readsG: pot.readsG }
    return cookedPot(this.#plan(), this.batterG, this.standing.weighed, reading)
  })

  /** What was judged of the progress as it is, so that each screen draws lots once. */
  readonly #judged = $derived.by(() => {
    const [plan, progress] = [this.#plan(), this.progress]
    return {
      line: kept((key) => lineVerdict(plan, progress, key, KNOWN)),
      gate: kept((key) => gateVerdict(plan, progress, key, KNOWN)),
    }
  })

  verdict(key: string) {
    return this.#judged.line(key)
  }

  /** How a stop stands, by its key. */
  gate(key: string) {
    return this.#judged.gate(key)
  }

  /** How the lye that went into the pot stands; undefined before it was weighed. */
  readonly partVerdict = $derived.by(() => {
    const usedG = this.progress.actual[PART_KEY]
    return usedG === undefined || !this.progress.part
      ? undefined
      : judgePart(this.#plan(), this.progress, usedG, KNOWN)
  })

  done(screen: WorkScreen): boolean {
    return isDone(this.#plan(), screen, this.progress, KNOWN)
  }

  mayLeave(screen: WorkScreen): boolean {
    return mayLeave(this.#plan(), screen, this.progress, KNOWN)
  }

  /** Ticks a screen off, where it may be left. */
  finish(screen: WorkScreen): void {
    if (!this.mayLeave(screen)) return
    if (screen.kind === 'caution') this.#desk.readCaution(true)
    else if (screen.line === undefined) this.#desk.tick(screen.key, 0, true)
  }

  /** Lye that was poured is in the pot, whatever it weighs. */
  weighedIn(screen: string): void {
    this.#desk.tick(screen, 0, true)
  }

  /** Counts a line as asked without a weight. */
  skip(key: string): void {
    const { askedG, skippable } = this.verdict(key)
    if (skippable) this.#desk.tick(key, askedG, true)
  }

  weigh(key: string, grams: number | undefined): void {
    const { actual } = this.#desk.run
    const others = without(actual, key)
    const ticks = without(this.#desk.run.ticks, key)
    const change = grams === undefined ? others : { ...others, [key]: grams }
    const planned = this.#plan().ingredients.find((line) => line.key === key)?.grams
    const ticked =
      grams === undefined || planned === undefined ? ticks : { ...ticks, [key]: planned }
    this.#desk.note({ actual: change, ticks: ticked }, `weigh ${key}`)
  }

  /** Does what mends a weight, as far as it is done in the records. */
  mend(key: string, mend: Mend): void {
    const { run } = this.#desk
    const grams = this.progress.actual[key]
    if (mend.kind === 'leave' && grams !== undefined)
      this.#desk.note({ left: { ...run.left, [key]: grams } }, `leave ${key}`)
    else if (mend.kind === 'grow') this.#desk.scaleUp(mend.factor)
    else if (mend.kind === 'usePart') {
      const { actual, left, part } = withPartUsed(this.progress, mend)
      this.#desk.note(
        { actual: { ...without(run.actual, PART_KEY), ...actual }, left, part },
        'part',
      )
    } else if (mend.kind === 'moreOil') {
      const { actual, left, part } = withMoreOil(this.#plan(), this.progress, mend, this.lye)
      this.#desk.note({ actual: { ...run.actual, ...actual }, left, part }, 'more oil')
    } else this.weigh(key, undefined)
  }

  setTare(vessel: Vessel, grams: number | undefined): void {
    const tares = { ...this.#desk.run.tares, [vessel]: grams }
    this.#desk.note({ tares }, `tare ${vessel}`)
  }

  startCook(now: number): void {
    this.#desk.note({ cook: { startedAt: now, stirredAt: [] } }, 'cook')
  }

  stir(now: number): void {
    const { cook } = this.#desk.run
    if (cook) this.#desk.note({ cook: { ...cook, stirredAt: [...cook.stirredAt, now] } }, 'stir')
  }

  noteTemperature(step: string, tempC: number, at: number): void {
    const { temperatures = [] } = this.#desk.run
    this.#desk.note({ temperatures: [...temperatures, { step, at, tempC }] }, `temperature ${at}`)
  }

  weighPot(readsG: number | undefined): void {
    this.#desk.note({ pot: readsG === undefined ? undefined : { readsG } }, 'pot')
  }

  putBack(putBackG: number): void {
    const { pot } = this.#desk.run
    if (pot) this.#desk.note({ pot: { ...pot, putBackG } }, 'water back')
  }
}
