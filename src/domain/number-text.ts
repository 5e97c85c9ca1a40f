/** Stands between thousands, and between a figure and its unit. */
export const THIN_SPACE = '\u2009'

/** The sign of a figure below zero; files have an ordinary minus. */
export const TRUE_MINUS = '−'

/** A number with so many decimals, thin spaces between thousands and a true minus. */
export function figure(value: number, decimals: number): string {
  const [whole = '', part] = Math.abs(value).toFixed(decimals).split('.')
  const grouped = whole.replace(/\B(?=(\d{3})+$)/gu, THIN_SPACE)
  const sign = value < 0 && Number(value.toFixed(decimals)) !== 0 ? TRUE_MINUS : ''
  return sign + (part === undefined ? grouped : `${grouped}.${part}`)
}
