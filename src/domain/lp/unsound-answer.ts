/** Thrown when a solver's answer does not stand up to what was asked; such an answer is never shown. */
export class UnsoundAnswer extends Error {
  override readonly name = 'UnsoundAnswer'
}
