/** A day as people file it: YYYY-MM-DD. */
const DAY = /^(\d{4})-(\d{2})-(\d{2})$/u

const MS_PER_DAY = 86_400_000

/** Whether a text names a day of the calendar. */
export function isDay(text: string): boolean {
  return msOf(text) !== undefined
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
  const ms = Date.UTC(Number(year), Number(month) - 1, Number(day))
  return Number.isFinite(ms) && new Date(ms).toISOString().startsWith(text) ? ms : undefined
}
