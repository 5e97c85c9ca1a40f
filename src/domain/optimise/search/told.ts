/** An answer other than that there is none, which is told in the same way for all questions. */
export type Told<T extends { readonly status: string }> = Exclude<
  T,
  { readonly status: 'infeasible' }
>

/** The answer, or undefined where it is proved that there is none. */
export function unlessNone<T extends { readonly status: string }>(answer: T): Told<T> | undefined {
  return isTold(answer) ? answer : undefined
}

function isTold<T extends { readonly status: string }>(answer: T): answer is Told<T> {
  return answer.status !== 'infeasible'
}
