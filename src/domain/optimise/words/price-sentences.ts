import { oilOf } from '../../blend/library'
import { COST } from '../../blend/measure'
import type { Speech } from './limit-words'
import type { NoPrice, OilIn, OilOut } from '../sensitivity/oil-prices'
import { decimalsOf, inward, MONEY_DECIMALS } from './words'

const AT_NO_PRICE: Readonly<Record<NoPrice, string>> = {
  'own limit': 'its own limit allows none',
  'no blend': 'no blend with it keeps the limits',
  'no saving': 'even free it would save nothing',
}

/** What would bring an oil in, or why nothing would. */
export function oilOutSentence(speech: Speech, out: OilOut): string {
  const { oil, entersBelowPricePerKg, atNoPrice } = out
  const name = oilOf(speech.library, oil).shortName
  if (entersBelowPricePerKg === null)
    return `${name} would come in at no price: ${AT_NO_PRICE[atNoPrice ?? 'no saving']}.`
  const below = inward(entersBelowPricePerKg, 0, MONEY_DECIMALS)
  const price = speech.words.money(below.value, below.decimals)
  return `${name} would come in below ${price} per kg${nowInWords(speech, oil)}.`
}

/** At which prices of one of its oils the blend stays as it is. */
export function oilInSentence(speech: Speech, { oil, priceSpan }: OilIn): string {
  const name = oilOf(speech.library, oil).shortName
  const now = speech.brief.oils[oil]?.pricePerKg ?? NaN
  const [least, most] = priceSpan.map((end) => {
    if (end === null) return undefined
    const { value, decimals } = inward(end, now, MONEY_DECIMALS)
    return speech.words.money(value, decimals)
  })
  if (least === undefined && most === undefined)
    return `The blend stays as it is whatever ${name} costs.`
  if (least === most) return `The blend stays as it is only while ${name} costs ${least} per kg.`
  const price =
    least && most ? `${least} to ${most}` : least ? `${least} or more` : `at most ${most}`
  return `The blend stays as it is while ${name} costs ${price} per kg${nowInWords(speech, oil)}.`
}

/** Why no price of an oil is told where cost stands at its own least. */
export function costHeldUpSentence({ brief, words }: Speech): string {
  const min = brief.measures[COST]?.min ?? NaN
  const wish = words.money(min, decimalsOf(min, MONEY_DECIMALS))
  return `Cost stands at its own wish of at least ${wish} per kg, so no price of one oil decides the blend.`
}

function nowInWords({ brief, words }: Speech, oil: string): string {
  const price = brief.oils[oil]?.pricePerKg ?? NaN
  return ` (now ${words.money(price, decimalsOf(price, MONEY_DECIMALS))})`
}
