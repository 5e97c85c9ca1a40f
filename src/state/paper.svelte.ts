import { FormulaReader, type FormulaReading, type MixedMeaning } from '../data/formula-text'
import { library } from '../data/library'
import type { Blend } from '../domain/blend/blend'
import type { WorkHistory } from './history.svelte'
import { withPasted } from './pasting'
import { withTakenFrom } from './bar'

const reader = new FormulaReader(library.oils.values())

/** The paper a formula is typed or pasted on, and what is read of it. */
export class Paper {
  readonly #work: WorkHistory

  constructor(work: WorkHistory) {
    this.#work = work
  }

  readonly text: string = $derived.by(() => this.#work.now.pasting?.text ?? '')
  readonly mixed: MixedMeaning | undefined = $derived.by(() => this.#work.now.pasting?.mixed)
  readonly reading: FormulaReading = $derived(reader.read(this.text, this.mixed))
  /** What it comes to so far; undefined while nothing is read. */
  readonly blend: Blend | undefined = $derived(
    this.reading.outcome.status === 'blend' ? this.reading.outcome.blend : undefined,
  )
  /** The weight of its oils, g; undefined where it has none. */
  readonly grams: number | undefined = $derived(
    this.reading.outcome.status === 'blend' ? this.reading.outcome.grams : undefined,
  )

  type(text: string): void {
    this.#work.change((work) => withPasted(work, { text }), 'paper')
  }

  mean(mixed: MixedMeaning): void {
    this.#work.change((work) => withPasted(work, { mixed }))
  }

  clear(): void {
    this.#work.change((work) => withPasted(work, { text: '' }))
  }

  /** Takes what is read as the bar in hand: the first version of a new bar, or a draft of the one there is. */
  take(): void {
    const { blend, grams } = this
    if (!blend) return
    this.#work.change((work) => withTakenFrom(withPasted(work, { text: '' }), blend, grams))
  }
}
