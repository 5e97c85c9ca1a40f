import { expose } from 'comlink'
import wasmUrl from 'highs/runtime?url'
import { library } from '../data/library'
import { highsSolver } from '../domain/optimise/solvers/highs'
import { createService } from './service'

const loadHighs = once(async () => {
  const { default: load } = await import('highs')
  return highsSolver(await load({ locateFile: () => wasmUrl }))
})

expose(createService(library, loadHighs))

function once<T>(make: () => Promise<T>): () => Promise<T> {
  let made: Promise<T> | undefined
  return () => (made ??= make())
}
