import type { AlkaliKind } from '../../domain/chemistry/alkali'
import { ML_PER_LITRE } from '../../domain/units'
import { gramsOf } from '../amount-text'
import { type Draft, unread } from './draft'
import { isLye, rest, type Taken } from './said-facts'
import { speaksOf, thingNamed, without } from './recipe-words'

/** Words that say in what form something comes, or how pure. */
const FORMS = new Set(
  (
    'pure purity bead flake pearl pellet powder granule crystal micro lentil food grade organic raw fresh cold frozen warm hot ' +
    'fine ground dried dry brewed strong canned full liquid bottled filtered spring boiled rein prozentig ige natural natur bio'
  ).split(' '),
)

/** Words for the kind of oil behind a scent's name: lavender oil, huile de lavande. */
const OIL_WORDS = new Set('oil ol oel huile olio aceite de di d von'.split(' '))

/** A percent beside grams of alkali this high is its purity and not its share. */
const LEAST_PURITY_PERCENT = 80

/** More hydroxide than any fat takes, percent of the oils; between this and no lye concentration it is unclear. */
const MOST_LYE_PERCENT = 25

/** What an entry says of lye, water, scents and additives; undefined where it is about an oil. */
export function dosedThing(taken: Taken): Draft | undefined {
  return lye(taken) ?? water(taken) ?? scent(taken) ?? thing(taken)
}

function lye({ words, amounts, wrong }: Taken): Draft | undefined {
  if (!isLye(words)) return undefined
  const [naoh, koh] = [speaksOf('naoh', words), speaksOf('koh', words)]
  if (plain(rest(words, 'naoh', 'koh', 'lye')).length > 0) return undefined
  if (naoh && koh) return unread('Two alkalis stand here. Give each its line', 'which alkali?')
  if (wrong) return unread(wrong.reason, shortOf(wrong.reason), { name: 'Your lye' })
  if (amounts.length === 0) return { kind: 'words' }
  const alkali: AlkaliKind = koh ? 'koh' : 'naoh'
  const weighed = amounts.filter((one) => gramsOf(one) !== undefined)
  const percents = amounts.filter(({ kind }) => kind === 'percent')
  const note = naoh || koh ? undefined : 'read as sodium hydroxide'
  const what = { is: 'lye', alkali } as const
  if (weighed.length === 0) {
    const [percent] = percents
    if (percent && percent.value > MOST_LYE_PERCENT)
      return unread(
        `${percent.value} % lye: of the solution or of the oils? Write “lye concentration ${percent.value} %”, or grams`,
        `${percent.value} % of what?`,
        { name: 'Your lye' },
      )
    return { kind: 'dosed', what, amounts, note }
  }
  const purity = percents.find(({ value }) => value >= LEAST_PURITY_PERCENT)
  return { kind: 'dosed', what, amounts: weighed, strengthPercent: purity?.value, note }
}

/** A volume of water, which weighs as many g as it has ml. */
const WATER_VOLUME = /(?<![\d.,])(\d+(?:[.,]\d+)?)\s*(ml|cl|l)(?!\p{L})/iu
const ML_IN: Readonly<Record<string, number>> = { ml: 1, cl: 10, l: ML_PER_LITRE }

function water({ text, words, amounts, wrong }: Taken): Draft | undefined {
  if (!speaksOf('water', words) || plain(rest(words, 'water', 'oils')).length > 0) return undefined
  const [, figure = '', unit = ''] = WATER_VOLUME.exec(text) ?? []
  if (wrong && figure !== '') {
    const value = Number(figure.replace(',', '.')) * (ML_IN[unit.toLowerCase()] ?? 1)
    return {
      kind: 'dosed',
      what: { is: 'water' },
      amounts: [{ kind: 'mass', value, unit: 'g' }],
      note: 'at 1 g a ml',
    }
  }
  if (wrong)
    return unread(wrong.reason, shortOf(wrong.reason), { name: 'Your water', touchesLye: false })
  if (amounts.length === 0) return { kind: 'words' }
  return { kind: 'dosed', what: { is: 'water' }, amounts }
}

function scent({ words, amounts, wrong }: Taken): Draft | undefined {
  const essential = speaksOf('essential', words)
  if (!essential && !speaksOf('fragrance', words)) return undefined
  const left = plain(rest(without('fragrance', without('essential', words))))
  const name = left.join(' ')
  const known = thingNamed(left.filter((word) => !OIL_WORDS.has(word)))
  const scentId = essential && known?.kind === 'scent' ? known.id : undefined
  const label = name === '' ? (essential ? 'Essential oil' : 'Fragrance') : capital(name)
  if (wrong || amounts.length === 0)
    return left.length > MOST_NAME_WORDS || (!wrong && amounts.length === 0 && name === '')
      ? { kind: 'words' }
      : unread(wrong?.reason ?? NO_FIGURE, shortOf(wrong?.reason ?? NO_FIGURE), {
          name: label,
          touchesLye: false,
        })
  return { kind: 'dosed', what: { is: 'scent', id: scentId, name: label }, amounts }
}

const NO_FIGURE = 'There is no figure beside it'
const MOST_NAME_WORDS = 4

function thing({ words, amounts, wrong }: Taken): Draft | undefined {
  const left = rest(words)
  const named = [left, plain(left), plain(left).filter((word) => !OIL_WORDS.has(word))]
  const found = named.map(thingNamed).find((one) => one !== undefined) ?? scentNamed(left)
  if (!found) return undefined
  const name = capital(plain(left).join(' '))
  const touchesLye = found.kind === 'acid'
  if (wrong) return unread(wrong.reason, shortOf(wrong.reason), { name, touchesLye })
  if (amounts.length === 0) return { kind: 'words' }
  const { kind, id } = found
  if (kind === 'scent') return { kind: 'dosed', what: { is: 'scent', id, name }, amounts }
  const weighed = amounts.filter((one) => gramsOf(one) !== undefined)
  const percent = amounts.find((one) => one.kind === 'percent')
  const isSolution = kind === 'acid' && weighed.length > 0 && percent !== undefined
  return {
    kind: 'dosed',
    what: { is: kind, id, name },
    amounts: isSolution ? weighed : amounts,
    strengthPercent: isSolution ? percent.value : undefined,
  }
}

/** A scent whose oil is run on to its name, as German does: Lavendelöl. */
function scentNamed(words: readonly string[]): ReturnType<typeof thingNamed> {
  const found = thingNamed(words.map((word) => word.replace(/(?:ol|oel)$/u, '')))
  return found?.kind === 'scent' ? found : undefined
}

/** The words without those for form and purity. */
function plain(words: readonly string[]): string[] {
  return words.filter((word) => !FORMS.has(word))
}

/** The first part of a reason, in small letters, to stand beside its line. */
export function shortOf(reason: string): string {
  const [first = reason] = reason.split(/\. /u)
  return first.charAt(0).toLowerCase() + first.slice(1)
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
