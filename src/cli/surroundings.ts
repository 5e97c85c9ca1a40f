import type { Readable, Writable } from 'node:stream'

/** What a call of the command line meets outside itself: handed in, so that a test can run many in one process. */
export interface Surroundings {
  readonly stdin: Readable
  readonly stdout: Writable
  readonly stderr: Writable & { readonly isTTY?: boolean }
  readonly env: Readonly<Record<string, string | undefined>>
  /** The bytes of a file; rejects with the system's error where it can't be read. */
  readFile(path: string): Promise<Uint8Array>
  /**
   * From now until the returned function is called, a first Ctrl-C or SIGTERM calls `stop` instead of
   * ending the process; a second one ends it at once.
   */
  onStop(stop: () => void): () => void
}
