import type { Library } from '../domain/blend/library'
import { checkBrief } from '../domain/optimise/brief/check-brief'
import { solveWithOwn } from '../domain/lp/solvers/own'
import type { Acids } from '../domain/optimise/lots/saponification'
import { robustPrice } from '../domain/optimise/solve/robust-price'
import { spreadOf } from '../domain/optimise/lots/spread'
import type { LotsService } from './protocol'

/** What the lots of oils can be told by: also the acids as molecules, for the lye. */
export interface LotsLibrary extends Library {
  readonly acids: Acids
}

/** Answers to questions about what varies from lot to lot. */
export function createLots(library: LotsLibrary): LotsService {
  return {
    spread: (blend, draws) => Promise.resolve(spreadOf(blend, library, library.acids, draws)),
    robustPrice: (brief, limit) =>
      Promise.resolve(
        checkBrief(brief, library).length > 0
          ? undefined
          : robustPrice(brief, library, solveWithOwn, limit),
      ),
  }
}
