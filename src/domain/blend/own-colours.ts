import type { Oil, OilFamily } from './oil'

/** Colours kept for oils of a maker's own: of their family's hue, and of no oil of the library. */
export const OWN_COLOURS: Readonly<Record<OilFamily, readonly [string, ...string[]]>> = {
  lauric: ['#4F698F', '#BAD4FF', '#003C6A', '#026C8F', '#86B2D4', '#7ABFFF'],
  hard: ['#ECA695', '#CCA288', '#76564F', '#A08461', '#610700', '#915F2E'],
  oleic: ['#66662D', '#1E3C09', '#2B310A', '#B7EB90', '#6A9F5E', '#708E68'],
  polyunsaturated: ['#209197', '#07332E', '#1B625A', '#599EA2', '#487270', '#2D5550'],
  ricinoleic: ['#6C004B', '#EFA8CE', '#912444', '#88496C', '#541225', '#B27D93'],
}

/** The first colour of a family that none of some oils has; from the start again where all are taken. */
export function freeColour(family: OilFamily, oils: readonly Oil[]): string {
  const taken = new Set(oils.map(({ colour }) => colour))
  const own = OWN_COLOURS[family]
  const before = oils.filter((oil) => oil.own !== undefined && oil.family === family).length
  return own.find((colour) => !taken.has(colour)) ?? own[before % own.length] ?? own[0]
}
