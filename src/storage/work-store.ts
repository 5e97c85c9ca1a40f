import { pathText } from '../data/path-text'
import { type AsideRecord, type Database, openDatabase, type WorkRecord } from './database'
import { StorageFailure } from './failure'
import { dropNote, leaveNote, type LeavingNote, noteOf, noteText } from './leaving-note'
import { keptRecord, keptWork, type KeptWork } from './work-schema'

/** What lies in the database when a page asks for it. */
export type Loaded =
  | { readonly status: 'nothing' }
  | LoadedWork
  /** Something lay there that this program cannot use; it has been put aside. */
  | { readonly status: 'unreadable'; readonly reason: string }

export interface LoadedWork {
  readonly status: 'work'
  /** Of its record. */
  readonly id: string
  readonly work: KeptWork
  /** When it was written, ms since 1970. */
  readonly at: number
}

/** When something was kept, and whether it replaced work of another tab that this one never saw. */
export interface Kept {
  readonly at: number
  readonly replacedUnseen: boolean
}

/** The one record of present work. */
const NOW = 'now'

/** On which tabs tell each other that they have written. */
const CHANNEL = 'barwright-work'

/**
 * The one place that reads and writes kept work. Every tab of the page has one; the newest write
 * stands, the other tabs are told of it, and nothing that lay there unseen or unread is thrown away.
 */
export class WorkStore {
  #database: Promise<Database> | undefined
  /** Begins the id of every record that this tab writes. */
  readonly #tab = String(Math.random())
  #written = 0
  /** Id of the record of another tab that this one last took. */
  #read: string | undefined
  /** Whether a note of this tab lies for the next page. */
  #left = false
  readonly #channel = new BroadcastChannel(CHANNEL)

  /** Calls back when another tab has written. */
  onWrite(told: () => void): void {
    this.#channel.onmessage = told
  }

  /** Reads the kept work, see `take`. What does not parse is put aside first. */
  async load(): Promise<Loaded> {
    const database = await this.#open()
    await settleNote(database)
    const record: unknown = await database.get('work', NOW)
    if (record === undefined) return { status: 'nothing' }
    const parsed = keptRecord.safeParse(record)
    if (parsed.success) {
      const { id, work, at } = parsed.data
      return { status: 'work', id, work, at }
    }
    const reason = reasonOf(parsed.error)
    await putAside(database, record, reason)
    return { status: 'unreadable', reason }
  }

  /** The work that was read is now this tab's too: writing may replace it. Any other one goes aside. */
  take({ id }: LoadedWork): void {
    this.#read = id
  }

  /** Whether another tab has written since this one last took or wrote. */
  async hasNewer(): Promise<boolean> {
    const database = await this.#open()
    const record = await database.get('work', NOW)
    return record !== undefined && !this.#knows(record)
  }

  /** Writes the work. Throws where it could not be read again, or the browser keeps nothing. */
  async keep(work: KeptWork): Promise<Kept> {
    const record = this.#recordOf(work)
    const database = await this.#open()
    const replacedUnseen = await replace(database, record, (before) => this.#knows(before))
    if (this.#left) dropNote()
    this.#left = false
    this.#channel.postMessage(record.id)
    return { at: record.at, replacedUnseen }
  }

  /** Leaves the work for the next page, at once: this one is being closed. */
  leave(work: KeptWork): void {
    leaveNote({ record: this.#recordOf(work), read: this.#read })
    this.#left = true
  }

  /** All that was put aside, oldest first. */
  async aside(): Promise<readonly AsideRecord[]> {
    return (await this.#open()).getAll('aside')
  }

  #recordOf(work: KeptWork): WorkRecord {
    return recordOf(work, `${this.#tab}/${++this.#written}`)
  }

  #knows({ id }: WorkRecord): boolean {
    return id === this.#read || isOfTab(id, this.#tab)
  }

  async #open(): Promise<Database> {
    this.#database ??= openDatabase(() => (this.#database = undefined))
    try {
      return await this.#database
    } catch (error) {
      this.#database = undefined
      throw error
    }
  }
}

function recordOf(work: KeptWork, id: string): WorkRecord {
  const parsed = keptWork.safeParse(work)
  if (!parsed.success) throw new StorageFailure(reasonOf(parsed.error))
  return { format: 'barwright-work/1', id, at: Date.now(), work }
}

/**
 * Puts a record in the place of the one before; one that this tab does not know goes aside in the
 * same transaction. Read and write are asked for at once: a page that is being closed gets no second turn.
 */
async function replace(
  database: Database,
  record: WorkRecord,
  knows: (before: WorkRecord) => boolean,
): Promise<boolean> {
  const transaction = database.transaction(['work', 'aside'], 'readwrite')
  const works = transaction.objectStore('work')
  const reading = works.get(NOW)
  const writing = works.put(record, NOW)
  const saving = reading.then(async (before) => {
    if (before === undefined || knows(before)) return false
    const why = 'Written in another tab and replaced unseen'
    await transaction.objectStore('aside').add({ at: Date.now(), why, record: before })
    return true
  })
  const [unseen] = await Promise.all([saving, writing, transaction.done])
  return unseen
}

/** Takes what a closed page left over into the database, or aside where another tab wrote later. */
async function settleNote(database: Database): Promise<void> {
  const text = noteText()
  if (text === undefined) return
  const note = noteOf(text)
  const before = await database.get('work', NOW)
  if (!note || (before && before.at > note.record.at && !isOfTab(before.id, tabOf(note)))) {
    const why = note
      ? 'Left by a tab that closed before another wrote'
      : 'Left by a tab, unreadable'
    await database.add('aside', { at: Date.now(), why, record: note ?? text })
  } else if (!before || before.at <= note.record.at) {
    const knows = ({ id }: WorkRecord) => id === note.read || isOfTab(id, tabOf(note))
    await replace(database, note.record, knows)
  }
  dropNote()
}

const tabOf = ({ record }: LeavingNote) => record.id.slice(0, record.id.indexOf('/'))

function isOfTab(id: string, tab: string): boolean {
  return String(id).startsWith(`${tab}/`)
}

async function putAside(database: Database, record: unknown, why: string): Promise<void> {
  const transaction = database.transaction(['work', 'aside'], 'readwrite')
  await Promise.all([
    transaction.objectStore('aside').add({ at: Date.now(), why, record }),
    transaction.objectStore('work').delete(NOW),
    transaction.done,
  ])
}

/** The first thing wrong, with its place. */
function reasonOf({ issues }: { issues: readonly { path: PropertyKey[]; message: string }[] }) {
  const [first] = issues
  if (!first) throw new Error('A record was refused without a reason')
  return [pathText(first.path), first.message].filter((part) => part !== '').join(': ')
}
