/** The text of a file, or why its bytes are none. */
export type DecodedText = { readonly text: string } | { readonly message: string }

const SAVE = 'Save it as UTF-8.'

/** Text is expected in UTF-8; what spreadsheets and old editors write instead is named. */
export function decodeText(bytes: Uint8Array): DecodedText {
  const [first, second] = bytes
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff))
    return { message: `The file is written in UTF-16. ${SAVE}` }
  if (isWideText(bytes))
    return { message: `The file is written in UTF-16 without a byte order mark. ${SAVE}` }
  try {
    return { text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) }
  } catch (error) {
    if (!(error instanceof TypeError)) throw error
    return { message: notUnicode(bytes) }
  }
}

/** Letters of UTF-16 without a mark have a zero in every other byte. */
function isWideText(bytes: Uint8Array): boolean {
  const start = bytes.subarray(0, 64)
  if (start.length < 4) return false
  const zeros = [0, 0]
  start.forEach((byte, at) => {
    if (byte === 0) zeros[at % 2] = (zeros[at % 2] ?? 0) + 1
  })
  const [even = 0, odd = 0] = zeros
  return Math.max(even, odd) > start.length / 4 && Math.min(even, odd) === 0
}

/** What stands at the first byte that UTF-8 does not have there. */
function notUnicode(bytes: Uint8Array): string {
  const at = firstBad(bytes)
  const before = bytes.subarray(0, at)
  const line = before.reduce((lines, byte) => (byte === 0x0a ? lines + 1 : lines), 1)
  const hex = (bytes[at] ?? 0).toString(16).toUpperCase().padStart(2, '0')
  const letter = new TextDecoder('windows-1252').decode(bytes.subarray(at, at + 1))
  return (
    `The file is not written in UTF-8: line ${line} has the byte ${hex}, which is "${letter}" in ` +
    `Latin-1 or Windows-1252. ${SAVE}`
  )
}

/** Decoding up to a place fails as soon as the bad byte is in it; found by halving. */
function firstBad(bytes: Uint8Array): number {
  let [good, bad] = [0, bytes.length]
  while (bad - good > 1) {
    const middle = Math.floor((good + bad) / 2)
    if (decodes(bytes.subarray(0, middle))) good = middle
    else bad = middle
  }
  return good
}

/** Whether bytes are UTF-8 as far as they go; a letter cut off at the end is none against them. */
function decodes(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true })
    return true
  } catch {
    return false
  }
}
