import { ALKALI_TITLES } from '../../../domain/chemistry/alkali'
import { library } from '../../../state/library'
import type { BatchChoices } from '../../../state/work'
import { otherAlkali, scaleOf } from '../../../state/batch-choices'
import { mouldInWords } from '../words/mould-words'

/** A foldable part of what a batch can be told. */
interface Group {
  readonly id: string
  readonly name: string
  /** First parts of the paths of the problems that are mended in it. */
  readonly mends: readonly string[]
  /** What is said in it beyond a plain batch; empty where nothing is. */
  readonly said: (choices: BatchChoices) => string
}

/** All of them, in working order. */
export const GROUPS = [
  {
    id: 'size',
    name: 'Size and scales',
    mends: ['oilGrams', 'mould', 'bars', 'cut', 'scale'],
    said: (choices) => {
      const { mould, bars, cut } = choices
      const { oilStepG, lyeStepG } = scaleOf(choices)
      return listed([
        mould && mouldInWords(mould),
        bars && `${bars.count} bars`,
        cut && 'cut',
        lyeStepG !== oilStepG && `lye to ${lyeStepG} g`,
      ])
    },
  },
  {
    id: 'lye',
    name: 'Lye and superfat',
    mends: [
      'alkali',
      'purity',
      'purityIs',
      'purityUpTo',
      'lyeSolution',
      'superfat',
      'extraFat',
      'confirmedLean',
    ],
    said: ({ alkali, secondAlkali, lyeSolution, extraFat }) =>
      listed([
        secondAlkali &&
          `${secondAlkali.percent} % ${ALKALI_TITLES[otherAlkali(alkali)].toLowerCase()}`,
        lyeSolution && 'from solution',
        extraFat && `${extraFat.percent} % extra fat`,
      ]),
  },
  {
    id: 'lots',
    name: 'Lots',
    mends: ['lots'],
    said: ({ lots = {} }) =>
      counted(Object.keys(lots).filter((oil) => library.oils.has(oil)).length),
  },
  {
    id: 'water',
    name: 'Water and liquids',
    mends: ['water', 'waterOn', 'liquids', 'lye', 'cook'],
    said: ({ liquids = [], lye }) =>
      listed([counted(liquids.length), (lye?.iceGrams ?? 0) > 0 && 'ice']),
  },
  {
    id: 'additions',
    name: 'Acids and additives',
    mends: ['acids', 'additives'],
    said: ({ acids = [], additives = [] }) => counted(acids.length + additives.length),
  },
  {
    id: 'scent',
    name: 'Fragrance',
    mends: ['fragrance'],
    said: ({ fragrance }) => counted(Object.keys(fragrance?.blend ?? {}).length),
  },
  {
    id: 'cook',
    name: 'Cook and cure',
    mends: ['cook', 'cure', 'process'],
    said: ({ cook, cure }) =>
      listed([
        (cook?.extraWaterPercentOfOils ?? 0) > 0 && 'water to boil off',
        cure?.days !== undefined && `${cure.days} days`,
      ]),
  },
  {
    id: 'papers',
    name: 'Papers and prices',
    mends: ['papers', 'pricesPerKg'],
    said: ({ papers }) => listed([papers?.productCode]),
  },
] as const satisfies readonly Group[]

export type GroupId = (typeof GROUPS)[number]['id']

/** The group in which a problem is mended. */
export function groupMending(path: string): GroupId | undefined {
  const [first = ''] = path.split(/[.[]/u)
  return GROUPS.find(({ mends }: Group) => mends.includes(first))?.id
}

function listed(parts: readonly (string | false | undefined)[]): string {
  return parts.filter((part) => part !== undefined && part !== false && part !== '').join(', ')
}

function counted(count: number): string {
  return count > 0 ? String(count) : ''
}
