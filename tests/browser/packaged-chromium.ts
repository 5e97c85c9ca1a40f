import { execFile } from 'node:child_process'
import { createReadStream, createWriteStream, existsSync, type WriteStream } from 'node:fs'
import { mkdir, mkdtemp, readFile, rename, rm, writeFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { pipeline } from 'node:stream/promises'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { createBrotliDecompress } from 'node:zlib'

const PACKAGE = '@sparticuz/chromium'
const EXECUTABLE_MODE = 0o755
const cacheFolder = fileURLToPath(
  new URL('../../node_modules/.cache/barwright-chromium', import.meta.url),
)

export type Environment = Readonly<Record<string, string | undefined>>

export interface PackagedBrowser {
  readonly executablePath: string
  readonly env: Readonly<Record<string, string>>
}

/**
 * Unpacks the Chromium of the npm package once and says how to start it. The package holds a
 * headless browser for Linux with glibc on x64, with the shared libraries (NSS, NSPR, expat) and one font that a
 * bare machine lacks. Answers `undefined` where the package is missing or does not fit.
 */
export async function unpackChromium(env: Environment): Promise<PackagedBrowser | undefined> {
  const packageFolder = findPackage()
  if (packageFolder === undefined) return undefined
  if (process.platform !== 'linux' || process.arch !== 'x64' || !hasGlibc()) return undefined
  const folder = join(cacheFolder, await versionOf(packageFolder))
  if (!existsSync(folder)) await unpackInto(folder, join(packageFolder, 'bin'))
  const libraries = join(folder, 'libraries/lib')
  const inherited = env['LD_LIBRARY_PATH']
  return {
    executablePath: join(folder, 'chromium'),
    env: {
      LD_LIBRARY_PATH: inherited ? `${libraries}:${inherited}` : libraries,
      FONTCONFIG_FILE: join(folder, 'fonts.conf'),
    },
  }
}

/** False where the C library is another one, such as musl on Alpine Linux. */
function hasGlibc(): boolean {
  const { header } = process.report.getReport() as { header: { glibcVersionRuntime?: string } }
  return header.glibcVersionRuntime !== undefined
}

function findPackage(): string | undefined {
  try {
    const entry = createRequire(import.meta.url).resolve(PACKAGE)
    return entry.slice(0, entry.lastIndexOf(PACKAGE) + PACKAGE.length)
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'MODULE_NOT_FOUND')
      return undefined
    throw error
  }
}

async function versionOf(packageFolder: string): Promise<string> {
  const { version } = JSON.parse(await readFile(join(packageFolder, 'package.json'), 'utf8')) as {
    version: string
  }
  return version
}

/** Unpacks aside and renames at the end: whoever sees the folder sees it whole. */
async function unpackInto(folder: string, archives: string): Promise<void> {
  await mkdir(dirname(folder), { recursive: true })
  const aside = await mkdtemp(`${folder}-unpacking-`)
  try {
    const program = createWriteStream(join(aside, 'chromium'), { mode: EXECUTABLE_MODE })
    await decompress(join(archives, 'chromium.br'), program)
    await untar(join(archives, 'al2023.tar.br'), join(aside, 'libraries'))
    await untar(join(archives, 'fonts.tar.br'), join(aside, 'fonts'))
    await writeFile(join(aside, 'fonts.conf'), fontsConf(folder))
    await rename(aside, folder).catch((error: unknown) => unlessAlreadyThere(error, folder))
  } finally {
    await rm(aside, { recursive: true, force: true })
  }
}

/** Another worker was quicker: its copy is as good as ours. */
function unlessAlreadyThere(error: unknown, folder: string): void {
  if (!existsSync(folder)) throw error
}

/** Through a file: `tar` stops reading a pipe at the end mark, before its writer is done. */
async function untar(archive: string, into: string): Promise<void> {
  await mkdir(into)
  const plain = `${into}.tar`
  await decompress(archive, createWriteStream(plain))
  await promisify(execFile)('tar', ['-x', '--no-same-owner', '-f', plain, '-C', into])
  await rm(plain)
}

function decompress(archive: string, into: WriteStream): Promise<void> {
  return pipeline(createReadStream(archive), createBrotliDecompress(), into)
}

/** The machine's own fonts where it has some; the packaged one in any case. */
function fontsConf(folder: string): string {
  return `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>/usr/share/fonts</dir>
  <dir>/usr/local/share/fonts</dir>
  <dir>${folder}/fonts</dir>
  <cachedir>${folder}/fonts-cache</cachedir>
</fontconfig>
`
}
