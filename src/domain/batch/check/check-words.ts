/** A number that a paper may bear: three signs or more, a figure among them. */
export function isPaperNumber(text: string | undefined): text is string {
  return text !== undefined && text.replaceAll(/\W/gu, '').length >= 3 && /\d/u.test(text)
}

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
