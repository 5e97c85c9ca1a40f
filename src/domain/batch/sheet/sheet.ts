import { batchCode } from '../order/batch-code'
import { daysAfter } from '../order/dates'
import { guardRows, wrongRows } from './guard-rows'
import { ceilingInWords } from '../react/heat-advice'
import type { ReadyPlan } from '../result/plan'
import { type WorkStep, workSteps } from './steps'

/** A figure with its name, ready to print. */
export interface SheetRow {
  readonly what: string
  readonly value: string
}

/** All that a workshop sheet says, but the layout. */
export interface Sheet {
  readonly title: string
  readonly batchCode: string | null
  readonly madeOn: string | null
  readonly readyOn: string | null
  readonly process: ReadyPlan['process']
  readonly kind: ReadyPlan['kind']
  /** Never empty. */
  readonly cautions: readonly string[]
  readonly warnings: readonly string[]
  readonly steps: readonly WorkStep[]
  /** Superfat, lye and water. */
  readonly lyeRows: readonly SheetRow[]
  /** Where the superfat goes if one thing is wrong, the three worst. */
  readonly wrongRows: readonly SheetRow[]
  /** Mould, cut, cure; of a paste what it comes to. */
  readonly barRows: readonly SheetRow[]
  /** What the supplier's lots are called, and other papers. */
  readonly lots: readonly SheetRow[]
  readonly cost: ReadyPlan['cost']
}

/** A sheet, or why none is printed. */
export type SheetAnswer =
  | { readonly status: 'ready'; readonly sheet: Sheet }
  | { readonly status: 'refused'; readonly reasons: readonly string[] }

/** The sheet of a plan: refused while its leanest lots could leave free lye, and without cautions. */
export function sheetOf(plan: ReadyPlan, cautions: readonly string[]): SheetAnswer {
  if (plan.blocked) return { status: 'refused', reasons: [plan.blocked.message] }
  if (cautions.length === 0)
    return { status: 'refused', reasons: ['No sheet without the cautions. Load them.'] }
  const { papers = {} } = plan.order
  return {
    status: 'ready',
    sheet: {
      title: papers.product ?? 'Batch of soap',
      batchCode: batchCode(papers),
      madeOn: papers.madeOn ?? null,
      readyOn: readyOn(plan),
      process: plan.process,
      kind: plan.kind,
      cautions,
      warnings: plan.warnings,
      steps: workSteps(plan),
      lyeRows: lyeRows(plan),
      wrongRows: wrongRows(plan),
      barRows: barRows(plan),
      lots: Object.entries(plan.order.lots ?? {}).flatMap(([oil, { name, certificate }]) => {
        const told = [name, certificate && `certificate ${certificate}`].filter(Boolean)
        return told.length === 0 ? [] : [{ what: oil, value: told.join(', ') }]
      }),
      cost: plan.cost,
    },
  }
}

/** The day the cure ends; null where the day of making is not said, and of a paste, which has no cure. */
export function readyOn({ order, cure }: ReadyPlan): string | null {
  const madeOn = order.papers?.madeOn
  return madeOn === undefined || !cure ? null : daysAfter(madeOn, cure.days)
}

/** What the rows about bars stand under. */
export function barsTitle({ kind }: Pick<Sheet, 'kind'>): string {
  return kind === 'paste' ? 'Paste' : 'Bars'
}

function lyeRows(plan: ReadyPlan): SheetRow[] {
  const { figures, heat, containers, order } = plan
  const rows: (SheetRow | null)[] = [
    ...guardRows(plan),
    {
      what: 'Shares of the alkalis',
      value: order.alkaliBy === 'weight' ? 'by weight of pure hydroxide' : 'by mol',
    },
    {
      what: 'Lye',
      value: `${one(figures.lyeConcentrationPercent)} %, water to hydroxide ${figures.waterToHydroxide.toFixed(2)} : 1`,
    },
    heat && {
      what: 'Lye comes to about',
      value: `${heat.expectedC.toFixed(0)} °C (${heat.expectedLowC.toFixed(0)} to ${heat.expectedHighC.toFixed(0)}) in an open jug, from ${heat.startC} °C`,
    },
    heat && { what: 'At most it could reach', value: ceilingInWords(heat) },
    heat && { what: 'Lye volume', value: `${heat.volumeMl.toFixed(0)} ml at 20 °C` },
    containers && { what: 'Jug and pot', value: `${containers.jugMl} ml, ${containers.potMl} ml` },
  ]
  return rows.filter((row) => row !== null)
}

function barRows(plan: ReadyPlan): SheetRow[] {
  const { bars, cure, density, fresh, outcome } = plan
  const of = cure ? 'dry bars' : 'paste'
  const rows: (SheetRow | null)[] = [
    { what: cure ? 'Into the mould' : 'Into the jar', value: `${fresh.freshG.toFixed(0)} g` },
    density && {
      what: 'Batter',
      value: `${density.gPerMl.toFixed(3)} g/ml (${density.lowGPerMl.toFixed(2)} to ${density.highGPerMl.toFixed(2)})`,
    },
    bars && {
      what: 'Bars',
      value: `${bars.count} of ${bars.wetG.toFixed(0)} g wet, about ${bars.curedG.toFixed(0)} g dry, not under ${bars.driestG.toFixed(0)} g`,
    },
    cure && {
      what: 'Cure',
      value: `${cure.days} days; loses about ${one(cure.lossPercent)} % of its weight, down to ${one(cure.finalMoisturePercent)} % water`,
    },
    {
      what: 'Glycerol',
      value: `${outcome.balance.glycerolG.toFixed(0)} g, ${one((cure ?? fresh).glycerolPercent)} % of the ${of}`,
    },
    {
      what: 'Total fatty matter',
      value: `${one((cure ?? fresh).fattyMatterPercent)} % of the ${of}, predicted`,
    },
  ]
  return rows.filter((row) => row !== null)
}

function one(value: number): string {
  return value.toFixed(1)
}
