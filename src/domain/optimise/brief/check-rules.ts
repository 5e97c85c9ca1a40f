import { plain, problem, type Problem } from '../../blend/check-blend'
import { WHOLE_PERCENT } from '../../units'
import type { Brief } from './brief'
import type { BriefRules } from './brief-rules'

/** Finer steps than 0.1 g in a kilogram no kitchen scale can weigh; percent of oil weight. */
const FINEST_STEP_PERCENT = 0.01

/** How far from a whole number of steps 100 % may be: the rounding of a step such as 100/3. */
const STEP_COUNT_SLACK = 1e-6

/** All that is wrong with the rules of a brief; empty where there are none. */
export function rulesProblems({ rules, oils }: Brief): Problem[] {
  if (!rules) return []
  return [
    ...countProblems(rules),
    ...leastProblems(rules),
    ...stepProblems(rules),
    ...requirementProblems(rules, oils),
    ...choiceProblems(rules, oils),
  ]
}

function countProblems({ atMostOils }: BriefRules): Problem[] {
  if (atMostOils === undefined || (Number.isInteger(atMostOils) && atMostOils >= 1)) return []
  const message = `At most ${plain(atMostOils)} oils are asked for. Give a whole number of 1 or more, or leave the rule out.`
  return [problem('rules.atMostOils', message)]
}

function leastProblems({ absentOrAtLeast: least }: BriefRules): Problem[] {
  if (least === undefined || (least > 0 && least <= WHOLE_PERCENT)) return []
  const message = `An oil that is in should have at least ${plain(least)} %; a share is over 0 and up to 100 %. Give one in that range, or leave the rule out.`
  return [problem('rules.absentOrAtLeast', message)]
}

function stepProblems({ shareStep: step }: BriefRules): Problem[] {
  if (step === undefined) return []
  const path = 'rules.shareStep'
  if (!(step >= FINEST_STEP_PERCENT && step <= WHOLE_PERCENT)) {
    const message = `Shares in steps of ${plain(step)} % are asked for; a step is from ${FINEST_STEP_PERCENT} to 100 %. Give one in that range, or leave the rule out.`
    return [problem(path, message)]
  }
  const steps = WHOLE_PERCENT / step
  if (Math.abs(steps - Math.round(steps)) <= STEP_COUNT_SLACK) return []
  const message = `Shares in steps of ${plain(step)} % can't add to 100 %, which is ${plain(steps)} steps. Give a step that goes into 100 a whole number of times, such as 0.5, 1, 2.5 or 5.`
  return [problem(path, message)]
}

function requirementProblems({ requires = [] }: BriefRules, oils: Brief['oils']) {
  return requires.flatMap(({ oil, with: companion }, number): Problem[] => {
    const path = `rules.requires[${number}]`
    const strangers = [
      ...strangerProblems(oil, oils, `${path}.oil`),
      ...strangerProblems(companion, oils, `${path}.with`),
    ]
    if (strangers.length > 0) return strangers
    if (oil === companion) {
      return [
        problem(path, `"${oil}" is to go with itself. Name another oil or take the rule out.`),
      ]
    }
    const first = requires.findIndex((one) => one.oil === oil && one.with === companion)
    if (first === number) return []
    const message = `That "${oil}" goes with "${companion}" stands in rules.requires[${first}] too. State it once.`
    return [problem(path, message)]
  })
}

function choiceProblems({ oneOf = [] }: BriefRules, oils: Brief['oils']): Problem[] {
  return oneOf.flatMap((group, number) => {
    const path = `rules.oneOf[${number}]`
    if (group.length < 2) {
      const message = `At most one of ${group.length} oils asks nothing. Name two oils or more, or take the group out.`
      return [problem(path, message)]
    }
    const repeated = [...new Set(group.filter((oil, at) => group.indexOf(oil) < at))]
    return [
      ...group.flatMap((oil, at) => strangerProblems(oil, oils, `${path}[${at}]`)),
      ...repeated.map((oil) => problem(path, `"${oil}" stands here more than once. Name it once.`)),
    ]
  })
}

function strangerProblems(oil: string, oils: Brief['oils'], path: string): Problem[] {
  if (Object.hasOwn(oils, oil)) return []
  return [problem(path, `"${oil}" is not on the shelf. Add it to oils or take the rule out.`)]
}
