/** Hands a text to the browser's downloads as a file of that name. */
export function downloadText(name: string, text: string, type: string): void {
  downloadBlob(name, new Blob([text], { type }))
}

/** Hands anything to the browser's downloads as a file of that name. */
export function downloadBlob(name: string, blob: Blob): void {
  const address = URL.createObjectURL(blob)
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  URL.revokeObjectURL(address)
}

/** A name as part of a file's name: small letters, figures and hyphens, at most 60. */
export function fileStem(name: string): string {
  const MOST_LETTERS = 60
  const stem = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/gu, '-')
    .slice(0, MOST_LETTERS)
    .replace(/^-|-$/gu, '')
  return stem === '' ? 'brief' : stem
}
