import type { FattyAcid } from '../domain/chemistry/fatty-acid'

/** Which acid a line names, and the line without that name. */
export type NamedAcid =
  | {
      readonly status: 'acid'
      readonly acid: string
      readonly label: string
      readonly rest: string
    }
  | { readonly status: 'unknown'; readonly label: string }
  | { readonly status: 'differ'; readonly labels: readonly string[] }

/** Names of the trade that the library's own names do not hold, by acid id. */
const OTHER_NAMES: Readonly<Record<string, readonly string[]>> = {
  oleic: ['vaccenic', 'elaidic', 'octadecenoic'],
  'alpha-linolenic': ['linolenic', 'octadecatrienoic'],
  'gamma-linolenic': ['gamma linolenic', 'gla'],
  linoleic: ['octadecadienoic'],
  palmitoleic: ['hexadecenoic'],
  myristoleic: ['tetradecenoic'],
  margaric: ['heptadecanoic', 'margarinic'],
  heptadecenoic: ['margaroleic'],
  gondoic: ['eicosenoic', 'gadoleic', 'icosenoic'],
  arachidic: ['icosanoic'],
  erucic: ['docosenoic'],
  nervonic: ['tetracosenoic'],
  caproic: ['hexanoic'],
  butyric: ['butanoic'],
  caprylic: ['octanoic'],
  capric: ['decanoic'],
  lauric: ['dodecanoic'],
}

/** The acid that a C-number means where it says no more, by carbons and double bonds. */
const USUAL: Readonly<Record<string, string>> = {
  '18:1': 'oleic',
  '18:2': 'linoleic',
  '18:3': 'alpha-linolenic',
  '20:1': 'gondoic',
  '20:2': 'eicosadienoic',
  '22:2': 'docosadienoic',
}

const C_NUMBER =
  /\bC?\s?(\d{1,2})\s?:\s?(\d)(?!\d)((?:\s*(?:OH\b|\(?\s*(?:n|ω|w|omega)\s?-?\s?\d\b\s*\)?|\(?\s*\d{0,2}\s?(?:cis|trans|c|t)\b\s?-?(?:n?\d{1,2}\b)?\s*\)?))*)/iu
const SIX = /(?:n|ω|w|omega)\s?-?\s?6/iu

/** Finds the acid that a line of a certificate names, by name or by C-number. */
export class AcidNames {
  readonly #names: readonly (readonly [name: string, acid: string])[]
  /** Acid by carbons and double bonds, and the other way. */
  readonly #numbers = new Map<string, string>()
  readonly #keys = new Map<string, string>()

  constructor(acids: Iterable<FattyAcid>) {
    const names: [string, string][] = []
    for (const { id, name, carbons, doubleBonds, hydroxyls, epoxides, rings = 0 } of acids) {
      const words = name.toLowerCase().match(/[a-z]+(?:ic|oic)\b/gu) ?? []
      for (const word of [id, ...words.slice(0, 2), ...(OTHER_NAMES[id] ?? [])])
        names.push([word, id])
      const key = `${carbons}:${doubleBonds}`
      this.#keys.set(id, key)
      if (hydroxyls + epoxides + rings === 0 && !this.#numbers.has(key)) this.#numbers.set(key, id)
    }
    for (const [key, id] of Object.entries(USUAL)) this.#numbers.set(key, id)
    this.#names = names.sort(([a], [b]) => b.length - a.length)
  }

  /** The acid a line names; undefined where it names none. */
  find(line: string): NamedAcid | undefined {
    const text = line.normalize('NFC').replaceAll('α', 'alpha').replaceAll('γ', 'gamma')
    const named = this.#byName(text)
    const number = C_NUMBER.exec(text)
    if (!number) return named && found(named.acid, named.word, text.replace(named.pattern, ' '))
    const [whole, carbons = '', bonds = '', suffix = ''] = number
    const key = `${Number(carbons)}:${bonds}`
    const acid = this.#byNumber(key, suffix)
    const label = `C${key}${suffix.replaceAll(/\s+/gu, ' ').trimEnd()}`
    const rest = text.replace(whole, ' ')
    if (!named) return acid === undefined ? { status: 'unknown', label } : found(acid, label, rest)
    if (this.#keys.get(named.acid) !== key)
      return { status: 'differ', labels: [named.word, `C${key}`] }
    return found(named.acid, `${named.word} ${label}`, rest.replace(named.pattern, ' '))
  }

  #byName(text: string) {
    for (const [word, acid] of this.#names) {
      const pattern = new RegExp(`(?<![\\p{L}-])${word}(?![\\p{L}])`, 'iu')
      if (pattern.test(text)) return { word, acid, pattern }
    }
    return undefined
  }

  #byNumber(key: string, suffix: string): string | undefined {
    if (/OH/u.test(suffix)) return key === '18:1' ? 'ricinoleic' : undefined
    if (key === '18:3' && SIX.test(suffix)) return 'gamma-linolenic'
    return this.#numbers.get(key)
  }
}

function found(acid: string, label: string, rest: string): NamedAcid {
  return { status: 'acid', acid, label, rest }
}
