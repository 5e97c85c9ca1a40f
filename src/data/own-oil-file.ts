import { z } from 'zod'
import type { Problem } from '../domain/blend/check-blend'
import { libraryWith, ownOilsOf } from '../domain/blend/own-library'
import type { OwnOil } from '../domain/blend/own-oil'
import { figure } from './bounds'
import type { Library } from './library'
import { found, type Parsed, parseJson } from './problems'

const text = z.string().min(1).max(200)
const inciName = text.nullable().optional()

/** A stated figure, or with its tolerance. */
const stated = z
  .union([figure, z.strictObject({ value: figure, within: figure.optional() })], {
    error: ({ input }) =>
      `${found(input)} Give a number, or { "value": number, "within": number }.`,
  })
  .transform((one) => (typeof one === 'number' ? { value: one } : one))

/** Letters that a short name and a code may have, as in the library. */
const SHORT_NAME_LETTERS = 16

/** One oil of a maker's own as it stands in a file. */
export const ownOilShape = z.strictObject({
  id: z
    .string()
    .regex(/^own-[a-z0-9]+(-[a-z0-9]+)*$/, {
      error: ({ input }) =>
        `"${String(input)}" stands here. Begin with own- and use small letters, figures and hyphens, as in own-laurel.`,
    })
    .describe('Its id in briefs and batches, beginning with own-'),
  from: z.string().describe('The library’s oil that it is copied from; what is left out is copied'),
  name: text.optional().describe('Its name; left out, it is a lot of the oil it is copied from'),
  shortName: text.max(SHORT_NAME_LETTERS).optional(),
  code: z
    .string()
    .regex(/^[A-Za-z]{3,4}$/, 'A code is three or four letters')
    .optional(),
  colour: z
    .string()
    .regex(/^#[0-9A-F]{6}$/, 'A colour is # and six capital hex digits')
    .optional(),
  synonyms: z.array(text).readonly().optional(),
  inci: z
    .strictObject({ oil: inciName, sodiumSoap: inciName, potassiumSoap: inciName })
    .optional()
    .describe('Names on labels; copied only where no name is given'),
  kind: z
    .enum(['triglyceride', 'wax-ester', 'free-acid'])
    .optional()
    .describe('What binds its acids; decides which formula its alkali follows'),
  tags: z
    .array(z.string())
    .readonly()
    .optional()
    .describe('Such as plant, vegan, tree-nut; all or none'),
  acids: z
    .record(z.string(), stated)
    .optional()
    .describe('By acid id, percent of the acids; the rest is shared out as in the oil copied from'),
  saponificationValue: stated
    .optional()
    .describe('mg KOH per g, and within how much (1 % if left out, never under 0.5 %)'),
  iodineValue: stated.optional().describe('g iodine per 100 g'),
  unsaponifiableGPerKg: stated.optional().describe('g per kg'),
  lot: text.optional().describe('The lot in hand'),
  certificate: text.optional().describe('Number of the paper that the figures stand on'),
}) satisfies z.ZodType<OwnOil>

/** Oils of a maker's own in a brief or a batch. */
export const ownOilsShape = z
  .array(ownOilShape)
  .max(1000)
  .optional()
  .describe('Oils of your own, beside those of the library')

/** A file of a maker's own oils, version 1. */
export const ownOilsFile = z.strictObject({
  format: z.literal('barwright-oils/1'),
  oils: z.array(ownOilShape).max(1000).describe('Oils of your own'),
})

/** Oils as a file. */
export function ownOilsAsFile(oils: readonly OwnOil[]): unknown {
  return { format: 'barwright-oils/1', oils }
}

/** The library with a maker's own oils in force, or what is wrong with them, at `path[index]`. */
export function withOwnOils(
  library: Library,
  owns: readonly OwnOil[],
  path = 'ownOils',
): Parsed<Library> {
  const { oils, problems } = ownOilsOf(owns, library, path)
  return problems.length > 0
    ? { status: 'invalid', problems }
    : { status: 'parsed', value: libraryWith(library, oils) }
}

/** Reads the text of a file of own oils. */
export function readOwnOils(source: string): Parsed<readonly OwnOil[]> {
  const file = parseJson(ownOilsFile, source)
  return file.status === 'invalid' ? file : { status: 'parsed', value: file.value.oils }
}

const OWN_OILS_WHERE =
  'Oils of your own are taken by solve, range, frontier, terrain, at, alternatives, spread, batch and label only. Take them out.'

/** Where oils of one's own are not taken, so that none is left out in silence. */
export const noOwnOilsShape = z.array(ownOilShape).max(0, OWN_OILS_WHERE).optional()

/** The same for a file that was read with them. */
export function ownOilsRefused(owns: readonly OwnOil[] | undefined, path: string): Problem[] {
  return owns && owns.length > 0 ? [{ path, message: OWN_OILS_WHERE }] : []
}
