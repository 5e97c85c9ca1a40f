import { expose } from 'comlink'
import wasmUrl from 'highs/runtime?url'
import { type MixedOutcome, type MixedProgram, mixedHighs } from '../domain/cost/mixed'

const loading = import('highs').then(async ({ default: load }) =>
  mixedHighs(await load({ locateFile: () => wasmUrl })),
)

const service = {
  /** Solves a program, with its gap in the objective's unit. */
  async solve(program: MixedProgram, gap: number, seconds: number): Promise<MixedOutcome> {
    return (await loading)(program, gap, seconds)
  },
}

/** What the thread answers. */
export type MixedService = typeof service

expose(service)
