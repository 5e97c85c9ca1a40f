import { transfer } from 'comlink'
import { withNearest } from '../domain/optimise/solve/ask-space'
import { BlendSpace } from '../domain/optimise/space/blend-space'
import { checkBrief } from '../domain/optimise/brief/check-brief'
import { confirm } from '../domain/optimise/solve/confirm'
import { landOf } from '../domain/optimise/map/land'
import { solveAt } from '../domain/optimise/solve/point'
import type { SolveProgram } from '../domain/lp/solvers/solve-program'
import { sampleOfSpace } from '../domain/optimise/map/sample'
import { solveBrief } from '../domain/optimise/solve/solve'
import { solveWithJslp } from '../domain/lp/solvers/jslp'
import { solveWithOwn } from '../domain/lp/solvers/own'
import { oneStepStudy } from '../domain/optimise/studies/study'
import { studyBrief } from '../domain/optimise/solve/study'
import { UnsoundAnswer } from '../domain/lp/unsound-answer'
import { createExploring } from './explore'
import { createLots, type LotsLibrary } from './lots'
import { lastOf, resultOf } from './piecemeal'
import type { SolverName, SolverService } from './protocol'
import { createRepricing } from './reprice'

/** Loads HiGHS when it is first needed; where its WebAssembly lies differs between page and Node. */
export type LoadHighs = () => Promise<SolveProgram>

/**
 * Milliseconds for a second search under rules. That of javascript-lp-solver ends before its thread
 * counts as looping; HiGHS is the last to be asked and may take longer.
 */
const CONFIRM_MS: Readonly<Record<SolverName, number>> = {
  barwright: 5_000,
  'javascript-lp-solver': 1_500,
  highs: 10_000,
}

/** Samples are the same for the same brief. */
const SAMPLE_SEED = 1

/**
 * The service behind the worker boundary. Our own solver proves its answers. An answer of
 * javascript-lp-solver that does not stand up to the brief, or that says there is no blend, is asked
 * again of HiGHS, whose word is checked the same way.
 */
export function createService(library: LotsLibrary, loadHighs: LoadHighs): SolverService {
  const ask = async <T>(
    name: SolverName,
    question: (solve: SolveProgram, by: SolverName) => T,
    isInfeasible: (answer: T) => boolean,
  ): Promise<T> => {
    if (name === 'barwright') return question(solveWithOwn, name)
    if (name === 'javascript-lp-solver') {
      const answer = sound(() => question(solveWithJslp, name))
      if (answer && !isInfeasible(answer.value)) return answer.value
    }
    return question(await loadHighs(), 'highs')
  }
  return {
    ...createExploring(library),
    ...createLots(library),
    ...createRepricing(library),
    ready: () => Promise.resolve(true),
    solve: async (name, brief, limit) => {
      const answer = await ask(
        name,
        (solve) => solveBrief(brief, library, solve, limit),
        isInfeasible,
      )
      return withNearest(answer, brief, library)
    },
    confirm: (name, brief, found) =>
      ask(
        name,
        (solve, by) => confirm(brief, found, library, solve, by, { timeMs: CONFIRM_MS[by] }),
        ({ status }) => status === 'differs',
      ),
    study: (name, brief, onAnswer) =>
      ask(
        name,
        (solve) => studyBrief(brief, library, solve, onAnswer),
        ({ answer }) => isInfeasible(answer),
      ),
    land: async (question, goesOn) => {
      if (checkBrief(question.brief, library).length > 0) return undefined
      return lastOf(landOf(question, library), goesOn)
    },
    sample: async (brief, count, goesOn) => {
      if (checkBrief(brief, library).length > 0) return undefined
      const space = new BlendSpace(brief, library)
      const sample = await resultOf(sampleOfSpace(space, count, SAMPLE_SEED), goesOn)
      return sample && transfer(sample, [sample.shares.buffer, sample.values.buffer])
    },
    solveAt: (name, brief, point, options) =>
      ask(name, (solve) => solveAt(brief, point, library, solve, options), isInfeasible),
    oneStep: (brief, question) => Promise.resolve(oneStepStudy(brief, question, library)),
  }
}

const isInfeasible = ({ status }: { readonly status: string }) => status === 'infeasible'

/** The answer in a box, or undefined where it is unsound; any other error is thrown on. */
function sound<T>(answer: () => T): { readonly value: T } | undefined {
  try {
    return { value: answer() }
  } catch (error) {
    if (error instanceof UnsoundAnswer) return undefined
    throw error
  }
}
