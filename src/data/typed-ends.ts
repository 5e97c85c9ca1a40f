/** Both ends of a wish as they were typed, or one of them; or a figure to stay near to. */
export type TypedEnds =
  | { readonly kind: 'range'; readonly min: number; readonly max: number }
  | { readonly kind: 'least' | 'most' | 'about'; readonly value: number }

const FIGURE = String.raw`\d+(?:[.,]\d+)?`
const UNIT = String.raw`\s*(?:[%°]|[\p{L}]{1,9})?\s*`

/** A minus between two figures, or a word for it. */
const RANGE = new RegExp(
  `^(-?${FIGURE})${UNIT}(?:[-–—]|\\bto\\b|\\bbis\\b|\\.{2,3})\\s*(${FIGURE})${UNIT}$`,
  'iu',
)

const ONE_END: readonly (readonly [RegExp, 'least' | 'most' | 'about'])[] = [
  [end('>=?|≥|at least|min\\.?|minimum|over|above|from|mindestens|ab'), 'least'],
  [end('<=?|≤|at most|max\\.?|maximum|under|below|up to|höchstens|bis'), 'most'],
  [
    end('~|≈|about|around|approx\\.?|approximately|circa|ca\\.?|c\\.|roughly|etwa|environ'),
    'about',
  ],
]

function end(words: string): RegExp {
  return new RegExp(`^(?:${words})\\s*(-?${FIGURE})${UNIT}$`, 'iu')
}

/** Reads “38-44”, “38 to 44”, “>38”, “about 40”; undefined for anything else. */
export function typedEnds(text: string): TypedEnds | undefined {
  const range = RANGE.exec(text)
  if (range) {
    const [one, two] = [numberOf(range[1]), numberOf(range[2])]
    return { kind: 'range', min: Math.min(one, two), max: Math.max(one, two) }
  }
  for (const [words, kind] of ONE_END) {
    const match = words.exec(text)
    if (match) return { kind, value: numberOf(match[1]) }
  }
  return undefined
}

function numberOf(figure = ''): number {
  return Number(figure.replace(',', '.'))
}
