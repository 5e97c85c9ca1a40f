import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import { vi } from 'vitest'
import { EXAMPLE_WORK } from '../../src/state/first-work'
import { WorkHistory } from '../../src/state/history.svelte'
import { WorkKeeper } from '../../src/state/keeper.svelte'
import type { Work } from '../../src/state/work'
import { type Kept, type Loaded, type LoadedWork, WorkStore } from '../../src/storage/work-store'

/** Tabs hear each other in the order of the writes, as a browser's do; a closed one hears nothing. */
class Channel {
  static readonly open = new Set<Channel>()
  onmessage: (() => void) | null = null

  constructor() {
    Channel.open.add(this)
  }

  postMessage(): void {
    for (const other of Channel.open) if (other !== this) queueMicrotask(() => other.onmessage?.())
  }

  close(): void {
    Channel.open.delete(this)
  }
}

/** A browser where nothing is kept yet: its database, its notes, its tabs. Before each test. */
export function freshBrowser(): void {
  const notes = new Map<string, string>()
  Channel.open.clear()
  vi.stubGlobal('indexedDB', new IDBFactory())
  vi.stubGlobal('BroadcastChannel', Channel)
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => notes.get(key) ?? null,
    setItem: (key: string, text: string) => notes.set(key, text),
    removeItem: (key: string) => notes.delete(key),
  })
}

/** A store that can be held up between the database's answer and the keeper. */
class HeldStore extends WorkStore {
  /** Called when the database has written; the writing ends when it settles. */
  holdWrite: (() => Promise<void>) | undefined
  /** Called in the turn in which the keeper takes what was read. */
  taking: (() => void) | undefined
  /** Called when the database has answered; the reading ends when it settles. */
  hold: (() => Promise<void>) | undefined

  override async load(): Promise<Loaded> {
    const loaded = await super.load()
    await this.hold?.()
    return loaded
  }

  override async keep(work: Work): Promise<Kept> {
    const kept = await super.keep(work)
    await this.holdWrite?.()
    return kept
  }

  override take(loaded: LoadedWork): void {
    super.take(loaded)
    this.taking?.()
  }
}

/** A tab of the page with the brief named as the one thing to change. */
export class Tab {
  readonly store = new HeldStore()
  readonly keeper = new WorkKeeper(this.store)
  history = new WorkHistory(EXAMPLE_WORK)
  readonly #channel = [...Channel.open].at(-1)

  static open(): Promise<Tab> {
    return new Tab().start()
  }

  async start(): Promise<Tab> {
    this.history = new WorkHistory(await this.keeper.start(EXAMPLE_WORK))
    this.keeper.follow(this.history)
    return this
  }

  get name(): string {
    return this.history.now.brief.name
  }

  /** As typing does. */
  rename(name: string): void {
    this.history.change((work) => ({ ...work, brief: { ...work.brief, name } }))
    this.keeper.put(this.history.now)
  }

  /** Types, and has it written. */
  async write(name: string): Promise<void> {
    this.rename(name)
    await this.keeper.write()
  }

  /** As closing does: a note is left, and no later word is heard. */
  leave(): void {
    this.keeper.leave()
    this.die()
  }

  /** As a crash does: nothing more is heard or written. */
  die(): void {
    this.#channel?.close()
  }

  /** Names of the briefs that lie aside, oldest first. */
  async aside(): Promise<readonly unknown[]> {
    const records = await this.store.aside()
    return records.map(({ record }) => nameIn(record))
  }
}

function nameIn(record: unknown): unknown {
  const { work } = record as { work?: { brief?: { name?: string } } }
  return work?.brief?.name ?? record
}
