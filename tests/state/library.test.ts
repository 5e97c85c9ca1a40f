import { expect, test } from 'vitest'
import { library } from '../../src/data/library'
import type { OwnOil } from '../../src/domain/blend/own-oil'
import { libraryOf } from '../../src/state/library'

const LOT: OwnOil = { id: 'own-olive-0830', from: 'olive', lot: 'OL-0830' }

test('the library of a work holds its own oils, and is the same for the same list', () => {
  const list = [LOT]
  expect(libraryOf(list).oils.get('own-olive-0830')?.own?.from).toBe('olive')
  expect(libraryOf(list)).toBe(libraryOf(list))
  expect(libraryOf([])).toBe(library)
})

test('an oil that something is wrong with is left out, the others stay', () => {
  const { oils } = libraryOf([{ ...LOT, from: 'dragon', id: 'own-wrong' }, LOT])
  expect([oils.has('own-wrong'), oils.has('own-olive-0830')]).toEqual([false, true])
})
