import { createWriteStream } from 'node:fs'
import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import type { BriefFile } from '../../../src/data/brief-file'
import { Random } from '../../generator/random'
import { fortyOils } from '../forty-oils'

/** Lines to sweep over, in a file. */
export interface Workload {
  readonly name: string
  readonly path: string
  readonly lines: number
}

const SEED = 12
/** Prices are drawn from so much less to so much more than they are. */
const LEAST_PART = 0.6
const MOST_PART = 1.6

/** Lines that name one brief of forty oils and give all their prices: a price list a night. */
export async function priceLines(folder: string, lines: number): Promise<Workload> {
  const brief = fortyOils()
  await writeFile(join(folder, 'forty.json'), JSON.stringify(brief))
  const path = await write(join(folder, 'prices.ndjson'), lines, brief, (prices, key) => ({
    key,
    brief: 'forty.json',
    prices,
  }))
  return { name: 'prices over one brief of 40 oils', path, lines }
}

/** Lines that are briefs of forty oils themselves, each with prices of its own: every member's formula. */
export async function briefLines(folder: string, lines: number): Promise<Workload> {
  const brief = fortyOils()
  const path = await write(join(folder, 'briefs.ndjson'), lines, brief, (prices) => ({
    ...brief,
    oils: Object.fromEntries(
      Object.entries(brief.oils).map(([oil, shelf]) => [
        oil,
        { ...shelf, pricePerKg: prices[oil] },
      ]),
    ),
  }))
  return { name: 'a brief of 40 oils a line', path, lines }
}

type LineOf = (prices: Readonly<Record<string, number>>, key: number) => object

async function write(path: string, count: number, { oils }: BriefFile, lineOf: LineOf) {
  const random = new Random(SEED)
  const drawn = (price = NaN) =>
    Math.round(price * (LEAST_PART + (MOST_PART - LEAST_PART) * random.next()) * 100) / 100
  function* lines() {
    for (let key = 0; key < count; key++) {
      const prices = Object.entries(oils).map(([oil, { pricePerKg }]) => [oil, drawn(pricePerKg)])
      yield `${JSON.stringify(lineOf(Object.fromEntries(prices) as Record<string, number>, key))}\n`
    }
  }
  await pipeline(Readable.from(lines()), createWriteStream(path))
  return path
}
