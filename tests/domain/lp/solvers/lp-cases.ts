import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { z } from 'zod'

const bound = z.number().nullable()

const programFile = z.object({
  name: z.string(),
  sense: z.enum(['min', 'max']),
  variables: z.array(
    z.object({
      name: z.string(),
      lower: bound,
      upper: bound,
      cost: z.number(),
      integer: z.boolean(),
    }),
  ),
  rows: z.array(
    z.object({
      name: z.string(),
      lower: bound,
      upper: bound,
      terms: z.array(z.tuple([z.number(), z.number()])),
    }),
  ),
})

const problemFile = programFile.extend({
  title: z.string(),
  source: z.string(),
  optimum: z.number(),
  objectiveOffset: z.number().default(0),
})

const trapFile = programFile.extend({
  kind: z.string(),
  truth: z.object({
    status: z.enum(['optimal', 'infeasible']),
    optimum: z.number().nullish(),
  }),
})

/** A published linear programme with its verified optimum. */
export type Problem = z.infer<typeof problemFile>
/** A small program on which some solver is known to fail, with the truth. */
export type Trap = z.infer<typeof trapFile>

/** The published problems of tests/cases/lp/problems. */
export const problems: readonly Problem[] = filesIn('problems').map((text) =>
  problemFile.parse(text),
)

/** The traps of tests/cases/lp/traps. */
export const traps: readonly Trap[] = filesIn('traps').map((text) => trapFile.parse(text))

/** Whether a problem asks for whole numbers, which a LinearProgram can't. */
export function needsIntegers({ variables }: Problem): boolean {
  return variables.some(({ integer }) => integer)
}

function filesIn(folder: string): unknown[] {
  const path = fileURLToPath(new URL(`../../../cases/lp/${folder}/`, import.meta.url))
  const names = readdirSync(path).filter((name) => name.endsWith('.json'))
  return names.map((name): unknown => JSON.parse(readFileSync(path + name, 'utf8')))
}
