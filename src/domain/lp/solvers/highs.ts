import type { Highs, ModelData } from 'highs'
import type { LinearProgram } from '../program'
import type { ProgramOutcome, SolveProgram } from './solve-program'

/**
 * Tightest feasibility tolerance HiGHS may use here, in the program's own units: shares are percent and
 * measures points, so this is far below what any scale or measure can tell.
 */
const FEASIBILITY_TOLERANCE = 1e-9

/** Makes a solver of a loaded HiGHS runtime (npm `highs`, WebAssembly, MIT). */
export function highsSolver(highs: Highs): SolveProgram {
  return (program) => solveWithHighs(highs, program)
}

function solveWithHighs(highs: Highs, program: LinearProgram): ProgramOutcome {
  const { modelStatus } = highs.constants
  const model = highs.createModel(modelData(program))
  try {
    model.options.set('output_flag', false)
    model.options.set('primal_feasibility_tolerance', FEASIBILITY_TOLERANCE)
    model.options.set('dual_feasibility_tolerance', FEASIBILITY_TOLERANCE)
    const { modelStatus: status } = model.run()
    if (status === modelStatus.infeasible) return { status: 'infeasible' }
    if (status === modelStatus.unbounded) return { status: 'unbounded' }
    if (status !== modelStatus.optimal) throw new Error(`HiGHS stopped with model status ${status}`)
    return {
      status: 'optimal',
      point: [...model.getSolution().colValue],
      objective: model.getObjectiveValue(),
    }
  } finally {
    model.dispose()
  }
}

/** A program in the arrays of HiGHS, row by row; what is zero is left out. */
export function modelData({ cost, lower, upper, rows }: LinearProgram): ModelData {
  const [numCols, numRows] = [cost.length, rows.length]
  const starts = [0]
  const indices: number[] = []
  const values: number[] = []
  for (const { coefficients } of rows) {
    for (let at = 0; at < numCols; at++) {
      const coefficient = coefficients[at] ?? NaN
      if (coefficient === 0) continue
      indices.push(at)
      values.push(coefficient)
    }
    starts.push(indices.length)
  }
  return {
    numCols,
    numRows,
    colCost: Float64Array.from(cost),
    colLower: Float64Array.from(lower),
    colUpper: Float64Array.from(upper),
    rowLower: Float64Array.from(rows, (row) => row.lower),
    rowUpper: Float64Array.from(rows, (row) => row.upper),
    matrix: { format: 'csr', numRows, numCols, starts, indices, values },
  }
}
