/** The plain letters of the page's typeface, so that a file needs no font installed. */
export async function fontFaces(family: string): Promise<string> {
  const first = family.split(',')[0]?.replaceAll(/["']/gu, '').trim() ?? ''
  const rules = [...document.styleSheets].flatMap(rulesOf).filter((rule) => isFaceOf(rule, first))
  const faces = await Promise.all(rules.map(embedded))
  return faces.join('\n')
}

function rulesOf(sheet: CSSStyleSheet): CSSFontFaceRule[] {
  return [...sheet.cssRules].filter((rule) => rule instanceof CSSFontFaceRule)
}

/** Whether a rule brings the letters of a family that every text needs: those from a space on. */
function isFaceOf({ style }: CSSFontFaceRule, family: string): boolean {
  const name = style.getPropertyValue('font-family').replaceAll(/["']/gu, '')
  const letters = style.getPropertyValue('unicode-range')
  return name === family && (letters === '' || /U\+0+-|U\+0-/iu.test(letters))
}

/** A font's rule with the font itself in it. */
async function embedded({ style, parentStyleSheet }: CSSFontFaceRule): Promise<string> {
  const address = /url\("?([^")]+)"?\)/u.exec(style.getPropertyValue('src'))?.[1]
  if (address === undefined) return ''
  const answer = await fetch(new URL(address, parentStyleSheet?.href ?? document.baseURI))
  const data = await asDataAddress(await answer.blob())
  return `@font-face{font-family:${style.getPropertyValue('font-family')};font-weight:${style.getPropertyValue('font-weight')};src:url(${data})}`
}

async function asDataAddress(blob: Blob): Promise<string> {
  const bytes = new Uint8Array(await blob.arrayBuffer())
  const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('')
  return `data:font/woff2;base64,${btoa(text)}`
}
