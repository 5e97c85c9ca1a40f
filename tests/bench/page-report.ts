import type { FirstLoad } from './first-load'
import type { MainThread } from './main-thread'
import type { Reaction } from './page-clock'
import { quantile } from './program/figures'
import { figures, table, time } from './table'

/** Everything measured in the page. */
export interface PageFigures {
  readonly loads: readonly FirstLoad[]
  readonly typed: readonly Reaction[]
  readonly dragged: readonly Reaction[]
  /** While all wishes were typed. */
  readonly typing: MainThread
  /** Times between frames while brushing, ms. */
  readonly frames: readonly number[]
  readonly brushing: MainThread
}

/** What the page is held to. */
const REACTION_MS = 50
const FRAME_MS = 16.7
/** Frames of a 60 Hz screen are told 16.6 to 16.8 ms apart. */
const FRAME_JITTER_MS = 0.3
const LATE_MS = FRAME_MS + FRAME_JITTER_MS
const SCRIPT_BYTES = 300_000
const INTERACTIVE_MS = 1500

const P95 = 0.95
const BYTES_PER_KB = 1000

const METHOD = `The built page, minified, from a local server in headless Chromium without a graphics card, 1440 × 900,
neither processor nor network slowed down. The clock is in the page: it starts with the time stamp of the
input event. *Blend* is when the shares at the top are other ones, *region* when the edge of the map is another
one (heights on a grid of 60 × 60 included), *drawn* the frame that shows both. Forty oils of the library with
invented prices, five wishes; one of them is typed, or dragged half a point at a time, each step answered
before the next.

A first visit is a fresh profile with nothing cached. "Takes input" is when the first field is there; JavaScript
is what was asked for before the first blend stood there, worker included, each file gzipped.`

interface Line {
  readonly what: string
  readonly values: readonly number[]
  readonly most?: number
  readonly unit?: (value: number) => string
  /** Why it falls short, where it does. */
  readonly reason?: string
}

/** Why a target is missed, where it is. */
const SHORTFALLS = {
  reaction:
    'Measured alone in Node, the solver is the small part: about 1 ms for the blend and what lies around it, 10 ms for the region with its heights. They go to the worker one after the other, and between them the page draws forty rows, eight wishes and the map anew.',
  frames:
    'The page draws lines for 7 ms of a frame at most, by its own clock. But Chromium only notes the strokes down then; without a graphics card the processor paints them afterwards, on the same thread, unseen by that clock. A move of the brush then clears them and begins again.',
  scripts:
    "The library's data and zod, which checks them, are in the page's files and again in the worker's.",
}

/** The section on the page. */
export function pageSection(found: PageFigures, where: string): string {
  const { typed, typing, frames, brushing, loads } = found
  const lines = linesOf(found)
  const missed = lines.filter((line) => line.most !== undefined && medianOf(line) > line.most)
  const reasons = new Set(missed.flatMap(({ reason }) => reason ?? []))
  if (frames.some((one) => one > LATE_MS)) reasons.add(SHORTFALLS.frames)
  return [
    where,
    table(['what', 'median', 'p95', 'times', 'target for the median', 'met'], lines.map(cells)),
    mainThreadText('Of a typed wish', typing, typed.length),
    framesText(frames),
    mainThreadText('Of a frame', brushing, frames.length),
    ...(reasons.size > 0 ? ['### Where the page falls short, and why', bullets(reasons)] : []),
    scriptsText(loads.at(-1)?.scripts ?? []),
    METHOD,
  ].join('\n\n')
}

function bullets(texts: Iterable<string>): string {
  return Array.from(texts, (text) => `- ${text}`).join('\n')
}

function linesOf({ loads, typed, dragged }: PageFigures): Line[] {
  const load = (what: string, of: (load: FirstLoad) => number): Line => ({
    what: `first visit: ${what}`,
    values: loads.map(of),
    most: INTERACTIVE_MS,
  })
  return [
    ...reactionLines('typed wish', typed),
    ...reactionLines('dragged wish', dragged),
    load('takes input', ({ input }) => input),
    load('first blend', ({ blend }) => blend),
    load('map drawn', ({ map }) => map),
    {
      ...load('JavaScript before the first blend, gzip', ({ scripts }) =>
        scripts.reduce((sum, one) => sum + one.gzipBytes, 0),
      ),
      most: SCRIPT_BYTES,
      unit: kilobytes,
      reason: SHORTFALLS.scripts,
    },
  ]
}

function reactionLines(what: string, reactions: readonly Reaction[]): Line[] {
  return [
    { what: `${what}: blend`, values: reactions.map(({ blend }) => blend) },
    { what: `${what}: region`, values: reactions.map(({ region }) => region) },
    {
      what: `${what}: both drawn`,
      values: reactions.map(({ drawn }) => drawn),
      most: REACTION_MS,
      reason: SHORTFALLS.reaction,
    },
  ]
}

function cells(line: Line): string[] {
  const { what, values, most, unit = time } = line
  const sorted = values.toSorted((a, b) => a - b)
  const median = medianOf(line)
  return [
    what,
    unit(median),
    unit(quantile(sorted, P95)),
    String(values.length),
    most === undefined ? '' : unit(most),
    most === undefined ? '' : verdict(median <= most),
  ]
}

function medianOf({ values }: Line): number {
  return quantile(
    values.toSorted((a, b) => a - b),
    1 / 2,
  )
}

const verdict = (isMet: boolean) => (isMet ? 'yes' : '**no**')
const kilobytes = (bytes: number) => `${figures(bytes / BYTES_PER_KB)} kB`

function mainThreadText(
  what: string,
  { script, style, layout, all }: MainThread,
  count: number,
): string {
  const each = (ms: number) => time(ms / count)
  return (
    `${what} the main thread was busy ${each(all)} in the mean: ${each(script)} of it in scripts, ` +
    `${each(style)} with styles, ${each(layout)} with layout, the rest with painting and whatever else.`
  )
}

function framesText(frames: readonly number[]): string {
  const sorted = frames.toSorted((a, b) => a - b)
  const row = (what: string, value: number) => [
    what,
    time(value),
    `${FRAME_MS} ms`,
    verdict(value <= LATE_MS),
  ]
  const late = frames.filter((one) => one > LATE_MS).length
  return [
    `Brushing 20,000 lines, ${frames.length} frames during one drag, ${late} of them late:`,
    table(
      ['time between frames', 'found', 'target', 'met'],
      [
        row('median', quantile(sorted, 1 / 2)),
        row('p95', quantile(sorted, P95)),
        row('longest', sorted.at(-1) ?? NaN),
      ],
    ),
  ].join('\n\n')
}

function scriptsText(scripts: FirstLoad['scripts']): string {
  const parts = scripts
    .toSorted((a, b) => b.gzipBytes - a.gzipBytes)
    .map(({ name, gzipBytes }) => `${withoutHash(name)} ${kilobytes(gzipBytes)}`)
  return `The JavaScript of a first visit: ${parts.join(', ')}.`
}

/** A file's name as the source has it: without its folder and the hash of its content. */
function withoutHash(path: string): string {
  return (path.split('/').at(-1) ?? path).replace(/-[\w-]{8}\.js$/u, '.js')
}
