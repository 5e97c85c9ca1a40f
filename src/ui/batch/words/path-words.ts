import { ALKALI_TITLES } from '../../../domain/chemistry/alkali'
import { batchFacts } from '../../../data/batch-facts'
import { library } from '../../../state/library'
import type { Acid } from '../../../domain/batch/order/additions'

const PARTS: Readonly<Record<string, string>> = {
  purity: 'purity',
  purityIs: 'certificate',
  purityUpTo: 'highest purity',
  lyeSolution: 'solution',
  within: 'tolerance',
  tolerance: 'tolerance',
  certificate: 'certificate',
  saponificationValue: 'saponification value',
  name: 'lot',
  strengthPercent: 'strength',
  strengthFromPercent: 'least strength',
}

/** The field that holds a path of the order, as it is called on the page: "Olive oil, lot". */
export function fieldInWords(path: string, acids: readonly Acid[]): string {
  const [first = '', second = '', ...rest] = path.split(/[.[\]]+/u).filter((part) => part !== '')
  if (first === 'superfat') return 'Superfat'
  if (first === 'water') return 'Water'
  if (first === 'confirmedLean') return 'Reason'
  const what = rest[0] ?? (first === 'lots' || first === 'acids' ? '' : first)
  const part = PARTS[what] === undefined ? '' : `, ${PARTS[what]}`
  if (first === 'lots') return `${library.oils.get(second)?.name ?? second}${part}`
  if (first === 'acids') {
    const { acid = '' } = acids[Number(second)] ?? {}
    return `${batchFacts.acids.get(acid)?.name ?? 'Acid'}${part}`
  }
  return `${ALKALI_TITLES[second === 'koh' ? 'koh' : 'naoh']}${part}`
}

/** A message of the domain's without the paths of a file, which the page has fields for. */
export function messageForPage(message: string): string {
  return message
    .replaceAll(/ in (?:purityIs|acids)[\w.[\]]*/gu, '')
    .replaceAll(/ under lyeSolution\b/gu, ' as “ready-made solution”')
}
