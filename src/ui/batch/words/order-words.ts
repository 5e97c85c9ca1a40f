import { ALKALI_TITLES } from '../../../domain/chemistry/alkali'
import type { PurityIs } from '../../../domain/batch/order/purity'
import type { BatchChoices } from '../../../state/work'
import { number, withUnit } from '../../words/format'
import { otherAlkali } from '../../../state/batch-choices'

/** What was asked, as it stands under the title of a printed sheet. */
export function orderInWords(choices: BatchChoices): string {
  const { superfatPercent, extraFat, process } = choices
  return [
    `${withUnit(superfatPercent, 1, '%')} superfat by lye discount`,
    ...(extraFat
      ? [
          `${withUnit(extraFat.percent, 1, '%')} fat ${extraFat.when === 'afterCook' ? 'kept back' : 'on top'}`,
        ]
      : []),
    alkaliInWords(choices),
    waterInWords(choices.water),
    `${process ?? 'cold'} process`,
  ].join(', ')
}

/** How a purity is meant, after its figure. */
export function purityMeant(is: PurityIs = 'atLeast'): string {
  if (is === 'atLeast') return 'at least'
  return is === 'exactly' ? 'exactly' : `by certificate ${is.certificate}`
}

function alkaliInWords(choices: BatchChoices): string {
  const { alkali, purity, purityIs, secondAlkali, lyeSolution } = choices
  const pure = (kind: typeof alkali, percent: number) => {
    const strength = lyeSolution?.[kind]
    const as =
      strength === undefined
        ? `${withUnit(percent, 1, '%')} pure ${purityMeant(purityIs?.[kind])}`
        : `as solution of ${withUnit(strength, 1, '%')}`
    return `${ALKALI_TITLES[kind].toLowerCase()} ${as}`
  }
  const first = pure(alkali, purity[alkali])
  if (!secondAlkali) return first
  const { percent, by } = secondAlkali
  const second = purity[otherAlkali(alkali)]
  return `${first} and ${pure(otherAlkali(alkali), second)} for ${withUnit(percent, 1, '%')} by ${by}`
}

function waterInWords(water: BatchChoices['water']): string {
  if ('onlyFromLiquids' in water) return 'water only from liquids'
  if ('lyeConcentration' in water) return `lye at ${withUnit(water.lyeConcentration, 1, '%')}`
  if ('ratio' in water) return `${number(water.ratio, 2)} g water per g hydroxide`
  return `water ${withUnit(water.percentOfOils, 1, '%')} of oils`
}
