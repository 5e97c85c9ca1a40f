import { library } from '../data/library'
import type { SurfaceAxis } from '../domain/optimise/pareto/blend-surface'
import { type Read, wrong } from './number-flag'

const KNOWN = library.measures.map(({ id }) => id).join(', ')

/**
 * Measures typed as "hardness,cost", or "hardness:less" where the other way than usual is wanted; each
 * once, and between `least` and `most` of them.
 */
export function readAxes(
  typed: unknown,
  flag: string,
  least: number,
  most: number,
): Read<readonly SurfaceAxis[]> {
  const words = typeof typed === 'string' ? typed.split(',').map((word) => word.trim()) : []
  const axes: SurfaceAxis[] = []
  for (const word of words) {
    const [id = '', way, ...more] = word.split(':')
    const measure = library.measures.find((one) => one.id === id)
    if (!measure) return wrong(flag, `There is no measure "${id}". Use ${KNOWN}.`)
    if (more.length > 0 || !(way === undefined || way === 'more' || way === 'less'))
      return wrong(flag, `"${word}" is no axis. Write ${id}, ${id}:more or ${id}:less.`)
    axes.push({ measure: id, wanted: way ?? measure.better })
  }
  if (new Set(axes.map(({ measure }) => measure)).size < axes.length)
    return wrong(flag, `"${words.join(',')}" names a measure twice. Name each once.`)
  if (axes.length < least || axes.length > most) {
    const count = least === most ? `${least}` : `${least} to ${most}`
    return wrong(
      flag,
      `${flag} names ${axes.length} measures. Give ${count}, such as hardness,lather.`,
    )
  }
  return { value: axes }
}
