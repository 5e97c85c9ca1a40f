/** A day as people file it: YYYY-MM-DD. */
const DAY = /^(\d{4})-(\d{2})-(\d{2})$/u

const MS_PER_DAY = 86_400_000

/** Years that days of a batch may lie in; beyond them is a slip of the pen. */
const YEARS = { least: 1900, most: 2999 }

/** Whether a text names a day of the calendar, in a year that soap is made in. */
export function isDay(text: string): boolean {
  return msOf(text) !== undefined
}

/** What is wrong with a text that names no day. */
export function noDay(text: string): string {
  return `"${text}" is no day from ${YEARS.least} to ${YEARS.most}. Write it as 2026-11-25.`
}

/** The day so many days later. Throws where the first is no day; the checks never let one through. */
export function daysAfter(day: string, days: number): string {
  const ms = msOf(day)
  if (ms === undefined) throw new Error(`${day} is no day`)
  return new Date(ms + days * MS_PER_DAY).toISOString().slice(0, 'YYYY-MM-DD'.length)
}

function msOf(text: string): number | undefined {
  const [, year, month, day] = DAY.exec(text) ?? []
  if (year === undefined || month === undefined || day === undefined) return undefined
  if (Number(year) < YEARS.least || Number(year) > YEARS.most) return undefined
  const ms = Date.UTC(Number(year), Number(month) - 1, Number(day))
  return Number.isFinite(ms) && new Date(ms).toISOString().startsWith(text) ? ms : undefined
}
