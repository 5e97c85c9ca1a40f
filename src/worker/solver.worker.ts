import { expose } from 'comlink'
import wasmUrl from 'highs/runtime?url'
import { highsSolver } from '../domain/lp/solvers/highs'
import type { LotsLibrary } from './lots'
import { createService } from './service'

const loadHighs = once(async () => {
  const { default: load } = await import('highs')
  return highsSolver(await load({ locateFile: () => wasmUrl }))
})

/** The library comes first; all later messages are questions. */
addEventListener(
  'message',
  ({ data }: MessageEvent<LotsLibrary>) => expose(createService(data, loadHighs)),
  { once: true },
)

function once<T>(make: () => Promise<T>): () => Promise<T> {
  let made: Promise<T> | undefined
  return () => (made ??= make())
}
