import type { Brief } from './brief'

/**
 * Rules about which oils a blend uses at all and by how much. An oil is *in* a blend where its share is
 * over PRESENT_PERCENT; a rule left out asks nothing. Shares in percent of oil weight.
 */
export interface BriefRules {
  /** No more than so many oils are in: a whole number of 1 or more. */
  readonly atMostOils?: number | undefined
  /** An oil that is in has at least this share; over 0, up to 100 %. */
  readonly absentOrAtLeast?: number | undefined
  /** Every share is a whole number of such steps; 100 % is too. */
  readonly shareStep?: number | undefined
  /** Pairs of oils of which the first is in only together with the second. */
  readonly requires?: readonly Requirement[] | undefined
  /** Groups of oils of which at most one is in; none of them may be. */
  readonly oneOf?: readonly (readonly string[])[] | undefined
}

/** Where `oil` is in, `with` is in too, with at least LEAST_COMPANION_PERCENT. */
export interface Requirement {
  readonly oil: string
  readonly with: string
}

/** Up to this share an oil counts as absent, in percent: the solvers' rounding, far below any scale. */
export const PRESENT_PERCENT = 1e-6

/** How far a share may miss a rule, in percent; as far as answers may miss limits. */
export const RULE_TOLERANCE_PERCENT = 1e-6

/**
 * Least share of an oil that another one requires, in percent, where no rule asks for more: one gram
 * in a kilogram, the least that a kitchen scale shows. Without it a trace would do.
 */
export const LEAST_COMPANION_PERCENT = 0.1

/** Whether a brief states any rule. */
export function statesRules({ rules }: Pick<Brief, 'rules'>): boolean {
  if (!rules) return false
  const { atMostOils, absentOrAtLeast, shareStep, requires = [], oneOf = [] } = rules
  const stated = [atMostOils, absentOrAtLeast, shareStep].some((figure) => figure !== undefined)
  return stated || requires.length > 0 || oneOf.length > 0
}

/**
 * Whether answers about a brief may take seconds and come piece by piece; else they are there in
 * milliseconds. For callers that choose a thread, a time limit or what to say meanwhile.
 */
export function mayTakeLong(brief: Brief): boolean {
  return statesRules(brief)
}

/** The brief without its rules: its linear part, whose blends include all that keep the rules. */
export function withoutRules(brief: Brief): Brief {
  return { ...brief, rules: undefined }
}
