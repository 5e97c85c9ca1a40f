import type { Brief } from '../domain/optimise/brief'
import type { Land, LandQuestion } from '../domain/optimise/land'
import type { Point } from '../domain/optimise/point'
import type { Sample } from '../domain/optimise/sample'
import type { Answer } from '../domain/optimise/solve'
import type { StudyAnswer, StudyQuestion } from '../domain/optimise/studies/question'
import type { Study } from '../domain/optimise/study'

/** The solvers that can be asked for by name: our own first, then those that give a second opinion. */
export const SOLVER_NAMES = ['barwright', 'javascript-lp-solver', 'highs'] as const
export type SolverName = (typeof SOLVER_NAMES)[number]

/** What a solving thread does for the page and the command line. */
export interface SolverService {
  /** Answers as soon as the thread runs. */
  ready(): Promise<true>
  /** Solves one brief. */
  solve(solver: SolverName, brief: Brief): Promise<Answer>
  /** Solves a brief and finds what lies around the answer. */
  study(solver: SolverName, brief: Brief): Promise<Study>
  /** What lies on a map; undefined where the brief is not sound. */
  land(solver: SolverName, question: LandQuestion): Promise<Land | undefined>
  /** Blends that keep a brief, to look at; undefined where the brief is not sound. */
  sample(solver: SolverName, brief: Brief, count: number): Promise<Sample | undefined>
  /** The best blend at a point of the map. */
  solveAt(solver: SolverName, brief: Brief, point: Point): Promise<Answer>
  /** Answers a one-step study of a blend on the brief's shelf. */
  oneStep(brief: Brief, question: StudyQuestion): Promise<StudyAnswer>
}
