export function paperNumberMessage(text: string): string {
  return `"${text}" is no number of a certificate or lot. Give the one on the paper, such as NA-2207.`
}

const LEAST_LETTERS = 12
const LEAST_DIFFERENT = 6

/** A reason that says something: two words or more, and not the same letters over and over. */
export function isReason(text: string): boolean {
  const words = text.match(/\p{L}{3,}/gu) ?? []
  const letters = text.toLowerCase().match(/[\p{L}\d]/gu) ?? []
  return (
    words.length >= 2 && letters.length >= LEAST_LETTERS && new Set(letters).size >= LEAST_DIFFERENT
  )
}
