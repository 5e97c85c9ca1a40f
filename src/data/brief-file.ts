import { z } from 'zod'
import type { OwnOil } from '../domain/blend/own-oil'
import type { Brief } from '../domain/optimise/brief/brief'
import type { BriefRules } from '../domain/optimise/brief/brief-rules'
import { figure } from './bounds'
import { noOwnOilsShape, ownOilsShape } from './own-oil-file'
import { found } from './problems'

const GOAL_FORMS =
  'Give one of { "minimise": measure }, { "maximise": measure } or { "closestTo": { oil: percent } }.'

const limit = figure.optional()

const blend = z.record(z.string(), figure)

/** The shape of a brief's rules in a file. */
export const rulesShape = z.strictObject({
  atMostOils: limit.describe('No more than so many oils'),
  absentOrAtLeast: limit.describe('An oil that is in has at least this share, in percent'),
  shareStep: limit.describe('Every share is a whole number of such steps, in percent'),
  requires: z
    .array(z.strictObject({ oil: z.string(), with: z.string() }))
    .optional()
    .describe('Pairs of oils of which the first is in only together with the second'),
  oneOf: z
    .array(z.array(z.string()))
    .optional()
    .describe('Groups of oils of which at most one is in'),
})

/** The file format of a brief, version 1; shares in percent of oil weight, prices per kg. */
export const briefFile = z.strictObject({
  format: z.literal('barwright-brief/1'),
  oils: z
    .record(z.string(), z.strictObject({ pricePerKg: limit, min: limit, max: limit }))
    .describe('The shelf by oil id: price per kg, least and most share in percent'),
  groups: z
    .array(z.strictObject({ name: z.string(), oils: z.array(z.string()), min: limit, max: limit }))
    .default([])
    .describe('Oils limited together, in percent'),
  measures: z
    .record(z.string(), z.strictObject({ min: limit, max: limit }))
    .default({})
    .describe('Ranges by measure id, in points, or money per kg for cost'),
  goal: z
    .union(
      [
        z.strictObject({ minimise: z.string() }),
        z.strictObject({ maximise: z.string() }),
        z.strictObject({ closestTo: blend }),
      ],
      { error: ({ input }) => `${found(input)} ${GOAL_FORMS}` },
    )
    .describe('What the blend should be best at'),
  robust: z
    .boolean()
    .optional()
    .describe('Whether ranges of measures hold for any lot of the oils, not only for typical ones'),
  rules: rulesShape
    .optional()
    .describe('Rules about which oils a blend uses at all, and by how much'),
  ownOils: ownOilsShape,
})

/** A brief where oils of one's own are not taken. */
export const briefOfLibrary = briefFile.extend({ ownOils: noOwnOilsShape })

/** A brief as it stands in a file. */
export type BriefFile = z.input<typeof briefFile>

/** The brief of a parsed file. */
export function briefOf({ format: _, ownOils: _own, ...brief }: z.output<typeof briefFile>): Brief {
  return brief
}

/** A brief as a file. */
export function briefAsFile(brief: Brief, ownOils: readonly OwnOil[] = []): BriefFile {
  const { oils, groups, measures, goal, robust, rules } = brief
  return {
    format: 'barwright-brief/1',
    ...(ownOils.length > 0 ? { ownOils: [...ownOils] } : {}),
    oils: { ...oils },
    groups: groups.map((group) => ({ ...group, oils: [...group.oils] })),
    measures: { ...measures },
    goal: 'closestTo' in goal ? { closestTo: { ...goal.closestTo } } : goal,
    ...(robust === undefined ? {} : { robust }),
    ...(rules === undefined ? {} : { rules: rulesAsFile(rules) }),
  }
}

function rulesAsFile({ requires, oneOf, ...figures }: BriefRules): BriefFile['rules'] {
  return {
    ...figures,
    ...(requires === undefined ? {} : { requires: requires.map((one) => ({ ...one })) }),
    ...(oneOf === undefined ? {} : { oneOf: oneOf.map((group) => [...group]) }),
  }
}
