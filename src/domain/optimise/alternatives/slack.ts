/**
 * How much worse than the best an alternative may be: a fraction of the best value's size (0.03 is 3 %),
 * or an amount in the goal's own unit. A fraction of a best value of 0 is nothing.
 */
export type Slack = { readonly fraction: number } | { readonly absolute: number }

/** The slack as an amount in the goal's unit; throws for one that is not 0 or more. */
export function slackAmount(slack: Slack, best: number): number {
  const figure = 'fraction' in slack ? slack.fraction : slack.absolute
  if (!(figure >= 0 && figure < Infinity))
    throw new RangeError(`The slack is ${figure}. Give a number of 0 or more.`)
  return 'fraction' in slack ? figure * Math.abs(best) : figure
}
