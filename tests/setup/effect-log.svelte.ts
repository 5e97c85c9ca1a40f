/** Runs an effect as a component would, and logs each value it saw. */
export class EffectLog {
  grams = $state(1)
  readonly seen: number[] = []
  readonly stop = $effect.root(() => {
    $effect(() => {
      this.seen.push(this.grams)
    })
  })
}
