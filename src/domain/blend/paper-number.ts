/** A number that a paper may bear: three signs or more, a figure among them. */
export function isPaperNumber(text: string | undefined): text is string {
  return text !== undefined && text.replaceAll(/\W/gu, '').length >= 3 && /\d/u.test(text)
}
