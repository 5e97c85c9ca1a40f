import loadHighs, { type Highs, type Model, type ModelData } from 'highs'
import { modelData } from '../../../../src/domain/lp/solvers/highs'
import { NOTHING_TO_FREE, type MixedProgram, type Rival, type RivalModel } from './rival'

/** Without its log, which would go to the console. */
const QUIET = { output_flag: false }

/** With 0-1 variables: to the end, where HiGHS would stop at a gap of 1e-4. */
const TO_THE_END = { ...QUIET, mip_rel_gap: 0, mip_abs_gap: 0 }

/** A kept model starts from its last basis, which presolve would throw away. */
const KEPT = { ...QUIET, presolve: 'off' }

/**
 * HiGHS in its two documented forms: a model made of arrays for every solve, and a model that is kept,
 * changed in place and run again from its last basis.
 */
export async function highs(): Promise<{ readonly cold: Rival; readonly kept: Rival }> {
  const solver = await loadHighs()
  return {
    cold: { name: 'highs', prepare: (program) => coldModel(solver, program) },
    kept: { name: 'highs, model kept', prepare: (program) => keptModel(solver, program) },
  }
}

function coldModel(highs: Highs, program: MixedProgram): RivalModel {
  const data = dataOf(program)
  const options = program.binary ? TO_THE_END : QUIET
  const found = new Found(highs)
  return {
    setCost: (cost) => data.colCost.set(Array.from(cost)),
    setRow(row, lower, upper) {
      data.rowLower[row] = lower
      data.rowUpper[row] = upper
    },
    solve: () =>
      highs.withModel(data, (model) => {
        model.options.set(options)
        found.run(model)
      }),
    verdict: () => found.verdict(),
    point: () => found.x,
    dispose: NOTHING_TO_FREE,
  }
}

function keptModel(highs: Highs, program: MixedProgram): RivalModel {
  const model = highs.createModel(dataOf(program))
  model.options.set(KEPT)
  const all = { kind: 'range', from: 0, to: program.cost.length - 1 } as const
  const found = new Found(highs)
  return {
    setCost: (cost) => void model.changeColsCost(all, Float64Array.from(cost)),
    setRow: (row, lower, upper) => void model.changeRowBounds(row, lower, upper),
    solve: () => found.run(model),
    verdict: () => found.verdict(),
    point: () => found.x,
    dispose: () => model.dispose(),
  }
}

/** What a run came to, copied out of the WebAssembly memory. */
class Found {
  x = new Float64Array()
  #status: number | undefined
  #objective = NaN

  constructor(private readonly highs: Highs) {}

  run(model: Model): void {
    this.#status = model.run().modelStatus
    this.#objective = model.getObjectiveValue()
    this.x = Float64Array.from(model.getSolution().colValue)
  }

  verdict() {
    const { modelStatus } = this.highs.constants
    if (this.#status === modelStatus.optimal) return this.#objective
    return this.#status === modelStatus.infeasible ? 'infeasible' : 'no answer'
  }
}

function dataOf(program: MixedProgram) {
  const binary = new Set(program.binary)
  const { colCost, rowLower, rowUpper, ...rest } = modelData(program)
  const integrality = Array.from(program.cost, (_, j) => (binary.has(j) ? 1 : 0))
  return {
    ...rest,
    colCost: Float64Array.from(colCost),
    rowLower: Float64Array.from(rowLower),
    rowUpper: Float64Array.from(rowUpper),
    ...(binary.size > 0 ? { integrality } : {}),
  } satisfies ModelData
}
