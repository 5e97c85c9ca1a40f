import type { Mould, MouldShape } from '../../../domain/batch/order/mould'
import { WHOLE_PERCENT } from '../../../domain/units'
import { number, withUnit } from '../../words/format'

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

/** Its inside and how far it is filled: "250 by 80 to 90 by 65 mm, filled to 95 %". */
export function mouldSizeInWords(mould: Mould): string {
  const fill = mould.fillPercent ?? WHOLE_PERCENT
  const size = insideInWords(mould)
  return fill === WHOLE_PERCENT ? size : `${size}, filled to ${withUnit(fill, 0, '%')}`
}

function insideInWords(mould: MouldShape): string {
  const mm = (...sides: readonly (number | string)[]) =>
    `${sides.map((side) => (typeof side === 'string' ? side : number(side, 0))).join(' by ')}\u2009mm`
  if ('boxMm' in mould) return mm(mould.boxMm.length, mould.boxMm.width, mould.boxMm.height)
  if ('loafMm' in mould) {
    const { length, bottomWidth, topWidth, height } = mould.loafMm
    return mm(length, `${number(bottomWidth, 0)} to ${number(topWidth, 0)}`, height)
  }
  if ('cylinderMm' in mould)
    return `${withUnit(mould.cylinderMm.diameter, 0, 'mm')} across, ${withUnit(mould.cylinderMm.length, 0, 'mm')} long`
  if ('cavities' in mould)
    return `${mould.cavities.count} of ${withUnit(mould.cavities.volumeMl, 0, 'ml')}`
  if ('volumeMl' in mould) return withUnit(mould.volumeMl, 0, 'ml')
  return `${withUnit(mould.waterGrams, 0, 'g')} of water fill it`
}
