import loadHighs from 'highs'
import { highsSolver } from '../../../../src/domain/lp/solvers/highs'

/** HiGHS, loaded once for a test file. */
export const highs = highsSolver(await loadHighs())
