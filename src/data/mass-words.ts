import type { MassUnit } from '../domain/units'

/** What a word behind a figure says. */
export type UnitMeaning = MassUnit | 'percent' | 'bare' | 'volume'

const UNITS: readonly (readonly [RegExp, UnitMeaning])[] = [
  [/^(?:%|percent|per cent|pct|prozent|pour cent)$/u, 'percent'],
  [/^(?:kg|kgs|kilo|kilos|kilograms?|kilogrammes?)$/u, 'kg'],
  [/^(?:g|gr|gm|gms|grams?|grammes?|gramm)$/u, 'g'],
  [/^(?:oz|ozs|ounces?)$/u, 'oz'],
  [/^(?:lb|lbs|pounds?)$/u, 'lb'],
  [/^(?:parts?|teile?)$/u, 'bare'],
]

/** Words for volumes, which weigh what their oil weighs, with the plain name of each. */
const VOLUMES: readonly (readonly [RegExp, string])[] = [
  [/^fl\.? ?oz$|^fluid ounces?$/u, 'A fluid ounce'],
  [/^millilit(?:re|er)s?$|^mls?$/u, 'A millilitre'],
  [/^cls?$/u, 'A centilitre'],
  [/^lit(?:re|er)s?$|^l$/u, 'A litre'],
  [/^cups?$|^tassen?$|^tasses?$|^tazas?$|^tazze?$/u, 'A cup'],
  [/^tablespoons?$|^tbsps?$|^el$|^esslöffel$/u, 'A tablespoon'],
  [/^teaspoons?$|^tsps?$|^tl$|^teelöffel$/u, 'A teaspoon'],
  [/^gallons?$|^gal$/u, 'A gallon'],
  [/^pints?$/u, 'A pint'],
  [/^quarts?$/u, 'A quart'],
  [/^drops?$|^tropfen$/u, 'A drop'],
  [/^dash(?:es)?$|^pinch(?:es)?$|^handfuls?$|^scoops?$/u, 'A pinch'],
]

/** All words that are read as a unit, as a part of a regular expression that ignores capitals. */
export const UNIT_WORDS =
  '%|percent|per cent|pct|prozent|pour cent|kilogrammes?|kilograms?|kilos?|kgs?|grammes?|gramm|grams?|gms?|gr|g|' +
  'fl\\.? ?oz|fluid ounces?|ounces?|ozs?|pounds?|lbs?|parts?|teile?|millilit(?:re|er)s?|mls?|cls?|lit(?:re|er)s?|l|' +
  'cups?|tassen?|tasses?|tazas?|tazze?|tablespoons?|tbsps?|esslöffel|el|teaspoons?|tsps?|teelöffel|tl|' +
  'gallons?|gal|pints?|quarts?|drops?|tropfen|dash(?:es)?|pinch(?:es)?|handfuls?|scoops?'

/** What a unit's word says; undefined for a word that is no unit. */
export function unitMeant(word: string): UnitMeaning | undefined {
  const small = word.toLowerCase()
  const meant = UNITS.find(([words]) => words.test(small))?.[1]
  return meant ?? (volumeNamed(small) === undefined ? undefined : 'volume')
}

function volumeNamed(small: string): string | undefined {
  return VOLUMES.find(([words]) => words.test(small))?.[1]
}

/** Why a volume can't be taken where a weight is asked for. */
export function noWeight(word: string): string {
  return `${volumeNamed(word.toLowerCase()) ?? 'That'} is no weight. Type grams or ounces`
}
