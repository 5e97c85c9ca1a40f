import type { Highs, ModelData } from 'highs'
import type { LinearProgram, ProgramOutcome, SolveProgram } from './program'

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
  const model = highs.createModel(modelData(highs, program))
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

/** A program in the arrays of HiGHS, row by row. */
export function modelData(highs: Highs, program: LinearProgram): ModelData {
  const { variables, rows } = program
  const starts = [0]
  const indices: number[] = []
  const values: number[] = []
  for (const row of rows) {
    for (const [index, coefficient] of row.terms) {
      indices.push(index)
      values.push(coefficient)
    }
    starts.push(indices.length)
  }
  const { objectiveSense } = highs.constants
  return {
    numCols: variables.length,
    numRows: rows.length,
    sense: program.sense === 'min' ? objectiveSense.minimize : objectiveSense.maximize,
    colCost: variables.map(({ cost }) => cost),
    colLower: variables.map(({ lower }) => lower),
    colUpper: variables.map(({ upper }) => upper),
    rowLower: rows.map(({ lower }) => lower),
    rowUpper: rows.map(({ upper }) => upper),
    matrix: {
      format: 'csr',
      numRows: rows.length,
      numCols: variables.length,
      starts,
      indices,
      values,
    },
  }
}
