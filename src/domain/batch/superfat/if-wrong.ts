import { oilOf } from '../../blend/library'
import { acidEquivalents } from '../../chemistry/acids'
import { ALKALI_NAMES, alkaliEquivalents } from '../../chemistry/alkali'
import { superfatFraction } from '../../chemistry/superfat'
import { percentFromFraction } from '../../units'
import { weighedAcids } from '../weigh/acid-weights'
import { bindsOf } from '../weigh/lots'
import { alkalisOf } from '../order/order'
import { contentOf, contentUpTo } from '../order/purity'
import { endsOf, errorsOf, EXACT } from './reach'
import type { Reckoning } from '../weigh/reckoning'
import { roundedUp } from '../weigh/rounding'

/** One thing gone wrong, all else as reckoned. */
export interface IfWrong {
  readonly code:
    | `acidForgotten.${number}`
    | `acidWeaker.${number}`
    | `purer.${'naoh' | 'koh'}`
    | 'largestLeanest'
    | 'exchanged'
    | 'lyeScale'
    | 'oilScale'
    | `otherLot.${string}`
  /** "The citric acid is forgotten". */
  readonly title: string
  /** "50 g in the plan, none in the pot". */
  readonly detail: string
  /** Typical superfat then, percent. */
  readonly superfatPercent: number
  /** What to do about it. */
  readonly says: string
}

/** Fat, hydroxide and acids of one case, mol. */
interface Case {
  readonly fatMol: number
  readonly alkaliMol: number
  readonly acidMol: number
}

/** Nearer to the wall than this, percent, a bar is tested before it is cut: an assumption. */
const CLOSE_PERCENT = 1

const OFFER_STEP_G = 1

/**
 * Where the superfat goes if one thing alone is wrong, the worst first: each acid forgotten or weaker, the
 * alkali as pure as it may be, the largest oil at its leanest, two oils exchanged, each scale one error off,
 * a certificate that belongs to another lot.
 */
export function ifOneThingIsWrong(reckoning: Reckoning): IfWrong[] {
  const base = endsOf(reckoning, 'typical', EXACT, 'all')
  const told = (
    code: IfWrong['code'],
    title: string,
    detail: string,
    change: Partial<Case>,
    mends?: string,
  ): IfWrong => {
    const one = { ...base, ...change }
    const superfatPercent = percentFromFraction(
      superfatFraction(one.alkaliMol, one.acidMol, one.fatMol),
    )
    const says = mends ?? saysOf(superfatPercent, one, reckoning)
    return { code, title, detail, superfatPercent, says }
  }
  return [
    ...acidCases(reckoning, base, told),
    ...alkaliCases(reckoning, base, told),
    ...oilCases(reckoning, base, told),
    ...scaleCases(reckoning, base, told),
  ].sort((a, b) => a.superfatPercent - b.superfatPercent)
}

/** Below so many grams of an acid, tenths are told, g. */
const FEW_G = 10

type Tell = (
  code: IfWrong['code'],
  title: string,
  detail: string,
  change: Partial<Case>,
  mends?: string,
) => IfWrong

function acidCases({ order, weights, facts }: Reckoning, base: Case, told: Tell): IfWrong[] {
  return weighedAcids(order, weights.acidGrams, facts).flatMap((acid, index) => {
    const { use, fact, grams, equivalentsMol } = acid
    if (grams <= 0) return []
    const name = fact.name.toLowerCase()
    const forgotten = told(
      `acidForgotten.${index}`,
      `The ${name} is forgotten`,
      `${roundedUp(grams, grams < FEW_G ? 0.1 : 1)} g in the plan, none in the pot`,
      { acidMol: base.acidMol - equivalentsMol },
    )
    const weaker = facts.acids.get(fact.weakerForm ?? '')
    if (!weaker || use.formSure === true) return [forgotten]
    const part = acidEquivalents(1, weaker) / acidEquivalents(1, fact)
    return [
      forgotten,
      told(
        `acidWeaker.${index}`,
        `The ${name} is the hydrate`,
        'the bag holds crystal water that nobody counted',
        { acidMol: base.acidMol - equivalentsMol * (1 - part) },
      ),
    ]
  })
}

function alkaliCases(reckoning: Reckoning, base: Case, told: Tell): IfWrong[] {
  const { order } = reckoning
  return alkalisOf(order).flatMap((kind) => {
    const [stated, most] = [contentOf(order, kind), contentUpTo(order, kind)]
    if (most <= stated) return []
    const mol = alkaliMolOf(reckoning, kind)
    const name = ALKALI_NAMES[kind]
    return [
      told(
        `purer.${kind}`,
        `The ${name} is purer than it says`,
        `${shown(most)} %, not ${shown(stated)}`,
        { alkaliMol: base.alkaliMol + mol * (most / stated - 1) },
      ),
    ]
  })
}

function alkaliMolOf(reckoning: Reckoning, kind: 'naoh' | 'koh'): number {
  const { weights } = reckoning
  const without = { ...weights, alkaliGrams: { ...weights.alkaliGrams, [kind]: 0 } }
  const all = endsOf(reckoning, 'typical', EXACT, 'all').alkaliMol
  return all - endsOf({ ...reckoning, weights: without }, 'typical', EXACT, 'all').alkaliMol
}

function oilCases({ order, weights, library }: Reckoning, base: Case, told: Tell): IfWrong[] {
  const binds = (oil: string) => bindsOf(oil, library, order)
  const mol = alkaliEquivalents
  const byWeight = Object.entries(weights.oilGrams).sort(([, a], [, b]) => b - a)
  const [largest, second] = byWeight
  if (!largest) return []
  const [id, grams] = largest
  const { low, typical } = binds(id)
  const leanest = told(
    'largestLeanest',
    `${oilOf(library, id).name} is the leanest there is`,
    `it takes ${low.toFixed(1)} mg KOH/g, not ${typical.toFixed(1)}`,
    { fatMol: base.fatMol - mol(grams, typical - low) },
  )
  return [leanest, ...(second ? [exchanged(largest, second)] : []), ...otherLots()]

  /** The two largest tins taken for each other. */
  function exchanged([a, gramsA]: [string, number], [b, gramsB]: [string, number]): IfWrong {
    const change = mol(gramsA - gramsB, binds(b).typical - binds(a).typical)
    const [nameA, nameB] = [oilOf(library, a).name, oilOf(library, b).name]
    return told(
      'exchanged',
      `${nameA} and ${nameB} are exchanged`,
      'each weighed from the other tin',
      {
        fatMol: base.fatMol + change,
      },
    )
  }

  /** A certificate that belongs to another lot: the leanest of ordinary ones instead. */
  function otherLots(): IfWrong[] {
    return Object.entries(order.lots ?? {}).flatMap(([oil, lot]) => {
      const g = weights.oilGrams[oil]
      if (g === undefined || lot.saponificationValue === undefined) return []
      const ordinary = bindsOf(oil, library, { process: order.process })
      return [
        told(
          `otherLot.${oil}`,
          `${oilOf(library, oil).name}: the certificate is another lot's`,
          `ordinary lots take ${ordinary.low.toFixed(1)} mg KOH/g at the least`,
          { fatMol: base.fatMol - mol(g, binds(oil).typical - ordinary.low) },
        ),
      ]
    })
  }
}

function scaleCases(reckoning: Reckoning, base: Case, told: Tell): IfWrong[] {
  const { order, weights, library } = reckoning
  if (!order.scale) return []
  const { oilG, lyeG } = errorsOf(order)
  const lean = (slipG: number) =>
    endsOf(reckoning, 'low', { oilG: 0, lyeG: slipG, contents: false }, 'all')
  const [bare, slipped] = [lean(0), lean(lyeG)]
  const short = [weights.oilGrams, weights.extraFatGrams].flatMap((fats) =>
    Object.entries(fats).map(([oil, g]) =>
      alkaliEquivalents(Math.min(g, oilG), bindsOf(oil, library, order).typical),
    ),
  )
  return [
    told(
      'lyeScale',
      `The lye scale reads ${lyeG} g low`,
      'hydroxide over, acid short, each by that much',
      {
        alkaliMol: base.alkaliMol + slipped.alkaliMol - bare.alkaliMol,
        acidMol: base.acidMol - (bare.acidMol - slipped.acidMol),
      },
      'weigh a coin first',
    ),
    told(
      'oilScale',
      `The oil scale reads ${oilG} g high`,
      'every oil short by that much',
      { fatMol: base.fatMol - short.reduce((sum, mol) => sum + mol, 0) },
      'weigh a coin first',
    ),
  ]
}

function saysOf(superfatPercent: number, one: Case, reckoning: Reckoning): string {
  if (superfatPercent < 0) {
    const grams = oilToMend(one, reckoning)
    return grams === null
      ? 'free lye: discard it as caustic waste'
      : `free lye. While liquid add oil, ${grams} g; never dry acid`
  }
  if (superfatPercent < CLOSE_PERCENT) return 'close to the wall: test before cutting'
  return 'no free lye by itself'
}

/** Grams of the largest oil that use up what is over, at its leanest; null for a wax. */
function oilToMend({ alkaliMol, acidMol, fatMol }: Case, reckoning: Reckoning): string | null {
  const { order, weights, library } = reckoning
  const [largest] = Object.entries(weights.oilGrams).sort(([, a], [, b]) => b - a)
  const low = largest ? bindsOf(largest[0], library, order).low : 0
  if (low <= 0) return null
  const grams = (alkaliMol - acidMol - fatMol) / alkaliEquivalents(1, low)
  const step = order.scale?.oilStepG ?? OFFER_STEP_G
  return String(roundedUp(grams, step))
}

function shown(fraction: number): string {
  return String(Number(percentFromFraction(fraction).toFixed(1)))
}
