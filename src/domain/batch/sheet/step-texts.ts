import { ML_PER_LITRE } from '../../units'
import type { CurePlan } from '../react/cure'
import type { LyeHeat } from '../react/heat'
import { ceilingInWords } from '../react/heat-advice'
import { pasteSteps } from './paste-steps'
import type { ReadyPlan } from '../result/plan'
import type { StepText } from './steps'

/*
 * The words of the steps. Temperatures and times are common practice: fats and lye meet at 35 to 50 °C in
 * cold process; an open pot cooks at 70 to 90 °C for one to three hours.
 */

/** Cold process: poured raw, becomes soap in the mould. */
export function coldSteps(plan: ReadyPlan): StepText[] {
  return [
    ...beforeCombining(plan),
    {
      id: 'combine',
      title: 'Lye into the oils',
      say: 'Pour the lye slowly into the fats and stir until it leaves a light trace.',
      tempC: { low: 35, high: 50 },
      cautions: ['Splashes of raw soap burn like lye.'],
      checks: ['Trace: a drop drawn over the surface stays to be seen.', 'No oil stands on top.'],
    },
    {
      id: 'trace',
      title: 'At trace',
      say: 'Stir in what is left, one after the other.',
      stages: ['trace'],
      onlyWithLines: true,
      cautions: flameCautions(plan),
    },
    ...lastSteps(plan, 'Pour into the mould and cover.'),
  ]
}

/** Hot process: cooked in the pot until it is soap. */
export function hotSteps(plan: ReadyPlan): StepText[] {
  return [
    ...beforeCombining(plan),
    {
      id: 'combine',
      title: 'Lye into the oils',
      say: 'Pour the lye slowly into the fats and stir until it is thick and even.',
      stages: [],
      tempC: { low: 60, high: 75 },
      cautions: ['Pot at most half full: it rises.', 'Splashes of raw soap burn like lye.'],
    },
    cookStep(),
    {
      id: 'done',
      title: 'Is it done?',
      say: 'Test before anything else goes in.',
      cautions: ['A pH strip can’t show that no lye is left. Do not taste it.'],
      checks: [
        'Looks like clear jelly right through, no white and no liquid.',
        'A few grams dissolved in warm neutral alcohol with phenolphthalein stay colourless; pink means lye is left: cook on.',
      ],
    },
    {
      id: 'afterCook',
      title: 'After the cook',
      say: 'Off the heat. Stir in the fat kept back first, then the rest.',
      stages: ['trace', 'afterCook'],
      onlyWithLines: true,
      tempC: { low: 60, high: 80 },
      cautions: [
        'Let it cool below 85 °C before anything cold or watery goes in: it splatters.',
        ...flameCautions(plan),
      ],
    },
    ...lastSteps(plan, 'Spoon into the mould and press out the air.'),
  ]
}

function beforeCombining(plan: ReadyPlan): StepText[] {
  const hot = plan.process === 'hot'
  return [
    { id: 'ready', title: 'Make ready', say: readySays(plan) },
    {
      id: 'hardFats',
      title: 'Melt the hard fats',
      say: 'Low heat until clear, then take the pot off.',
      stages: ['hardFats'],
      onlyWithLines: true,
      tempC: { low: 50, high: 65 },
      cautions: ['Hot fat burns: stay with it.'],
    },
    {
      id: 'liquidOils',
      title: 'Pour in the liquid oils',
      say: hot ? 'Bring all to cooking warmth.' : 'Bring all to working warmth.',
      stages: ['liquidOils', 'oils'],
      onlyWithLines: true,
      tempC: hot ? { low: 60, high: 75 } : { low: 35, high: 50 },
    },
    {
      id: 'water',
      title: 'Water into the jug',
      say: 'Dissolve what belongs in the water before any hydroxide goes in.',
      stages: ['water'],
      into: 'jug',
      onlyWithLines: true,
    },
    lyeStep(plan),
  ]
}

function readySays({ containers }: ReadyPlan): string {
  const vessels = containers
    ? ` Jug of ${litres(containers.jugMl)}, pot of ${litres(containers.potMl)} or larger.`
    : ''
  return `Read the cautions, put on goggles and gloves, zero the scales.${vessels}`
}

function lyeStep({ heat, order }: ReadyPlan): StepText {
  const solution = Object.keys(order.lyeSolution ?? {}).length > 0
  return {
    id: 'lye',
    title: 'Make the lye',
    say: solution
      ? 'Pour the lye solution into the water, slowly, stirring.'
      : 'Hydroxide into the water, a little at a time, stirring until clear. Weigh it twice.',
    stages: ['lye'],
    into: 'jug',
    cautions: [
      'Hydroxide into water, never water onto hydroxide.',
      'Goggles and gloves on; face away from the first mist. Somebody within call, children and animals away.',
      ...(heat ? [heatSays(heat)] : []),
      ...(heat?.advice ?? []),
    ],
    checks: ['No grain is left at the bottom.', 'Cooled to the warmth of the fats.'],
  }
}

/** What to be ready for, and what it stays below. */
function heatSays(heat: LyeHeat): string {
  const expected = `It comes to about ${heat.expectedC.toFixed(0)} °C`
  // Near the boiling point the advice that follows tells the ceiling.
  return heat.level === 'mayBoil'
    ? `${expected}.`
    : `${expected}; it could reach ${ceilingInWords(heat)}.`
}

function cookStep(): StepText {
  return {
    id: 'cook',
    title: 'Cook',
    say: 'Low heat, lid on; stir down when it rises, and scrape the edges in.',
    tempC: { low: 70, high: 90 },
    minutes: { low: 60, high: 180 },
    cautions: [
      'It can climb out of the pot: stay with it.',
      'Long gloves: the mass is hot and caustic.',
    ],
    checks: ['Weigh the pot before and after: the difference is water boiled off.'],
  }
}

/** What becomes of the soap: bars are moulded, cut and cured, a paste is put into jars. */
function lastSteps(plan: ReadyPlan, say: string): StepText[] {
  const { cure } = plan
  return cure ? [mouldStep(plan, say), ...afterMould(plan, cure)] : pasteSteps(plan)
}

function mouldStep({ bars, process }: ReadyPlan, say: string): StepText {
  return {
    id: 'mould',
    title: 'Into the mould',
    say: bars ? `${say} It makes ${bars.count} bars.` : say,
    cautions:
      process === 'cold' ? ['It is still lye for a day or two: gloves on.'] : ['It is hot.'],
  }
}

function afterMould({ bars }: ReadyPlan, cure: CurePlan): StepText[] {
  const cut = bars
    ? `Cut ${bars.count} bars of about ${bars.wetG.toFixed(0)} g; about ${bars.curedG.toFixed(0)} g when dry.`
    : 'Cut into bars.'
  return [
    {
      id: 'cut',
      title: 'Cut',
      say: cut,
      cautions: ['Gloves on: young soap still bites.'],
      checks: ['No wet pockets, no white grains. If there are, do not use or sell it.'],
    },
    {
      id: 'cure',
      title: 'Cure',
      say: `${cure.days} days on a rack in moving air; weigh marked bars every week.`,
      checks: ['Test a bar for free alkali before any is used or sold.'],
    },
  ]
}

/** The scent that catches fire first, where there is any. */
function flameCautions({ ingredients }: ReadyPlan): string[] {
  const scents = ingredients.filter(({ kind }) => kind === 'scent')
  const [first] = scents.flatMap(({ flashC }) => flashC ?? []).sort((a, b) => a - b)
  if (first === undefined)
    return scents.length > 0
      ? ['No flame near the fragrance; its sheet gives its flash point.']
      : []
  return [`No flame or hot plate near: the fragrance may catch fire from ${first} °C.`]
}

function litres(ml: number): string {
  return `${ml / ML_PER_LITRE} l`
}
