import { execFile } from 'node:child_process'
import { access, constants, mkdir, readdir } from 'node:fs/promises'
import { delimiter, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'

const run = promisify(execFile)

const CACHE = fileURLToPath(new URL('../../node_modules/.cache/redis-server', import.meta.url))
const NAMES = ['valkey-server', 'redis-server']

/** Debian's packages of the server, and of the libraries that a bare machine may lack. */
const SERVER = ['redis-server', 'redis-tools']
const LIBRARIES = ['libjemalloc2', 'liblua5.1-0', 'liblzf1', 'lua-bitop', 'lua-cjson', 'libatomic1']

/** A server's program, and where the libraries are that came with it. */
export interface RedisProgram {
  readonly path: string
  readonly libraries: string | undefined
}

/**
 * A server's program: that of REDIS_SERVER, one of the system, or Debian's, unpacked without root into
 * a folder of the project's own. Fails with what to do where there is none.
 */
export async function findRedis(): Promise<RedisProgram> {
  const named = process.env['REDIS_SERVER']
  if (named !== undefined && named !== '') return { path: named, libraries: undefined }
  const path = (await onPath()) ?? (await unpacked())
  if (path !== undefined) return path
  try {
    await mkdir(CACHE, { recursive: true })
    await run('apt-get', ['download', ...SERVER], { cwd: CACHE })
    // Not every Debian has all of these; whether the server runs with what there is shows below.
    for (const name of LIBRARIES)
      await run('apt-get', ['download', name], { cwd: CACHE }).catch(() => undefined)
    for (const file of await readdir(CACHE))
      if (file.endsWith('.deb')) await run('dpkg', ['-x', join(CACHE, file), CACHE])
  } catch (error) {
    throw new Error(noServer(error), { cause: error })
  }
  const found = await unpacked()
  if (found && (await starts(found))) return found
  throw new Error(noServer('none of Debian’s packages starts'))
}

async function onPath(): Promise<RedisProgram | undefined> {
  const folders = (process.env['PATH'] ?? '').split(delimiter)
  return firstThatRuns(NAMES.flatMap((name) => folders.map((folder) => join(folder, name))))
}

async function unpacked(): Promise<RedisProgram | undefined> {
  const found = await firstThatRuns([join(CACHE, 'usr/bin/redis-server')])
  if (!found) return undefined
  const machines = await readdir(join(CACHE, 'usr/lib'))
  const libraries = machines.map((machine) => join(CACHE, 'usr/lib', machine)).join(delimiter)
  return { ...found, libraries }
}

async function firstThatRuns(paths: readonly string[]): Promise<RedisProgram | undefined> {
  for (const path of paths) {
    const runs = await access(path, constants.X_OK).then(
      () => true,
      () => false,
    )
    if (runs) return { path, libraries: undefined }
  }
  return undefined
}

async function starts({ path, libraries }: RedisProgram): Promise<boolean> {
  const env = { ...process.env, LD_LIBRARY_PATH: libraries ?? '' }
  return run(path, ['--version'], { env }).then(
    () => true,
    () => false,
  )
}

function noServer(reason: unknown): string {
  return (
    `These tests need a Redis or Valkey server, and none was found (${String(reason)}). ` +
    'Install one (apt-get install redis-server), or give the path of its program in REDIS_SERVER.'
  )
}
