import { createHash } from 'node:crypto'
import { library } from '../data/library'

/** Version and data of the program, by which answers of another are told apart. */
export function programOf(version: string): string {
  const { oils, acids, measures } = library
  const data = JSON.stringify([[...oils], [...acids], measures])
  return `${version} ${createHash('sha256').update(data).digest('hex')}`
}
