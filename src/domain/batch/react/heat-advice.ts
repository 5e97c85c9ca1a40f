import { ALKALI_FORMULAS } from '../../chemistry/alkali'
import type { LyeTable } from '../../chemistry/lye-solution'
import { factOf } from '../order/facts'
import type { LyeHeat } from './heat'
import { alkalisOf } from '../order/order'
import type { Reckoning } from '../weigh/reckoning'

/** Water is called cold up to here, °C; warmer water is told to cool first. */
const COLD_WATER_C = 25

/** Lye made at or under this is as cold as ice, °C. */
const ICE_COLD_C = 5

/** What there is of a heat before its advice is written. */
type HeatFigures = Pick<
  LyeHeat,
  'level' | 'startC' | 'ceilingC' | 'boilsC' | 'uncertaintyK' | 'pureConcentrationPercent'
>

/** What to do about the heat of a lye: the heat itself first, then what foams, then what cold holds back. */
export function heatAdvice(reckoning: Reckoning, heat: HeatFigures): string[] {
  const foams = foaming(reckoning)
  return [
    ...levelAdvice(heat),
    ...(foams
      ? [
          'Milk, sugars and beer heat the lye further and make it foam: freeze them first, use a jug four times as large.',
        ]
      : []),
    ...iceColdAdvice(reckoning, heat, foams),
  ]
}

/** "119 °C (give or take 6 K) were no heat lost, and boils at 122 °C". */
export function ceilingInWords({ ceilingC, uncertaintyK, boilsC }: HeatFigures): string {
  const [ceiling, wrong, boils] = [ceilingC, uncertaintyK, boilsC].map((value) => value.toFixed(0))
  return `${ceiling} °C (give or take ${wrong} K) were no heat lost, and boils at ${boils} °C`
}

function levelAdvice(heat: HeatFigures): string[] {
  if (heat.level === 'calm') return []
  const first = waterAdvice(heat.startC)
  if (heat.level === 'hot') return [`It gets very hot: ${first} and add the hydroxide slowly.`]
  return [
    `It may boil out of the jug: it could reach ${ceilingInWords(heat)}. ${capital(first)}, take ice for part of it, ` +
      'add the hydroxide by spoonfuls, and never pour water onto it.',
  ]
}

function waterAdvice(startC: number): string {
  return startC <= COLD_WATER_C ? 'begin with cold water' : 'let the water cool first'
}

/** Milk and the like in the jug. */
function foaming({ order, facts }: Reckoning): boolean {
  return (order.liquids ?? []).some(
    ({ liquid, when }) => when === 'lye' && factOf(facts.liquids, liquid).heatsUp,
  )
}

/**
 * Ice holds hydroxide back while it melts: said of every lye with ice in it, also where ice is what this tool
 * advises, and of any other lye as cold as ice that is stronger than cold water holds.
 */
function iceColdAdvice(reckoning: Reckoning, heat: HeatFigures, foams: boolean): string[] {
  const { order, facts } = reckoning
  const holds = facts.lye && coldHolds(order, facts.lye)
  if (!holds) return []
  const percent = heat.pureConcentrationPercent
  const withIce = (order.lye?.iceGrams ?? 0) > 0 || heat.level === 'mayBoil'
  const coldAndStrong = (heat.startC <= ICE_COLD_C || foams) && percent > holds.percent
  if (!withIce && !coldAndStrong) return []
  return [
    `Ice-cold lye holds only about ${holds.percent} % ${holds.name}, and this is ${percent.toFixed(1)} %${withIce ? ', more until the ice has melted' : ''}: ` +
      'stir until no grain is left, or grains burn in the bar.',
  ]
}

/** The alkali of an order that ice-cold water holds least of. */
function coldHolds(
  order: Reckoning['order'],
  lye: Readonly<Record<'naoh' | 'koh', LyeTable>>,
): { name: string; percent: number } | undefined {
  return alkalisOf(order)
    .map((kind) => ({ name: ALKALI_FORMULAS[kind], percent: lye[kind].iceColdHolds.percent }))
    .sort((a, b) => a.percent - b.percent)[0]
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}
