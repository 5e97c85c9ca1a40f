import { type OpenFile, type SweepFiles, systemFiles } from '../../src/sweep/files'

/** What a faulty call does instead. */
export type Fault =
  /** Rejects with the system's code, once, and works again after. */
  | { readonly code: string }
  /** Writes half of what it was given; calls that do not write are not touched. */
  | { readonly short: true }
  /** From this call on nothing works any more, as if the machine had stopped. */
  | { readonly dead: true }

/** Files of which the n-th call does something else, and how many calls there have been. */
export interface FaultyFiles extends SweepFiles {
  readonly calls: () => number
}

/** The files of the system but for one call, counted from 1. */
export function faultyFiles(files: SweepFiles, nth: number, fault: Fault): FaultyFiles {
  let calls = 0
  const met = <T>(call: () => Promise<T>): Promise<T> => {
    calls++
    if ('dead' in fault && calls >= nth) return Promise.reject(systemError('EIO'))
    if ('code' in fault && calls === nth) return Promise.reject(systemError(fault.code))
    return call()
  }
  const faulty = (file: OpenFile): OpenFile => ({
    read: (into, position) => met(() => file.read(into, position)),
    write: (bytes) =>
      met(() => {
        const half = 'short' in fault && calls === nth && bytes.length > 1
        return file.write(half ? bytes.subarray(0, bytes.length >> 1) : bytes)
      }),
    truncate: (size) => met(() => file.truncate(size)),
    sync: () => met(() => file.sync()),
    // A file is always closed, or the test itself would run out of them.
    close: async () => {
      await file.close()
      await met(() => Promise.resolve())
    },
  })
  return {
    calls: () => calls,
    facts: (path) => met(() => files.facts(path)),
    realPath: (path) => met(() => files.realPath(path)),
    open: (path, mode) => met(async () => faulty(await files.open(path, mode))),
    rename: (from, to) => met(() => files.rename(from, to)),
    remove: (path) => met(() => files.remove(path)),
    syncFolderOf: (path) => met(() => files.syncFolderOf(path)),
  }
}

function systemError(code: string): Error {
  return Object.assign(new Error(`${code}: as if by the system`), { code })
}

/** The files of the system without the wait for the disk, which only the loss of power could tell apart. */
export const unsyncedFiles: SweepFiles = {
  ...systemFiles,
  open: async (path, mode) => ({
    ...(await systemFiles.open(path, mode)),
    sync: () => Promise.resolve(),
  }),
  syncFolderOf: () => Promise.resolve(),
}
