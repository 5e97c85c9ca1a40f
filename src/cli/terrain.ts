import { askAboutBrief, BRIEF_SCHEMA, ROBUST_FLAG, TIME_FLAG, TIME_HELP } from './ask-solver'
import { readAxes } from './axes'
import { allInvalid, type Command } from './command'
import { OILS_FLAG, OILS_HELP } from './own-oils'
import { readNumber } from './number-flag'

const GRID_LIMITS = { least: 2, most: 500, whole: true }

export const terrain: Command = {
  flags: {
    axes: { type: 'string' },
    value: { type: 'string', default: 'cost' },
    grid: { type: 'string', default: '60' },
    ...ROBUST_FLAG,
    ...TIME_FLAG,
    ...OILS_FLAG,
  },
  flagHelp: [
    '--axes a,b      the measures across and up',
    '--value c       the measure whose best is the height (cost)',
    '--grid n        columns and rows (60)',
    '--robust        the ranges hold for any lot of the oils',
    TIME_HELP,
    OILS_HELP,
  ],
  schema: BRIEF_SCHEMA,
  run: async (text, flags, around) => {
    const axes = readAxes(flags.axes, '--axes', 2, 2)
    const value = readAxes(flags.value, '--value', 1, 1)
    const grid = readNumber(flags.grid, '--grid', GRID_LIMITS)
    const problems = [axes, value, grid].flatMap((read) =>
      'problem' in read ? [read.problem] : [],
    )
    if ('problem' in axes || 'problem' in value || 'problem' in grid) return allInvalid(problems)
    const [across, up] = axes.value
    const [height] = value.value
    if (!across || !up || !height) throw new Error('Axes were read without their measures')
    const order = {
      axes: [across.measure, up.measure] as const,
      value: height.measure,
      columns: grid.value,
      rows: grid.value,
    }
    return askAboutBrief(text, flags, around, {
      question: (brief, limit) => (service) => service.terrain(brief, { ...order, ...limit }),
    })
  },
}
