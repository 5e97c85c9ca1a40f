import type { Blend } from '../domain/blend/blend'
import type { AlternativesAnswer } from '../domain/optimise/alternatives/alternatives'
import type { AlternativesOrder } from '../domain/optimise/alternatives/alternatives-linear'
import type { Land, LandQuestion } from '../domain/optimise/map/land-question'
import type { TerrainAnswer, TerrainOrder } from '../domain/optimise/map/terrain'
import type { FrontierAnswer, FrontierOrder } from '../domain/optimise/pareto/frontier'
import type { AttainableAnswer } from '../domain/optimise/ranges/attainable'
import type { NoAnswer } from '../domain/optimise/brief/answer'
import type { Brief } from '../domain/optimise/brief/brief'
import type { Confirmation } from '../domain/optimise/solve/confirm'
import type { Point, PointOptions } from '../domain/optimise/solve/point'
import type { Reasons } from '../domain/optimise/why/reasons'
import type { PriceWalkAnswer, PriceWalkOrder } from '../domain/optimise/reprice/price-walk'
import type { TogetherAnswer, TogetherOrder } from '../domain/optimise/reprice/together'
import type { Sample } from '../domain/optimise/map/sample-linear'
import type { Answer, Found } from '../domain/optimise/brief/answer'
import type { StudyAnswer, StudyQuestion } from '../domain/optimise/studies/question'
import type { Study } from '../domain/optimise/solve/study'
import type { Progress } from '../domain/lp/pareto/grow'
import type { BlendSpread } from '../domain/optimise/lots/spread'
import type { Draws } from '../domain/optimise/lots/draws'
import type { RobustPrice } from '../domain/optimise/solve/robust-price'
import type { Why } from '../domain/optimise/why/why'

/** The solvers that can be asked for by name: our own first, then those that give a second opinion. */
export const SOLVER_NAMES = ['barwright', 'javascript-lp-solver', 'highs'] as const
export type SolverName = (typeof SOLVER_NAMES)[number]

/** An answer, or why there is none: a faulty brief, or limits that can't hold together. */
export type OrNone<T> = T | NoAnswer

/** How long a question about a brief with rules may take; other questions are done at once. */
export interface TimeLimit {
  /** Milliseconds for the whole of what is asked; DEFAULT_TIME_MS if left out. */
  readonly timeMs?: number | undefined
}

/** Questions about all that a brief allows. */
export interface ExploringService {
  /** The true least and most of every measure and every oil's share. */
  range(brief: Brief, limit?: TimeLimit): Promise<OrNone<AttainableAnswer>>
  /** The exact trade-off surface over two to four measures; under rules over two. */
  frontier(
    brief: Brief,
    order: FrontierOrder,
    onProgress?: (progress: Progress) => void,
  ): Promise<OrNone<FrontierAnswer>>
  /** The worth of every limit and price that decides an answer, and all of it in words. */
  reasons(brief: Brief, found: Found): Promise<Reasons | undefined>
  /** Why the best blend of a brief is what it is, with curves; undefined where the goal has no prices. */
  why(brief: Brief, found: Found): Promise<Why | undefined>
  /** The best of a measure over a grid of two others. */
  terrain(brief: Brief, order: TerrainOrder): Promise<OrNone<TerrainAnswer>>
  /** Blends nearly as good as the best and as different as can be. */
  alternatives(
    brief: Brief,
    order: AlternativesOrder & TimeLimit,
  ): Promise<OrNone<AlternativesAnswer>>
}

/** Questions about what varies from lot to lot. */
export interface LotsService {
  /** How the measures of a blend move as its oils come from random lots; the same for the same seed. */
  spread(blend: Blend, draws?: Draws): Promise<BlendSpread>
  /** What it costs to hold the wishes for any lot; undefined where the brief is not sound. */
  robustPrice(brief: Brief, limit?: TimeLimit): Promise<RobustPrice | undefined>
}

/** Hears how far an answer is, and says whether it is still wanted. */
export type GoesOn<T> = (soFar: T) => boolean | Promise<boolean>

/** Questions about prices that move. */
export interface RepricingService {
  /** The cheapest blend at every price of one oil, and what holding a formula costs. */
  priceWalk(brief: Brief, order: PriceWalkOrder): Promise<PriceWalkAnswer>
  /** Which formula is the cheapest how often as several prices move. */
  pricesTogether(brief: Brief, order: TogetherOrder): Promise<TogetherAnswer>
}

/** What a solving thread does for the page and the command line. */
export interface SolverService extends ExploringService, RepricingService, LotsService {
  /** Answers as soon as the thread runs. */
  ready(): Promise<true>
  /** Solves one brief. */
  solve(solver: SolverName, brief: Brief, limit?: TimeLimit): Promise<Answer>
  /** Solves a brief again with another solver and compares the goal. */
  confirm(solver: SolverName, brief: Brief, found: Found): Promise<Confirmation>
  /**
   * Solves a brief and finds what lies around the answer. Under rules `onAnswer` hears the answer first,
   * before what each measure can reach is found.
   */
  study(solver: SolverName, brief: Brief, onAnswer?: (study: Study) => void): Promise<Study>
  /**
   * What lies on a map; undefined where the brief is not sound. Under rules it is found from coarse to
   * fine and told on the way; `goesOn` says after each telling whether to go on.
   */
  land(question: LandQuestion, goesOn?: GoesOn<Land>): Promise<Land | undefined>
  /** Blends that keep a brief, to look at; undefined where the brief is not sound. As `land` under rules. */
  sample(brief: Brief, count: number, goesOn?: GoesOn<number>): Promise<Sample | undefined>
  /** The best blend at a point of the map. */
  solveAt(
    solver: SolverName,
    brief: Brief,
    point: Point,
    options?: TimeLimit & Pick<PointOptions, 'within'>,
  ): Promise<Answer>
  /** Answers a one-step study of a blend on the brief's shelf. */
  oneStep(brief: Brief, question: StudyQuestion): Promise<StudyAnswer>
}
