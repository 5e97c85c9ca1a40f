import { askAboutBrief, BRIEF_SCHEMA, ROBUST_FLAG, TIME_FLAG, TIME_HELP } from './ask-solver'
import { readAxes } from './axes'
import { allInvalid, type Command } from './command'
import { OILS_FLAG, OILS_HELP } from './own-oils'

const LEAST_AXES = 2
const MOST_AXES = 4

export const frontier: Command = {
  flags: {
    axes: { type: 'string' },
    hull: { type: 'boolean' },
    ...ROBUST_FLAG,
    ...TIME_FLAG,
    ...OILS_FLAG,
  },
  flagHelp: [
    '--axes a,b[,c[,d]]   the measures; a:more or a:less turns the wanted way round',
    '--hull               all that can be reached, not only the side that nothing beats',
    '--robust             the ranges hold for any lot of the oils',
    TIME_HELP,
    OILS_HELP,
    'A brief with whole-blend rules has a frontier of 2 measures, in pieces, and no hull.',
  ],
  schema: BRIEF_SCHEMA,
  run: async (text, flags, around) => {
    const axes = readAxes(flags.axes, '--axes', LEAST_AXES, MOST_AXES)
    if ('problem' in axes) return allInvalid([axes.problem])
    const order = { axes: axes.value, wholeHull: flags.hull === true }
    return askAboutBrief(text, flags, around, {
      question: (brief, limit) => (service) => service.frontier(brief, { ...order, ...limit }),
    })
  },
}
