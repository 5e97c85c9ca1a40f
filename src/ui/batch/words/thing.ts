/** What a change is about: changes of the same that follow closely are one step of undo. */
export function thingOf(what: string, change: object): string {
  const given = Object.entries(change).flatMap(([key, value]) => (value === undefined ? [] : [key]))
  return `${what} ${given.join()}`
}
