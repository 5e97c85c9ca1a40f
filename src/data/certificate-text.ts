import type { FattyAcid } from '../domain/chemistry/fatty-acid'
import type { OwnFigure } from '../domain/blend/own-acids'
import { AcidNames } from './acid-names'
import { figureOf } from './certificate-figure'

/** What a pasted certificate says, as far as it was understood. */
export interface CertificateText {
  /** By acid id, percent of the acids; isomers of one acid added up. */
  readonly acids: Readonly<Record<string, OwnFigure>>
  /** What they add to. */
  readonly sumPercent: number
  readonly saponificationValue?: OwnFigure | undefined
  readonly iodineValue?: OwnFigure | undefined
  readonly lot?: string | undefined
  readonly certificate?: string | undefined
  /** Lines that name an acid or a value and were not understood, with the reason. */
  readonly unread: readonly { readonly line: string; readonly reason: string }[]
}

const SAPONIFICATION = /saponif|verseif/iu
const IODINE = /\biod|\bjod/iu
const LOT = /\b(?:lot|batch|charge)\b\W*(?:no|nr|number)?\W*([\p{L}\d][\p{L}\d/-]*\d[\p{L}\d/-]*)/iu
const PAPER =
  /\b(?:certificate|coa|zertifikat)\b\W*(?:of analysis)?\W*(?:no|nr|number)?\W*([\p{L}\d][\p{L}\d/-]*\d[\p{L}\d/-]*)/iu
/** Lines that add up others, and would count them twice. */
const SUMS = /\b(?:total|sum|saturated|monounsaturated|polyunsaturated|sfa|mufa|pufa|trans)\b/iu

/** The longest text that is read, in characters: a certificate has a page or two. */
export const LONGEST_CERTIFICATE = 50_000

/**
 * Reads the text of a certificate of analysis: acids by name or C-number with percent, saponification and iodine
 * value, lot and number of the paper. A specified range beside a result gives way to the result; a range
 * alone counts as its middle within its half. What is not understood is told, nothing is guessed.
 */
export function readCertificate(
  text: string,
  acids: ReadonlyMap<string, FattyAcid>,
): CertificateText {
  const names = new AcidNames(acids.values())
  const shares: Record<string, OwnFigure> = {}
  const seen = new Set<string>()
  const unread: { line: string; reason: string }[] = []
  const values: { saponificationValue?: OwnFigure; iodineValue?: OwnFigure } = {}
  const papers: Pick<Mutable<CertificateText>, 'lot' | 'certificate'> = {}
  for (const line of text.slice(0, LONGEST_CERTIFICATE).split(/[\r\n;]+/u)) {
    const value = SAPONIFICATION.test(line)
      ? ('saponificationValue' as const)
      : IODINE.test(line)
        ? ('iodineValue' as const)
        : undefined
    if (value) {
      const figure = figureOf(line)
      if (figure && values[value] === undefined) values[value] = figure
      else
        unread.push({
          line: line.trim(),
          reason: figure ? 'It stands twice.' : 'There is no figure.',
        })
      continue
    }
    papers.lot ??= LOT.exec(line)?.[1]
    papers.certificate ??= PAPER.exec(line)?.[1]
    const named = names.find(line)
    if (!named) continue
    const reason = addAcid(named, line, shares, seen)
    if (reason !== undefined) unread.push({ line: line.trim(), reason })
  }
  const sumPercent = Object.values(shares).reduce((sum, share) => sum + share.value, 0)
  return { acids: shares, sumPercent, ...values, ...papers, unread }
}

type Mutable<T> = { -readonly [Key in keyof T]: T[Key] }
type Named = NonNullable<ReturnType<AcidNames['find']>>

/** Adds the share of a line; a reason where it was not understood. */
function addAcid(
  named: Named,
  line: string,
  shares: Record<string, OwnFigure>,
  seen: Set<string>,
): string | undefined {
  if (SUMS.test(line)) return 'It adds up others.'
  if (named.status === 'unknown') return `There is no acid ${named.label} in the library.`
  if (named.status === 'differ') return `Name and C-number differ: ${named.labels.join(' and ')}.`
  const figure = figureOf(named.rest)
  if (!figure) return 'There is no figure.'
  if (figure.value > 100) return `${figure.value} is more than 100 %.`
  if (seen.has(named.label)) return 'It stands twice.'
  seen.add(named.label)
  const before = shares[named.acid]
  shares[named.acid] = before ? added(before, figure) : figure
  return undefined
}

function added(a: OwnFigure, b: OwnFigure): OwnFigure {
  const value = Number((a.value + b.value).toFixed(6))
  const within = (a.within ?? 0) + (b.within ?? 0)
  return within > 0 ? { value, within } : { value }
}
