/** A function of a key that works each answer out once. */
export function kept<T>(of: (key: string) => T): (key: string) => T {
  const answers = new Map<string, T>()
  return (key) => {
    const answer = answers.get(key) ?? of(key)
    answers.set(key, answer)
    return answer
  }
}
