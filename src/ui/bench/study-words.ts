import { library } from '../../state/library'
import { type Library, measureOf } from '../../domain/blend/library'
import { type MeasureValues, shareChanges } from '../../domain/blend/compare'
import { COST } from '../../domain/blend/measure'
import type { Brief } from '../../domain/optimise/brief/brief'
import { limitsOf } from '../../domain/optimise/brief/limits'
import type { NoResult, StudyQuestion, StudyResult } from '../../domain/optimise/studies/question'
import type { Naming } from '../../state/bench-study.svelte'
import { limitInWords } from '../words/limit-words'
import { number, withUnit } from '../words/format'
import {
  benchDifferences,
  comparative,
  costInWords,
  countInWords,
  lowerFirst,
  measuresInWords,
  oilsInWords,
  upperFirst,
} from './words'

const lib: Library = library

/** How what a study seeks is said: "harder", "cheaper", "lasts longer". */
export function wanted(measure: string): string {
  return comparative(measure, measureOf(lib, measure).better)
}

function shortName(oil: string): string {
  return lowerFirst(library.oils.get(oil)?.shortName ?? oil)
}

/** How a result is named on the Bench and where it says it came from. */
export const nameResult: Naming = (result, { question, base }) => ({
  name: upperFirst(resultName(result, question, base.letter)),
  from: upperFirst(`${originOf(question)}, from ${base.letter}`),
})

function resultName({ role }: StudyResult, question: StudyQuestion, letter: string): string {
  switch (role.kind) {
    case 'shift':
      return `${letter} with ${role.points > 0 ? 'more' : 'less'} ${shortName(role.oil)}`
    case 'replaces':
      return `${role.oils.map(shortName).join(' and ')} for ${question.kind === 'without' ? shortName(question.oil) : 'it'}`
    case 'most':
      return soughtBy(question)
    case 'least change':
      return `${soughtBy(question)}, fewest changes`
    case 'cheapest':
      return `${soughtBy(question)}, least cost`
  }
}

function soughtBy(question: StudyQuestion): string {
  return question.kind === 'better' ? wanted(question.measure) : 'nearest'
}

/** What was asked, in a few words. */
function originOf(question: StudyQuestion): string {
  switch (question.kind) {
    case 'like':
      return 'much the same bar'
    case 'without':
      return `without ${shortName(question.oil)}`
    case 'better':
      return `${wanted(question.measure)}, ${heldInWords(question.tolerances)}`
  }
}

/** "the rest held", or what was held if that is one or two measures. */
function heldInWords(tolerances: Readonly<Record<string, number>>): string {
  const held = Object.keys(tolerances)
  if (held.length === 0) return 'nothing held'
  if (held.length > 2) return 'the rest held'
  return `same ${held.map((id) => measureOf(lib, id).name.toLowerCase()).join(' and ')}`
}

/** The trade a result is: what changes in oils, money and bar beside the blend it started from. */
export function tradeInWords(
  result: StudyResult,
  base: MeasureValues,
  question: StudyQuestion,
  currency: string,
): string {
  const told = benchDifferences(result.measures, base)
  const oils = oilsInWords(shareChanges(question.base, result.blend))
  const cost = told.find(({ measure }) => measure === COST)
  return [
    oils.lead,
    oils.rest,
    costInWords(cost, result.unpriced, currency),
    measuresInWords(told.filter(({ measure }) => measure !== COST)),
  ]
    .filter((part) => part !== '')
    .join(' ')
}

/** How far a bar moved, in ties: under one tie nobody can tell. */
export function movedInWords({ movedTies, changePoints }: StudyResult): string {
  return `bar moved ${number(movedTies, 1)} ties in all, oils ${number(changePoints, 0)} points`
}

/** Limits of the brief that a result does not keep; empty where it keeps all. */
export function givesInWords({ gives }: StudyResult, brief: Brief, currency: string): string {
  if (gives.length === 0) return ''
  const limits = limitsOf(brief)
  const named = gives.map((path) => {
    const limit = limits.find((one) => one.path === path)
    if (limit) return lowerFirst(limitInWords(limit, limit.value, brief, currency))
    const oil = path.replace(/^oils\./u, '')
    return library.oils.has(oil)
      ? `${shortName(oil)} is not on the shelf`
      : ruleInWords(path, brief)
  })
  return `Doesn’t keep: ${named.join(', ')}.`
}

/** A rule of the brief by its path, as `brokenRules` names it. */
function ruleInWords(path: string, { rules = {} }: Brief): string {
  const [, kind = '', place] = /^rules\.(\w+)(?:\[(\d+)\])?$/u.exec(path) ?? []
  const { atMostOils, absentOrAtLeast, shareStep, requires = [], oneOf = [] } = rules
  const pair = requires[Number(place)]
  const words: Readonly<Record<string, string | undefined>> = {
    atMostOils: atMostOils === undefined ? undefined : `at most ${countInWords(atMostOils)} oils`,
    absentOrAtLeast:
      absentOrAtLeast === undefined ? undefined : `each oil at least ${percent(absentOrAtLeast)}`,
    shareStep: shareStep === undefined ? undefined : `shares in steps of ${percent(shareStep)}`,
    requires: pair && `${shortName(pair.oil)} only with ${shortName(pair.with)}`,
    oneOf: `only one of ${(oneOf[Number(place)] ?? []).map(shortName).join(', ')}`,
  }
  return words[kind] ?? path
}

/** A typed percentage, with no more figures than it was typed with. */
function percent(value: number): string {
  const [, part = ''] = String(value).split('.')
  return withUnit(value, part.length, '%')
}

/** Why a study has nothing to show, and what is nearest to it. */
export function noResultInWords(
  reason: NoResult,
  base: MeasureValues,
  question: StudyQuestion,
  currency: string,
): string {
  const trade = (result: StudyResult) => tradeInWords(result, base, question, currency)
  switch (reason.kind) {
    case 'nothing holds':
      return reason.nearest
        ? `No blend of this shelf holds all of that. The one that moves the bar least: ${trade(reason.nearest)}`
        : 'No blend of this shelf holds all of that with such a step. Widen what may move, or take a smaller step.'
    case 'no better':
      return `Nothing on this shelf is ${soughtBy(question)} with the rest held. The nearest to it: ${trade(reason.best)}`
    case 'no price':
      return `What it costs now isn’t known: no price for ${reason.oils.map(shortName).join(', ')}. Give it on the Shelf.`
    case 'undecided':
      return 'The rules of the brief leave so little that nothing was found in time. Allow more oils, or a smaller least share.'
    case 'no room':
      return 'No oil among these has room for that share. Raise what they may be at most, or let the whole library stand in.'
  }
}
