import type { Mould, MouldShape } from '../../domain/batch/mould'

/** The shapes a mould can have, by the field that says them. */
export const SHAPES = [
  { value: 'loafMm', label: 'loaf' },
  { value: 'boxMm', label: 'box' },
  { value: 'cylinderMm', label: 'cylinder' },
  { value: 'cavities', label: 'cavities' },
  { value: 'volumeMl', label: 'volume' },
  { value: 'waterGrams', label: 'water that fills it' },
] as const

export type Shape = (typeof SHAPES)[number]['value']

/** A shape to begin with: a common size of each, invented. */
export const FIRST_SHAPES: Readonly<Record<Shape, MouldShape>> = {
  loafMm: { loafMm: { length: 250, bottomWidth: 80, topWidth: 90, height: 65 } },
  boxMm: { boxMm: { length: 400, width: 250, height: 30 } },
  cylinderMm: { cylinderMm: { diameter: 70, length: 300 } },
  cavities: { cavities: { count: 6, volumeMl: 100 } },
  volumeMl: { volumeMl: 1000 },
  waterGrams: { waterGrams: 1000 },
}

/** Which shape a mould has. */
export function shapeOf(mould: MouldShape): Shape {
  return SHAPES.find(({ value }) => value in mould)?.value ?? 'volumeMl'
}

/** A mould of another shape, with what is said of it beside. */
export function reshaped({ fillPercent, densityGPerMl, count }: Mould, to: Shape): Mould {
  return { ...FIRST_SHAPES[to], fillPercent, densityGPerMl, count }
}

/** "a loaf mould", "3 box moulds". */
export function mouldInWords(mould: Mould): string {
  const shape = {
    volumeMl: '',
    waterGrams: '',
    cavities: '',
    loafMm: 'loaf ',
    boxMm: 'box ',
    cylinderMm: 'cylinder ',
  }[shapeOf(mould)]
  const count = mould.count ?? 1
  return count === 1 ? `a ${shape}mould` : `${count} ${shape}moulds`
}
