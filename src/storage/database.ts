import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import { StorageFailure } from './failure'

/** One whole of everything put in, as it lies in the database. */
export interface WorkRecord {
  readonly format: 'barwright-work/1'
  /** Another one with every write, so that a tab knows whether it has seen the newest. */
  readonly id: string
  /** When it was written, ms since 1970. */
  readonly at: number
  /** Everything put in; checked each time it is read. */
  readonly work: unknown
}

/** A record that was not to be used, kept because it may hold work. */
export interface AsideRecord {
  /** When it was put aside, ms since 1970. */
  readonly at: number
  readonly why: string
  /** As it lay there; nothing is known of its shape. */
  readonly record: unknown
}

interface Stores extends DBSchema {
  work: { key: string; value: WorkRecord }
  aside: { key: number; value: AsideRecord }
}

export type Database = IDBPDatabase<Stores>

const NAME = 'barwright'

/** One step for each version of the database, oldest first. A step that was published never changes. */
const MIGRATIONS: readonly ((database: Database) => void)[] = [
  (database) => {
    database.createObjectStore('work')
    database.createObjectStore('aside', { autoIncrement: true })
  },
]

/**
 * Opens the database and brings it up to date. `onLost` is told when the connection is gone: the
 * browser took it, or another tab needs it closed to bring the database up to date.
 */
export function openDatabase(onLost: () => void): Promise<Database> {
  return new Promise((resolve, reject) => {
    const opening = openDB<Stores>(NAME, MIGRATIONS.length, {
      upgrade(database, from) {
        for (const migrate of MIGRATIONS.slice(from)) migrate(database)
      },
      blocked: () => reject(new StorageFailure(BLOCKED)),
      blocking: (_from, _to, event) => {
        ;(event.target as IDBDatabase).close()
        onLost()
      },
      terminated: onLost,
    })
    opening.then(resolve, reject)
  })
}

const BLOCKED = 'another tab runs an older Barwright; close that tab and reload this one'
