/** What a row of the table is held to. */
export interface Target {
  /** The task whose figures it is about. */
  readonly task: string
  readonly title: string
  /** Which of our own entries; a task may have several. */
  readonly own: string
  /** At least so many times as fast as a rival, or as the best of all rivals, in the median. */
  readonly ratio: { readonly to: string; readonly atLeast: number; readonly alsoInP99?: boolean }
  /** Guides for a quiet machine, ms. */
  readonly medianMs?: number
  readonly p99Ms?: number
  /** Largest p99 as a multiple of the own median. */
  readonly p99PerMedian?: number
  /** Why it falls short, where it does. */
  readonly shortfall: string
}

/** Stands for the fastest of all rivals in the row, by its median. */
export const BEST = 'the best rival'

const CHECKS =
  'every blend that is handed out has its oils by name and is checked against the brief from these alone'

const CACHES =
  'each run meets a program that all others have since driven out of the processor’s caches: measured ' +
  'alone on 15 programs over and over'

const FIXED_PART =
  'whatever the number of pivots, each solve works out values and prices again and proves its answer from ' +
  'the original data'

export const TARGETS: readonly Target[] = [
  {
    task: 'cold',
    title: 'one cold solve with certificate, loaded into a solver that is kept',
    own: 'barwright, loaded',
    ratio: { to: 'yalps', atLeast: 3 },
    medianMs: 0.04,
    p99PerMedian: 4,
    shortfall: `${CACHES}, it takes 19 µs, of which taking in and scaling the rows is a third and the solve, 11 pivots in the mean, two thirds. Of that, ${FIXED_PART}. The slowest runs are those that other work or a garbage collection breaks into; the litter is the rivals', as this solver leaves none.`,
  },
  {
    task: 'cold',
    title: 'the same, the solver made anew',
    own: 'barwright',
    ratio: { to: 'yalps', atLeast: 3 },
    medianMs: 0.04,
    p99PerMedian: 4,
    shortfall: `${CACHES}, it takes 23 µs, of which 4 are for making the solver; on 300 programs in turn 38 µs. Besides, a new solver is some 20 kB of memory that no cache holds yet. Whatever asks more than once keeps its solver.`,
  },
  {
    task: 'ranges',
    title: 'all attainable ranges',
    own: 'barwright',
    ratio: { to: 'glpk.js', atLeast: 6 },
    medianMs: 2,
    shortfall: `6 pivots a solve in the mean; ${FIXED_PART}.`,
  },
  {
    task: 'two-axes',
    title: '2-axis frontier, exact',
    own: 'barwright',
    ratio: { to: 'yalps', atLeast: 20 },
    medianMs: 0.25,
    shortfall: `a twentieth of what yalps takes is what one cold solve takes here, and with some five corners dichotomic search is only about ten solves. Ours are a cold one, three for the ends of both axes, one pass, and a proof of each corner by itself, 50 pivots in all: four fifths of the time. In the rest, ${CHECKS}.`,
  },
  {
    task: 'three-axes',
    title: '3-axis frontier, exact',
    own: 'barwright',
    ratio: { to: 'yalps', atLeast: 10 },
    medianMs: 2,
    shortfall: `the solves alone (their line in the table below) leave little of a tenth of yalps. The rest is what rivals are spared: the hull, in which many corners lie on one plane up to rounding, so that signs are settled exactly; putting its facets together; and ${CHECKS}.`,
  },
  {
    task: 'terrain',
    title: '60 × 60 terrain',
    own: 'barwright',
    ratio: { to: 'yalps', atLeast: 20 },
    medianMs: 20,
    shortfall: `hardly more than half a pivot a point: ${FIXED_PART}, and that is most of the time.`,
  },
  {
    task: 'point',
    title: 'point and solve, warm',
    own: 'barwright',
    ratio: { to: BEST, atLeast: 10 },
    p99Ms: 0.2,
    shortfall: `points are drawn anywhere in the region, so the last basis saves half of the pivots only (5 against 12 in the mean); ${FIXED_PART}. The slowest runs are those that other work or a garbage collection of the rivals' litter breaks into.`,
  },
  {
    task: 'alternatives',
    title: '8 alternatives, as different as can be',
    own: 'barwright',
    ratio: { to: BEST, atLeast: 5 },
    medianMs: 0.6,
    shortfall: `rivals do hop, skip and jump: 8 solves, and blends that drift together. Ours chooses the most different of 52 corners, so it solves 53 programs, each with its proof, which is two thirds of the time; and ${CHECKS}. Asked for the same corners, rivals take what the next row says.`,
  },
  {
    task: 'alternatives-pool',
    title: 'the same, rivals asked the same 53 programs',
    own: 'barwright',
    ratio: { to: BEST, atLeast: 5 },
    medianMs: 0.6,
    shortfall: `the solves alone (their line in the table below) are two thirds of the time: a cost in a random direction is 5 pivots away from the last, and ${FIXED_PART}. The rest is choosing, and ${CHECKS}. Rivals are spared both.`,
  },
  {
    task: 'rules',
    title: 'at most 5 of 40 oils, each 5 % or more',
    own: 'barwright',
    ratio: { to: 'glpk.js', atLeast: 1, alsoInP99: true },
    medianMs: 2,
    p99Ms: 70,
    shortfall:
      'a few problems need many nodes whatever their order, and of a hundred problems they are the p99.',
  },
]
