import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import type { BriefText } from './batch'
import { Recent } from './recent'

/** Texts of briefs that are kept, at some kB each. */
const MOST_TEXTS = 1024

/** The texts of briefs by their paths from a folder, each read once as long as it is asked for often. */
export function briefTextsIn(folder: string): (path: string) => BriefText {
  const texts = new Recent<BriefText>(MOST_TEXTS)
  return (path) => texts.get(path, () => readText(folder, path))
}

function readText(folder: string, path: string): BriefText {
  try {
    return { text: readFileSync(resolve(folder, path), 'utf8') }
  } catch (error) {
    if (error instanceof Error && 'code' in error) return { code: String(error.code) }
    throw error
  }
}
