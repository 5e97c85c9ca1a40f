import { readFile, writeFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { format, resolveConfig } from 'prettier'

const FILE = fileURLToPath(new URL('results.md', import.meta.url))

const HEAD = `# How fast it is

Written by \`npm run bench\`; never by hand. Every figure and verdict is computed from the run; the reasons
beside a target that was missed are notes on the cause.
`

/** The sections, in the order they stand. */
const SECTIONS = ['Solver', 'In the page', 'Sweeps'] as const
export type SectionName = (typeof SECTIONS)[number]

/** Puts a section in place of the one of that name and leaves the others as they are. */
export async function writeSection(name: SectionName, body: string): Promise<void> {
  const before = await sections()
  before.set(name, body.trim())
  const text = [
    HEAD,
    ...SECTIONS.map((one) => `## ${one}\n\n${before.get(one) ?? 'Not measured.'}`),
  ]
  const options = { ...(await resolveConfig(FILE)), filepath: FILE }
  await writeFile(FILE, await format(text.join('\n\n'), options))
}

async function sections(): Promise<Map<string, string>> {
  const parts = (await textThatIs()).split(/^## /mu).slice(1)
  return new Map(
    parts.map((part): [string, string] => {
      const end = part.indexOf('\n')
      return [part.slice(0, end).trim(), part.slice(end).trim()]
    }),
  )
}

async function textThatIs(): Promise<string> {
  try {
    return await readFile(FILE, 'utf8')
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return ''
    throw error
  }
}
