import { MS_PER_SECOND, percentFromFraction } from '../domain/units'
import type { Writable } from 'node:stream'
import type { Counts } from './batch'

/** How far a sweep is. */
export interface Progress {
  /** Lines answered, those of earlier runs too. */
  readonly lines: number
  /** Part of the input that is answered, 0 to 1. */
  readonly doneFraction: number
  /** Of this run only. */
  readonly linesPerSecond: number
  /** Undefined where nothing has been answered yet. */
  readonly secondsLeft: number | undefined
}

/** Reckons the rate of this run and the time left, taking lines still to come to be as long as those read. */
export class Pace {
  readonly #startMs: number

  constructor(
    private readonly first: { readonly offset: number; readonly lines: number },
    private readonly inputBytes: number,
    private readonly nowMs: () => number,
  ) {
    this.#startMs = nowMs()
  }

  at(offset: number, lines: number): Progress {
    const seconds = (this.nowMs() - this.#startMs) / MS_PER_SECOND
    const bytesPerSecond = (offset - this.first.offset) / seconds
    return {
      lines,
      doneFraction: this.inputBytes === 0 ? 1 : offset / this.inputBytes,
      linesPerSecond: seconds > 0 ? (lines - this.first.lines) / seconds : 0,
      secondsLeft: bytesPerSecond > 0 ? (this.inputBytes - offset) / bytesPerSecond : undefined,
    }
  }
}

const BAR_WIDTH = 24

/** "━━━━━━──────────────────  25 %  250,000 lines  4,120 a second  3 min 2 s left". */
export function progressText({
  lines,
  doneFraction,
  linesPerSecond,
  secondsLeft,
}: Progress): string {
  const full = Math.floor(doneFraction * BAR_WIDTH)
  const bar = '━'.repeat(full) + '─'.repeat(BAR_WIDTH - full)
  const percent = `${Math.floor(percentFromFraction(doneFraction))} %`.padStart(5)
  const count = (value: number) => Math.round(value).toLocaleString('en')
  const left = secondsLeft === undefined ? '' : `  ${durationText(secondsLeft)} left`
  return `${bar}  ${percent}  ${count(lines)} lines  ${count(linesPerSecond)} a second${left}`
}

/** "3 min 2 s". */
export function durationText(seconds: number): string {
  const whole = Math.ceil(seconds)
  const [hours, minutes] = [Math.floor(whole / 3600), Math.floor((whole % 3600) / 60)]
  if (hours > 0) return `${hours} h ${minutes} min`
  return minutes > 0 ? `${minutes} min ${whole % 60} s` : `${whole} s`
}

/** "9,990 solved, 8 infeasible, 2 invalid". */
export function countsText(counts: Counts): string {
  return Object.entries(counts)
    .filter(([, count]) => count > 0)
    .map(([status, count]) => `${count.toLocaleString('en')} ${status}`)
    .join(', ')
}

/** Where progress is shown. */
export interface Meter {
  show(progress: Progress): void
  /** Something to know that is no progress. */
  note(text: string): void
  end(): void
}

/** Milliseconds between two showings: on a screen, and in a log. */
const SCREEN_MS = 200
const LOG_MS = 10_000

const ERASE = '\r\u001b[K'

/** A bar that moves where there is a screen; elsewhere a line from time to time. */
export function startMeter(
  stream: Writable & { readonly isTTY?: boolean },
  nowMs: () => number,
): Meter {
  const intervalMs = stream.isTTY ? SCREEN_MS : LOG_MS
  let [shownMs, isBar] = [nowMs(), false]
  const write = (text: string) => stream.write(stream.isTTY ? `${ERASE}${text}` : `${text}\n`)
  return {
    show: (progress) => {
      if (nowMs() - shownMs < intervalMs) return
      shownMs = nowMs()
      isBar = stream.isTTY === true
      write(progressText(progress))
    },
    note: (text) => stream.write(stream.isTTY ? `${ERASE}${text}\n` : `${text}\n`),
    end: () => {
      if (isBar) stream.write(ERASE)
    },
  }
}

/** Shows nothing. */
export const SILENT: Meter = { show: () => undefined, note: () => undefined, end: () => undefined }
