import { batchFacts } from '../data/batch-facts'
import type { FormulaOutcome, MixedMeaning } from '../data/formula-outcome'
import { library } from './library'
import { type RecipeLye, recipeLye, recipeOrder } from '../data/recipe/recipe-order'
import { RecipeReader } from '../data/recipe/recipe-reader'
import type { RecipeReading } from '../data/recipe/recipe-reading'
import { alkalisOf, type BatchOrder } from '../domain/batch/order/order'
import type { Blend } from '../domain/blend/blend'
import { withTakenFrom } from './bar'
import { orderFor, USUAL_LYE } from './batch-choices'
import { choicesOf } from './batch-from-order'
import type { WorkHistory } from './history.svelte'
import { type Pasting, withPasted } from './pasting'
import type { Work } from './work'

/** Reads by the names of all oils there are; kept for as long as these are the same. */
const readers = new WeakMap<object, RecipeReader>()
function readerNow(): RecipeReader {
  const { oils } = library
  let reader = readers.get(oils)
  if (!reader) readers.set(oils, (reader = new RecipeReader(oils.values())))
  return reader
}

/** The paper a recipe is typed or pasted on, and what is read of it. */
export class Paper {
  readonly #work: WorkHistory

  constructor(work: WorkHistory) {
    this.#work = work
  }

  readonly #typed: Pasting = $derived.by(() => this.#work.now.pasting ?? { text: '' })
  readonly text: string = $derived(this.#typed.text)
  readonly mixed: MixedMeaning | undefined = $derived(this.#typed.mixed)
  readonly reading: RecipeReading = $derived(readerNow().read(this.text, this.#typed))
  /** What is asked about the whole, be it answered or not. */
  readonly question: Extract<FormulaOutcome, { status: 'question' }> | undefined = $derived.by(
    () => {
      const { outcome } = readerNow().read(this.text)
      return outcome.status === 'question' ? outcome : undefined
    },
  )
  /** What it comes to so far; undefined while nothing is read. */
  readonly blend: Blend | undefined = $derived(
    this.reading.outcome.status === 'blend' ? this.reading.outcome.blend : undefined,
  )
  /** Whether all of it is understood, so that nothing is left out unseen. */
  readonly isRead: boolean = $derived(this.blend !== undefined && this.reading.unread.length === 0)
  /** The batch it asks for, on top of how batches are made here. */
  readonly order: BatchOrder | undefined = $derived.by(() =>
    orderRead(this.reading, this.#work.now),
  )
  /** The lye it names beside ours. */
  readonly lye: RecipeLye | undefined = $derived(
    this.order && recipeLye(this.reading, this.order, library, batchFacts),
  )

  type(text: string): void {
    this.#work.change((work) => withPasted(work, { text }), 'paper')
  }

  /** Answers a question about the whole. */
  answer(answer: Pick<Pasting, 'mixed' | 'spread'>): void {
    this.#work.change((work) => withPasted(work, answer))
  }

  /** Writes an oil's name in the place of one that was not understood. */
  name(line: number, said: string, oil: string): void {
    const lines = this.text.split('\n')
    const before = lines[line] ?? ''
    lines[line] = before.includes(said) ? before.replace(said, oil) : `${oil} ${before}`
    this.type(lines.join('\n'))
  }

  /** Takes out what was not understood: it stands in one line, from `line` on. */
  leaveOut(line: number, said: string): void {
    const lines = this.text.split('\n')
    const rest = (lines[line] ?? '').replace(said, '').trim()
    this.type(lines.toSpliced(line, 1, ...(rest === '' ? [] : [rest])).join('\n'))
  }

  clear(): void {
    this.#work.change((work) => withPasted(work, { text: '' }))
  }

  /** Takes what is read as the bar in hand: the first version of a new bar, or a draft of the one there is. */
  take(): void {
    const { blend, order } = this
    if (!blend || !order || !this.isRead) return
    this.#work.change((work) => {
      const batch = choicesOf(order, work.batch, work.batch.purity)
      const { waterTyped = false } = work.batch
      const typed = waterTyped || this.reading.found.water !== undefined
      return withTakenFrom(withPasted(work, { text: '' }), blend, { ...batch, waterTyped: typed })
    })
  }
}

function orderRead(reading: RecipeReading, { batch }: Work): BatchOrder | undefined {
  if (reading.outcome.status !== 'blend') return undefined
  const base = orderFor(reading.outcome.blend, batch)
  const order = recipeOrder(reading, { ...base, purity: {} })
  if (!order) return undefined
  const kinds = alkalisOf(order).filter((kind) => order.lyeSolution?.[kind] === undefined)
  const purity = kinds.map((kind) => [kind, order.purity[kind] ?? batch.purity[kind]] as const)
  const { found } = reading
  const usual =
    found.process && !found.water && batch.waterTyped !== true
      ? { water: USUAL_LYE[found.process.process] }
      : {}
  return { ...order, ...usual, purity: Object.fromEntries(purity) }
}
