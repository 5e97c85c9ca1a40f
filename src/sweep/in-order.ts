/**
 * Does work on items, several at once, and hands over what comes of it in the order of the items. At
 * most `width` are in hand: no more is read while the oldest is not done, and nothing more is begun
 * while what came of it is being handed over.
 */
export async function inOrder<T, R>(
  items: AsyncIterable<T>,
  width: number,
  work: (item: T) => Promise<R>,
  handOver: (item: T, result: R) => Promise<void>,
): Promise<void> {
  const inHand: { readonly item: T; readonly result: Promise<R> }[] = []
  const oldestDone = async () => {
    const oldest = inHand.shift()
    if (oldest) await handOver(oldest.item, await oldest.result)
  }
  for await (const item of items) {
    const result = work(item)
    // Whoever waits for it hears of a failure; until its turn comes nobody does, and that is no fault.
    result.catch(() => undefined)
    inHand.push({ item, result })
    if (inHand.length >= width) await oldestDone()
  }
  while (inHand.length > 0) await oldestDone()
}
