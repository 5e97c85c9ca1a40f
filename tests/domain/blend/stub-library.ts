import { library } from '../../../src/data/library'
import { type Library, oilOf } from '../../../src/domain/blend/library'
import type { AcidMeasure } from '../../../src/domain/blend/measure'
import type { Oil } from '../../../src/domain/blend/oil'

/*
 * Libraries with stated figures, so that an expected value depends on the example and not on data/.
 * Each oil is made of one acid of its own name; a measure's weight for that acid is the oil's value.
 */

const OLIVE = oilOf(library, 'olive')
const BASIS = { basis: 'assumption', source: 'stated by the test' } as const
const RANGE_BASIS = { ...BASIS, typicalBasis: 'assumption', typicalSource: BASIS.source } as const

/** Oils with these values of these measures, in points: `{ olive: { hardness: 20 } }`. */
export function libraryOfValues(values: Readonly<Record<string, Record<string, number>>>): Library {
  const measures = [...new Set(Object.values(values).flatMap((one) => Object.keys(one)))]
  return {
    oils: new Map(Object.keys(values).map((id) => [id, stubOil(id)])),
    measures: measures.map((id) => stubMeasure(id, values)),
  }
}

/** Oils with these saponification values in mg KOH/g: one figure, or the low, typical and high. */
export function libraryOfSaponification(
  values: Readonly<Record<string, number | readonly [number, number, number]>>,
): Library {
  const oils = Object.entries(values).map(([id, value]): [string, Oil] => {
    const [low, typical, high] = typeof value === 'number' ? [value, value, value] : value
    return [id, { ...stubOil(id), saponificationValue: { low, typical, high, ...RANGE_BASIS } }]
  })
  return { oils: new Map(oils), measures: [] }
}

function stubOil(id: string): Oil {
  return {
    ...OLIVE,
    id,
    name: id,
    acids: { [id]: { low: 100, typical: 100, high: 100, ...RANGE_BASIS } },
    unsaponifiableGPerKg: { typical: 0, high: 0, ...RANGE_BASIS },
  }
}

function stubMeasure(
  id: string,
  values: Readonly<Record<string, Record<string, number>>>,
): AcidMeasure {
  const weights = Object.entries(values).map(([oil, measures]) => {
    return [oil, { weight: (measures[id] ?? 0) / 100, ...BASIS }] as const
  })
  return {
    id,
    name: id,
    meaning: 'Stated by the test.',
    better: 'more',
    unit: 'points',
    shown: true,
    tie: 1,
    offset: 0,
    weights: Object.fromEntries(weights),
    unsaponifiable: null,
    limits: [],
  }
}
