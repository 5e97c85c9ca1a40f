import { expect, test } from 'vitest'
import type { OwnOil } from '../../src/domain/blend/own-oil'
import { barOf } from '../../src/state/bar'
import { FIRST_WORK, startedAfresh } from '../../src/state/first-work'
import { WorkHistory } from '../../src/state/history.svelte'
import { libraryOf } from '../../src/state/library'
import { OwnOilDesk } from '../../src/state/own-oil.svelte'
import {
  besideOwnOils,
  freeOwnId,
  placesOfOil,
  withBegunOil,
  withoutOwnOil,
  withOwnOil,
} from '../../src/state/own-oils'
import type { Work } from '../../src/state/work'
import { keptWork } from '../../src/storage/work-schema'

const LAUREL: OwnOil = { id: 'own-laurel', from: 'olive', name: 'Laurel of the hill' }
const withLaurel = (own: OwnOil = LAUREL): Work => ({
  ...FIRST_WORK,
  ownOils: [own],
  bar: barOf({ 'own-laurel': 20, olive: 80 }),
})

test('an id is told from all that there are', () => {
  const taken = new Set(['own-laurel', 'own-laurel-2'])
  expect(freeOwnId('Láurel', (id) => taken.has(id))).toBe('own-laurel-3')
  expect(freeOwnId('月桂', () => false)).toBe('own-oil')
})

test('an oil is begun under a name and may be used at once; afresh keeps it', () => {
  const { work, id } = withBegunOil(FIRST_WORK, 'Laurel of the hill', 'olive')
  expect(id).toBe('own-laurel-of-the-hill')
  expect(libraryOf(work.ownOils ?? []).oils.get(id)?.own?.from).toBe('olive')
  expect(startedAfresh(work).ownOils).toEqual(work.ownOils)
})

test('it says where an oil stands, and an oil that stands nowhere goes', () => {
  expect(placesOfOil(withLaurel(), 'own-laurel')).toEqual(['the bar'])
  const free: Work = { ...FIRST_WORK, ownOils: [LAUREL] }
  expect(placesOfOil(free, 'own-laurel')).toEqual([])
  expect(withoutOwnOil(free, 'own-laurel')).not.toHaveProperty('ownOils')
})

test('a changed description stands in the place of the one before', () => {
  const changed = withOwnOil(withLaurel(), { ...LAUREL, lot: 'L 7' })
  expect(changed.ownOils).toEqual([{ ...LAUREL, lot: 'L 7' }])
})

test('oils of a formula come in beside those here', () => {
  const formula = { blend: { 'own-laurel': 30, olive: 70 }, oils: ['own-laurel'] }
  const same = besideOwnOils([LAUREL], [{ ...LAUREL, lot: undefined }])
  expect([same.ownOils, same.rename(formula)]).toEqual([[LAUREL], formula])

  const other = besideOwnOils([LAUREL], [{ ...LAUREL, from: 'coconut' }])
  expect(other.ownOils).toEqual([
    LAUREL,
    { id: 'own-laurel-2', from: 'coconut', name: 'Laurel of the hill 2' },
  ])
  expect(other.rename(formula)).toEqual({
    blend: { 'own-laurel-2': 30, olive: 70 },
    oils: ['own-laurel-2'],
  })
  expect(libraryOf(other.ownOils).oils.has('own-laurel-2')).toBe(true)
})

test('kept work comes back with them, and one that names what nothing describes does not', () => {
  const text = (work: Work): unknown => JSON.parse(JSON.stringify(work))
  expect(keptWork.parse(text(withLaurel())).ownOils).toEqual([LAUREL])
  const { ownOils: _own, ...without } = withLaurel()
  const refused = keptWork.safeParse(text(without))
  expect(refused.error?.issues.map(({ message }) => message)).toEqual([
    'Nothing describes the oil "own-laurel" that is named here.',
  ])
  const broken = keptWork.safeParse(text(withLaurel({ ...LAUREL, from: 'dragon' })))
  expect(broken.success).toBe(false)
})

test('the first figure makes a copy of the library’s oil one’s own', () => {
  const work = new WorkHistory(FIRST_WORK)
  const desk = new OwnOilDesk(work, () => 'olive')
  expect([desk.kept, desk.own?.from, work.now.ownOils]).toEqual([undefined, 'olive', undefined])
  desk.edit((own) => ({
    ...own,
    saponificationValue: { value: 189.5, within: 1.5 },
    lot: 'OL-0830',
  }))
  const [own] = work.now.ownOils ?? []
  expect(own).toMatchObject({ from: 'olive', saponificationValue: { value: 189.5, within: 1.5 } })
  expect(own?.colour).toMatch(/^#[0-9A-F]{6}$/u)
  // On a word and no paper: two percent either way (of 189.5), whatever was typed.
  const oil = libraryOf(work.now.ownOils ?? []).oils.get(own?.id ?? '')
  expect(oil?.saponificationValue.low).toBeCloseTo(189.5 * 0.98, 9)
})

test('what is wrong is held, told of and changes nothing until it is mended', () => {
  const work = new WorkHistory({ ...FIRST_WORK, ownOils: [LAUREL] })
  const desk = new OwnOilDesk(work, () => 'own-laurel')
  desk.edit((own) => ({ ...own, saponificationValue: { value: 0.135 } }))
  expect([desk.isHeld, desk.problems.length, work.now.ownOils]).toEqual([true, 1, [LAUREL]])
  desk.edit((own) => ({ ...own, saponificationValue: { value: 19 } }))
  expect(desk.problems[0]?.message).toMatch(/^The value is 19; acids like these take about/u)
  desk.dropHeld()
  expect([desk.isHeld, desk.problems]).toEqual([false, []])
})

test('a certificate is read into it, and acids are taken back one by one', () => {
  const work = new WorkHistory({ ...FIRST_WORK, ownOils: [LAUREL] })
  const desk = new OwnOilDesk(work, () => 'own-laurel')
  const read = desk.takeCertificate(
    'Certificate LB-0311\nLauric C12:0 20 %\nOleic C18:1 45 %\nSaponification value 199',
  )
  expect(read.unread).toEqual([])
  const own = work.now.ownOils?.[0]
  expect(own?.acids).toEqual({ lauric: { value: 20 }, oleic: { value: 45 } })
  expect([own?.certificate, own?.saponificationValue]).toEqual(['LB-0311', { value: 199 }])
  expect(desk.acids.find(({ id }) => id === 'lauric')).toMatchObject({ copied: 0, now: 20 })
  expect(desk.sum).toBeCloseTo(100, 6)
  desk.setAcid('lauric', undefined)
  desk.setAcid('oleic', undefined)
  expect(work.now.ownOils?.[0]?.acids).toBeUndefined()
  expect(desk.acids.find(({ id }) => id === 'oleic')?.now).toBe(desk.base?.acids['oleic']?.typical)
})

test('an oil that stands in the bar is not taken out', () => {
  const work = new WorkHistory(withLaurel())
  const desk = new OwnOilDesk(work, () => 'own-laurel')
  desk.takeOut()
  expect([desk.stands, work.now.ownOils]).toEqual([['the bar'], [LAUREL]])
})
