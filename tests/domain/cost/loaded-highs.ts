import loadHighs from 'highs'
import { mixedHighs } from '../../../src/domain/cost/mixed'

/** HiGHS for mixed programs, loaded once for a test file. */
export const solveMixed = mixedHighs(await loadHighs())
