import { isOwnId } from '../domain/blend/own-oil'
import type { KeptWork } from './work-schema'

/** Every oil of its maker's own that kept work names, described or not. */
export function ownIdsIn(work: KeptWork): string[] {
  const { brief, bar, bench } = work
  const { goal, rules } = brief
  const blends = [
    ...('closestTo' in goal ? [goal.closestTo] : []),
    ...(bar?.versions ?? []).map(({ blend }) => blend),
    ...bench.candidates.map(({ blend }) => blend),
  ]
  const ids = [
    ...brief.shelf.map(({ oil }) => oil),
    ...brief.groups.flatMap(({ oils }) => oils),
    ...(rules?.requires ?? []).flatMap((rule) => [rule.oil, rule.with]),
    ...(rules?.oneOf ?? []).flat(),
    ...(bar?.parts ?? []).map(({ oil }) => oil),
    ...(typeof bar?.givesWay === 'object' ? [bar.givesWay.oil] : []),
    ...blends.flatMap((blend) => Object.keys(blend)),
  ]
  return [...new Set(ids.filter(isOwnId))]
}
