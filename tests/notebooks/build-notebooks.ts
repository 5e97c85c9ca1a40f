import { execFile } from 'node:child_process'
import { mkdtemp, readdir } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'

const project = fileURLToPath(new URL('../..', import.meta.url))
const folder = join(project, 'notebooks')
const kit = join(project, 'node_modules/@observablehq/notebook-kit/dist/bin/notebooks.js')

/** File names of all notebooks, such as `01-oil-data.html`. */
export async function notebookNames(): Promise<string[]> {
  const names = await readdir(folder)
  return names.filter((name) => name.endsWith('.html')).sort()
}

/** Builds every notebook as `npm run notebooks` does, into a fresh folder; answers its path. */
export async function buildNotebooks(): Promise<string> {
  const out = await mkdtemp(join(tmpdir(), 'barwright-notebooks-'))
  const files = (await notebookNames()).map((name) => join(folder, name))
  const options = ['--root', folder, '--template', join(folder, 'page.tmpl'), '--out', out]
  await promisify(execFile)(process.execPath, [kit, 'build', ...options, '--', ...files], {
    cwd: project,
  })
  return out
}
