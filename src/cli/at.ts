import type { Point } from '../domain/optimise/solve/point'
import { askAboutBrief, BRIEF_SCHEMA, ROBUST_FLAG, TIME_FLAG, TIME_HELP } from './ask-solver'
import { readAxes } from './axes'
import { allInvalid, type Command } from './command'
import { OILS_FLAG, OILS_HELP } from './own-oils'
import type { Read } from './number-flag'

export const at: Command = {
  flags: { point: { type: 'string' }, ...ROBUST_FLAG, ...TIME_FLAG, ...OILS_FLAG },
  flagHelp: [
    '--point hardness=40,lather=32   the values to hit',
    '--robust                        the other ranges hold for any lot of the oils',
    TIME_HELP,
    OILS_HELP,
  ],
  schema: BRIEF_SCHEMA,
  run: async (text, flags, around) => {
    const point = readPoint(flags.point)
    if ('problem' in point) return allInvalid([point.problem])
    return askAboutBrief(text, flags, around, {
      question: (brief, limit) => (service, solver) =>
        service.solveAt(solver, brief, point.value, limit),
      quick: true,
    })
  },
}

/** Values typed as "hardness=40,lather=32". */
function readPoint(typed: unknown): Read<Point> {
  const parts = typeof typed === 'string' ? typed.split(',').map((part) => part.split('=')) : []
  const names = readAxes(parts.map(([name = '']) => name).join(), '--point', 1, Infinity)
  if ('problem' in names) return names
  const values = parts.map(([, value = '', ...more]) =>
    value.trim() === '' || more.length > 0 ? NaN : Number(value),
  )
  const bad = values.findIndex((value) => !Number.isFinite(value))
  if (bad >= 0) {
    const message = `"${parts[bad]?.join('=')}" is no value. Write it as hardness=40.`
    return { problem: { path: '--point', message } }
  }
  return {
    value: Object.fromEntries(names.value.map(({ measure }, i) => [measure, values[i] ?? NaN])),
  }
}
