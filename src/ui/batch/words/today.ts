/** Day of this machine's calendar as YYYY-MM-DD, which Swedish writes so. */
export function today(now = new Date()): string {
  return new Intl.DateTimeFormat('sv-SE').format(now)
}
