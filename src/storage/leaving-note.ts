import { z } from 'zod'
import { parseJson } from '../data/problems'
import type { WorkRecord } from './database'
import { keptRecord } from './work-schema'

/**
 * The last word of a page that is being closed. A database answers later, and a closing page hears no
 * answer; this is written before the call returns, and taken over into the database by the next page.
 */
export interface LeavingNote {
  readonly record: WorkRecord
  /** Id of the record of another tab that the page had last read. */
  readonly read?: string | undefined
}

const KEY = 'barwright-leaving'

const leavingNote = z.strictObject({ record: keptRecord, read: z.string().optional() })

/** Writes the note at once. */
export function leaveNote(note: LeavingNote): void {
  localStorage.setItem(KEY, JSON.stringify(note))
}

/** Takes the note away once its work lies in the database. */
export function dropNote(): void {
  localStorage.removeItem(KEY)
}

/** The text of the note that was left, if any. Where the browser bars this place, none could be. */
export function noteText(): string | undefined {
  try {
    return localStorage.getItem(KEY) ?? undefined
  } catch (error) {
    if (error instanceof DOMException && error.name === 'SecurityError') return undefined
    throw error
  }
}

/** The note of a text; undefined where it is none. */
export function noteOf(text: string): LeavingNote | undefined {
  const parsed = parseJson(leavingNote, text)
  return parsed.status === 'parsed' ? parsed.value : undefined
}
