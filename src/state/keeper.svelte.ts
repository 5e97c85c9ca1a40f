import { failureReason, StorageFailure } from '../storage/failure'
import type { WorkStore } from '../storage/work-store'
import type { WorkHistory } from './history.svelte'
import type { Work } from './work'

/** Whether what is on the page is kept on this machine. */
export type Keeping =
  | { readonly status: 'nothing yet' }
  /** Written at that time, ms since 1970. */
  | { readonly status: 'kept'; readonly at: number }
  | { readonly status: 'failed'; readonly reason: string }

/** Something about the kept work that a person should know. */
export type KeepNotice =
  | { readonly kind: 'unreadable'; readonly reason: string }
  | { readonly kind: 'from another tab'; readonly at: number }
  | { readonly kind: 'replaced unseen' }

/** Writes are at least this far apart, so that a drag is a few of them and not hundreds. */
const BETWEEN_WRITES_MS = 300

/** A database that does not answer within this time must not keep the page from opening. */
const LOAD_WITHIN_MS = 2000

/** Keeps the work on this machine, and follows what another tab of the page keeps. */
export class WorkKeeper {
  keeping: Keeping = $state.raw({ status: 'nothing yet' })
  notice: KeepNotice | undefined = $state.raw()
  /** Records that lie aside, see `WorkStore`. */
  asideCount = $state(0)

  readonly #store: WorkStore
  #history: WorkHistory | undefined
  /** The work that the database holds, as far as this tab knows. */
  #kept: Work | undefined
  #timer: ReturnType<typeof setTimeout> | undefined
  #lastWriteAt = -Infinity
  /** Settles once the database was read; nothing is written before, or it would replace what lies there. */
  #read: Promise<unknown> = Promise.resolve()
  /** Settles once nothing is being taken over: one after another, so that the newest comes last. */
  #taken: Promise<unknown> = Promise.resolve()

  constructor(store: WorkStore) {
    this.#store = store
  }

  /** The kept work, or `first` where there is none; a page that had to open without it gets it later. */
  async start(first: Work): Promise<Work> {
    this.#kept = first
    // What was changed on a page that had to open without the kept work is newer than that.
    const unchanged = () => !this.#history || this.#history.now === first
    const loading = this.#load(unchanged).catch((error: unknown) => this.#fail(error))
    this.#read = loading
    const early = await Promise.race([loading, after(LOAD_WITHIN_MS, 'late' as const)])
    if (early !== 'late') return early ?? first
    this.#fail(new StorageFailure('the browser’s storage has not answered yet'))
    return first
  }

  /** Keeps the history's work from here on, and takes over what other tabs write. */
  follow(history: WorkHistory): void {
    this.#history = history
    this.#store.onWrite(() => void this.#takeOver())
  }

  /** Has a changed work written: at once, or soon after the write before. */
  put(work: Work): void {
    if (work === this.#kept) return
    const waitMs = this.#lastWriteAt + BETWEEN_WRITES_MS - performance.now()
    this.#timer ??= setTimeout(() => void this.write(), Math.max(0, waitMs))
  }

  /** Writes at once what is not yet written. */
  async write(): Promise<void> {
    clearTimeout(this.#timer)
    this.#timer = undefined
    this.#lastWriteAt = performance.now()
    await this.#read
    const work = this.#history?.now
    if (!work || work === this.#kept) return
    try {
      const { at, replacedUnseen } = await this.#store.keep(work)
      this.#accept(work, at)
      if (replacedUnseen) {
        this.notice = { kind: 'replaced unseen' }
        this.asideCount += 1
      }
      await this.#settleAfterWrite()
    } catch (error) {
      this.#fail(error)
    }
  }

  /** What came while a work was being written was compared with the one before it: look once more. */
  async #settleAfterWrite(): Promise<void> {
    const now = this.#history?.now
    if (now && now !== this.#kept) this.put(now)
    else if (await this.#store.hasNewer()) await this.#takeOver()
  }

  /** The page is about to go: what is not yet written is left for the next page, and written if time is. */
  leave(): void {
    const work = this.#history?.now
    if (!work || work === this.#kept) return
    try {
      this.#store.leave(work)
    } catch (error) {
      this.#fail(error)
    }
    void this.write()
  }

  /** Looks whether another tab wrote while this one slept. */
  async look(): Promise<void> {
    try {
      if (await this.#store.hasNewer()) await this.#takeOver()
    } catch (error) {
      this.#fail(error)
    }
  }

  /** Puts the notice away. */
  dismiss(): void {
    this.notice = undefined
  }

  /** All that lies aside, as the text of a file. */
  async asideText(): Promise<string> {
    return JSON.stringify(await this.#store.aside(), undefined, 2)
  }

  /**
   * The work that the database holds, taken over in the same turn, so that no change can come between;
   * undefined where by then it is not `wanted` any more.
   */
  async #load(wanted = () => true): Promise<Work | undefined> {
    const loaded = await this.#store.load()
    this.asideCount = (await this.#store.aside()).length
    if (loaded.status === 'unreadable') this.notice = { kind: 'unreadable', reason: loaded.reason }
    if (loaded.status !== 'work' || !wanted()) return undefined
    this.#store.take(loaded)
    this.#accept(loaded.work, loaded.at)
    this.#history?.change(() => loaded.work)
    return loaded.work
  }

  /** Takes over what another tab wrote, once all that came before has been. */
  #takeOver(): Promise<unknown> {
    return (this.#taken = this.#taken.then(() => this.#takeOverNow()))
  }

  /**
   * What another tab wrote becomes this tab's work, as a step that can be undone. A change not yet
   * written here, or made while the database was read, is newer: it stays, and writing it puts the other
   * tab's work aside.
   */
  async #takeOverNow(): Promise<void> {
    const before = this.#history?.now
    if (before !== this.#kept) return
    try {
      const work = await this.#load(() => this.#history?.now === before)
      if (!work) return
      if (this.keeping.status === 'kept')
        this.notice = { kind: 'from another tab', at: this.keeping.at }
    } catch (error) {
      this.#fail(error)
    }
  }

  #accept(work: Work, at: number): void {
    this.#kept = work
    this.keeping = { status: 'kept', at }
  }

  #fail(error: unknown): void {
    this.keeping = { status: 'failed', reason: failureReason(error) }
  }
}

function after<T>(ms: number, value: T): Promise<T> {
  return new Promise((resolve) => setTimeout(() => resolve(value), ms))
}
