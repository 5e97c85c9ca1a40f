import { constants } from 'node:fs'
import { type FileHandle, lstat, open, realpath, rename, stat, unlink } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'

/** What is known of a file without reading it. */
export interface FileFacts {
  /** Names the file itself, however many paths lead to it: device and inode. */
  readonly identity: string
  readonly isRegular: boolean
  readonly size: number
  /** When it was last written, ms. */
  readonly changedMs: number
}

/** A file that is open. */
export interface OpenFile {
  /** Reads up to the buffer's length from a place on; how many bytes came, 0 at the end. */
  read(into: Uint8Array, position: number): Promise<number>
  /** Appends bytes; how many of them were written, which may be fewer than given. */
  write(bytes: Uint8Array): Promise<number>
  truncate(size: number): Promise<void>
  /** Waits until all that was written is on the disk. */
  sync(): Promise<void>
  close(): Promise<void>
}

/** How a file is opened: to be read; created, where none may be there; or appended to, created where none is. */
export type OpenMode = 'read' | 'create' | 'append'

/**
 * All that a sweep does with files. Handed in, so that tests can let each single call fail; every call
 * rejects with the system's error.
 */
export interface SweepFiles {
  /** Undefined where there is no such file. Follows links. */
  facts(path: string): Promise<FileFacts | undefined>
  /** The path without links; that of the folder where the file is not there yet. */
  realPath(path: string): Promise<string>
  open(path: string, mode: OpenMode): Promise<OpenFile>
  rename(from: string, to: string): Promise<void>
  /** It is no fault where there is no such file. */
  remove(path: string): Promise<void>
  /** Waits until the names in the file's folder are on the disk. */
  syncFolderOf(path: string): Promise<void>
}

/** The files of the system. */
export const systemFiles: SweepFiles = {
  facts: async (path) => {
    const found = await orMissing(stat(path))
    return (
      found && {
        identity: `${found.dev}:${found.ino}`,
        isRegular: found.isFile(),
        size: found.size,
        changedMs: found.mtimeMs,
      }
    )
  },
  realPath: async (path) => {
    if (await orMissing(lstat(path))) return realpath(path)
    return join(await realpath(dirname(path)), basename(path))
  },
  open: async (path, mode) => openFile(await open(path, FLAGS[mode])),
  rename,
  remove: async (path) => {
    await orMissing(unlink(path))
  },
  syncFolderOf: async (path) => {
    const folder = await open(dirname(path), constants.O_RDONLY)
    try {
      await folder.sync()
    } finally {
      await folder.close()
    }
  },
}

const FLAGS: Readonly<Record<OpenMode, string>> = { read: 'r', create: 'wx', append: 'a' }

function openFile(handle: FileHandle): OpenFile {
  return {
    read: async (into, position) => (await handle.read(into, 0, into.length, position)).bytesRead,
    write: async (bytes) => (await handle.write(bytes)).bytesWritten,
    truncate: (size) => handle.truncate(size),
    sync: () => handle.sync(),
    close: () => handle.close(),
  }
}

/** What a look at a file came to; undefined where the file is not there. */
export async function orMissing<T>(look: Promise<T>): Promise<T | undefined> {
  try {
    return await look
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return undefined
    throw error
  }
}

/** The system's code of an error, such as ENOSPC; undefined where it has none. */
export function codeOf(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error ? String(error.code) : undefined
}

const PIECE = 256 * 1024
const MOST_TRIES = 100

/** The same files, with every call that a signal broke off made again. */
export function steady(files: SweepFiles): SweepFiles {
  const steadyFile = (file: OpenFile): OpenFile => ({
    read: (into, position) => again(() => file.read(into, position)),
    write: (bytes) => again(() => file.write(bytes)),
    truncate: (size) => again(() => file.truncate(size)),
    sync: () => again(() => file.sync()),
    close: () => file.close().catch(notBrokenOff),
  })
  return {
    facts: (path) => again(() => files.facts(path)),
    realPath: (path) => again(() => files.realPath(path)),
    open: async (path, mode) => steadyFile(await again(() => files.open(path, mode))),
    rename: (from, to) => again(() => files.rename(from, to)),
    remove: (path) => again(() => files.remove(path)),
    syncFolderOf: (path) => again(() => files.syncFolderOf(path)),
  }
}

async function again<T>(call: () => Promise<T>): Promise<T> {
  for (let tries = 1; ; tries++) {
    try {
      return await call()
    } catch (error) {
      if (codeOf(error) !== 'EINTR' || tries === MOST_TRIES) throw error
    }
  }
}

/** A file whose closing was broken off is closed; to close it again would close another's (close(2)). */
function notBrokenOff(error: unknown): void {
  if (codeOf(error) !== 'EINTR') throw error
}

/** The bytes of a file from a place on, in pieces. */
export async function* piecesOf(
  files: SweepFiles,
  path: string,
  from = 0,
): AsyncGenerator<Buffer<ArrayBuffer>> {
  const file = await files.open(path, 'read')
  try {
    for (let at = from; ;) {
      const piece = Buffer.allocUnsafeSlow(PIECE)
      const place = at
      const length = await file.read(piece, place)
      if (length === 0) return
      at += length
      yield piece.subarray(0, length)
    }
  } finally {
    await file.close()
  }
}

/** The whole of a small file. */
export async function wholeOf(files: SweepFiles, path: string): Promise<Buffer> {
  const pieces: Buffer[] = []
  for await (const piece of piecesOf(files, path)) pieces.push(piece)
  return Buffer.concat(pieces)
}

/** Appends every byte, however few go at once. */
export async function writeAll(file: OpenFile, bytes: Uint8Array): Promise<void> {
  for (let done = 0; done < bytes.length;) {
    const rest = bytes.subarray(done)
    const written = await file.write(rest)
    if (written <= 0) throw new Error('The system wrote nothing and said nothing of why')
    done += written
  }
}

/** Writes a small file as a whole or not at all: beside it, to the disk, then under its name. */
export async function writeWhole(files: SweepFiles, path: string, text: string): Promise<void> {
  const aside = `${path}.new`
  await files.remove(aside)
  const file = await files.open(aside, 'create')
  try {
    await writeAll(file, new TextEncoder().encode(text))
    await file.sync()
  } finally {
    await file.close()
  }
  await files.rename(aside, path)
  await files.syncFolderOf(path)
}
