import type { Brief } from '../brief/brief'
import { statesRules } from '../brief/brief-rules'

/** What holds while some measures of a brief may be anything, in words. */
export function allOthersKept(brief: Brief): string {
  return statesRules(brief) ? 'all other wishes and rules kept' : 'all other wishes kept'
}
