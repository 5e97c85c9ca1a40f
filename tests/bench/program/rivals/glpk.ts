import loadGlpk, { type GLPK, type LP, type Result } from 'glpk.js/node'
import { type MixedProgram, NOTHING_TO_FREE, type Rival } from './rival'

/**
 * glpk.js: a problem object given to `solve`, without messages. Linear programs without its presolver:
 * that is faster here, and with it every infeasible program is answered "undefined". 0-1 variables with
 * it, which is its default.
 */
export async function glpk(): Promise<Rival> {
  const solver = await loadGlpk()
  return { name: 'glpk.js', prepare: (program) => prepare(solver, program) }
}

function prepare(glpk: GLPK, program: MixedProgram): ReturnType<Rival['prepare']> {
  const lp = asGlpk(glpk, program)
  const options = { msglev: glpk.GLP_MSG_OFF, presol: (program.binary?.length ?? 0) > 0 }
  let found: Result['result'] | undefined
  return {
    setCost: (cost) => lp.objective.vars.forEach((one, j) => (one.coef = cost[j] ?? NaN)),
    setRow(row, lower, upper) {
      const one = lp.subjectTo[row]
      if (one) one.bnds = bounds(glpk, lower, upper)
    },
    solve: () => (found = glpk.solve(lp, options).result),
    verdict() {
      if (found?.status === glpk.GLP_OPT) return found.z
      const none = found?.status === glpk.GLP_NOFEAS || found?.status === glpk.GLP_INFEAS
      return none ? 'infeasible' : 'no answer'
    },
    point: () => Float64Array.from(lp.objective.vars, ({ name }) => found?.vars[name] ?? 0),
    dispose: NOTHING_TO_FREE,
  }
}

function asGlpk(glpk: GLPK, program: MixedProgram): LP {
  const names = Array.from({ length: program.cost.length }, (_, j) => `x${j}`)
  return {
    name: 'blend',
    objective: {
      direction: glpk.GLP_MIN,
      name: 'objective',
      vars: names.map((name, j) => ({ name, coef: program.cost[j] ?? NaN })),
    },
    subjectTo: program.rows.map(({ coefficients, lower, upper }, i) => ({
      name: `r${i}`,
      vars: names
        .map((name, j) => ({ name, coef: coefficients[j] ?? NaN }))
        .filter(({ coef }) => coef !== 0),
      bnds: bounds(glpk, lower, upper),
    })),
    bounds: names.map((name, j) => ({
      name,
      ...bounds(glpk, program.lower[j] ?? NaN, program.upper[j] ?? NaN),
    })),
    binaries: (program.binary ?? []).map((j) => names[j] ?? ''),
  }
}

function bounds(glpk: GLPK, lower: number, upper: number) {
  const [hasLower, hasUpper] = [lower > -Infinity, upper < Infinity]
  const both = lower === upper ? glpk.GLP_FX : glpk.GLP_DB
  const type = hasLower ? (hasUpper ? both : glpk.GLP_LO) : hasUpper ? glpk.GLP_UP : glpk.GLP_FR
  return { type, lb: hasLower ? lower : 0, ub: hasUpper ? upper : 0 }
}
