import { briefOf } from '../data/brief-file'
import { type ChangeFile, changeInput, readChange, spreadsOf } from '../data/change-file'
import { fileSchema } from '../data/ledger-schemas'
import { library } from '../data/library'
import type { Blend } from '../domain/blend/blend'
import { priceWalk } from '../domain/optimise/reprice/price-walk'
import { pricesTogether } from '../domain/optimise/reprice/together'
import { fractionFromPercent } from '../domain/units'
import { allInvalid, byStatus, type Command, type Flags, invalid, type Result } from './command'
import { readAll, readFigures } from './figures'
import { joinMinus } from './percent-flags'
import { type Read, readNumber } from './number-flag'

const CHANGE_LIMITS = { least: -100, most: 100_000, whole: false }
const MONTHS_LIMITS = { least: 0, most: 120, whole: false }
const CORRELATION_LIMITS = { least: 0, most: 1, whole: false }
const DRAWS_LIMITS = { least: 1, most: 100_000, whole: true }
const SEED_LIMITS = { least: 0, most: 4_294_967_295, whole: true }

export const reprice: Command = {
  flags: {
    oil: { type: 'string' },
    from: { type: 'string', default: '-50%' },
    to: { type: 'string', default: '200%' },
    hold: { type: 'string' },
    together: { type: 'boolean' },
    spread: { type: 'string' },
    months: { type: 'string', default: '12' },
    correlation: { type: 'string', default: '0' },
    draws: { type: 'string', default: '1000' },
    seed: { type: 'string', default: '1' },
  },
  flagHelp: [
    '--oil olive                  whose price moves, with all others as they are',
    '--from -50% --to 200%        how far, from what it is',
    '--hold olive=60,coconut=40   the formula in use; the cheapest today if left out',
    '--together                   prices move at once, drawn many times over',
    '--spread olive=0.3,palm=0.2  the log spread of a year’s change; else the file’s own',
    '--months 12                  how far ahead',
    '--correlation 0.3            how alike they move, 0 to 1',
    '--draws 1000 --seed 1        how often to draw, and from where',
  ],
  arrange: (args) => joinMinus(args, ['--from', '--to']),
  schema: () => fileSchema(changeInput),
  run: (text, flags) => Promise.resolve(answer(text, flags)),
}

function answer(text: string, flags: Flags): Result {
  const file = readChange(text)
  if (file.status === 'invalid') return allInvalid(file.problems)
  const hold = readFigures(flags.hold, '--hold')
  if ('problem' in hold) return allInvalid([hold.problem])
  const formula = hold.value ?? file.value.formula
  if (flags.together === true) return together(file.value, formula, flags)
  if (typeof flags.oil !== 'string')
    return invalid('--oil', 'Name the oil whose price moves, or give --together for all.')
  return walk(file.value, formula, flags.oil, flags)
}

function walk(file: ChangeFile, hold: Blend | undefined, oil: string, flags: Flags): Result {
  const read = readAll({
    fromChange: readChangePercent(flags.from, '--from'),
    toChange: readChangePercent(flags.to, '--to'),
  })
  if ('problems' in read) return allInvalid(read.problems)
  return byStatus(priceWalk(briefOf(file.brief), library, { oil, hold, ...read.values }))
}

function together(file: ChangeFile, hold: Blend | undefined, flags: Flags): Result {
  const read = readAll({
    spreads: readFigures(flags.spread, '--spread'),
    months: readNumber(flags.months, '--months', MONTHS_LIMITS),
    correlation: readNumber(flags.correlation, '--correlation', CORRELATION_LIMITS),
    count: readNumber(flags.draws, '--draws', DRAWS_LIMITS),
    seed: readNumber(flags.seed, '--seed', SEED_LIMITS),
  })
  if ('problems' in read) return allInvalid(read.problems)
  const { spreads, ...rest } = read.values
  const moves = { ...rest, spreads: { ...spreadsOf(file), ...spreads } }
  const found = pricesTogether(briefOf(file.brief), library, { ...moves, hold })
  return byStatus(found.status === 'found' ? { ...found, ...moves } : found)
}

/** "-50%" or "-50" as a part of the whole: -0.5. */
function readChangePercent(typed: unknown, flag: string): Read<number> {
  const read = readNumber(String(typed).trim().replace(/%$/u, ''), flag, CHANGE_LIMITS)
  return 'problem' in read ? read : { value: fractionFromPercent(read.value) }
}
