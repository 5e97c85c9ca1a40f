import { describe, expect, test } from 'vitest'
import { batchFacts } from '../../src/data/batch-facts'
import { library } from '../../src/data/library'
import { recipeLye, recipeOrder } from '../../src/data/recipe/recipe-order'
import type { RecipeReading } from '../../src/data/recipe/recipe-reading'
import { RecipeReader } from '../../src/data/recipe/recipe-reader'
import { recipeWordsSchema } from '../../src/data/recipe/recipe-words'
import type { BatchOrder } from '../../src/domain/batch/order/order'
import { planBatch } from '../../src/domain/batch/result/plan'
import words from '../../data/recipe-words.json'
import { RECIPES } from './recipes'

const reader = new RecipeReader(library.oils.values())

/** What the page starts from where a recipe says nothing. */
const BASE: BatchOrder = {
  blend: {},
  oilGrams: 1000,
  alkali: { naoh: 100 },
  purity: {},
  superfat: 5,
  water: { lyeConcentration: 33 },
}

const hydroxide = (order: BatchOrder) => {
  const plan = planBatch(order, library, batchFacts)
  if (plan.status === 'invalid') throw new Error(JSON.stringify(plan.problems))
  return plan.alkaliGrams
}

const kinds = ({ lines }: RecipeReading) => lines.map(({ read }) => read.kind)
const unreadOf = (text: string) => reader.read(text).unread.map(({ read }) => read)
const one = (text: string) => reader.read(text).lines[0]?.read

describe('ten recipes as people write them', () => {
  test.each(RECIPES)('$name', ({ text, expected }) => {
    const reading = reader.read(text)
    expect(reading.unread.map((line) => line.text)).toEqual(expected.unread ?? [])
    if (reading.outcome.status !== 'blend') {
      expect(reading.outcome).toMatchObject(expected.question ?? { status: 'blend' })
      return
    }
    expect(expected.question).toBeUndefined()
    const order = recipeOrder(reading, BASE)
    // The order is the one that a person would write by hand, and so is its lye, to the microgram.
    if (!expected.order || !order) throw new Error('A recipe with a blend has an order')
    const [read, byHand] = [hydroxide(order), hydroxide({ ...BASE, ...expected.order })]
    for (const kind of ['naoh', 'koh'] as const)
      expect(read[kind] ?? 0).toBeCloseTo(byHand[kind] ?? 0, 6)
    expect(order).toMatchObject(expected.also ?? {})
    expect(recipeLye(reading, order, library, batchFacts)).toMatchObject(expected.lye)
  })
})

describe('every line is answered in its place', () => {
  test('a line that can’t be weighed leaves the rest standing', () => {
    const reading = reader.read(
      'olive oil 450 g\ncocnut oil 250\nshea 100\nrice bran 150g\ncastor 1/2 cup\nlye 142 g\nwater 300',
    )
    expect(kinds(reading)).toEqual(['oil', 'oil', 'oil', 'oil', 'unread', 'lye', 'water'])
    expect(reading.lines.map(({ line }) => line)).toEqual([0, 1, 2, 3, 4, 5, 6])
    expect(reading.lines[1]?.read).toMatchObject({
      oil: { id: 'coconut' },
      note: 'read as Coconut oil; g, as the others',
    })
    expect(reading.lines[4]?.read).toMatchObject({
      oil: { id: 'castor' },
      short: 'a cup is no weight',
      reason: 'A cup is no weight. Type grams or ounces',
    })
    expect(reading.lines[5]?.read).toMatchObject({ name: 'Your lye', figure: '142 g' })
    // By hand: 450 + 250 + 100 + 150 = 950; 450 / 950 = 47.4 %.
    expect(reading.outcome).toMatchObject({ status: 'blend', grams: 950 })
    const order = recipeOrder(reading, BASE)
    expect(order && recipeLye(reading, order, library, batchFacts)).toEqual({
      status: 'notCompared',
      because: 'unread',
    })
  })

  test('empty lines and headings keep the places of the others', () => {
    const reading = reader.read('My bar\n\nOils:\nolive 300 g\n\nLye\nNaOH 40 g')
    expect(reading.lines.map(({ line, read }) => [line, read.kind])).toEqual([
      [0, 'words'],
      [2, 'words'],
      [3, 'oil'],
      [5, 'words'],
      [6, 'lye'],
    ])
  })

  test('an oil that is only mentioned is not missed, one without its figure is', () => {
    expect(kinds(reader.read('Olive and lard\nolive 300 g\nlard 100 g'))[0]).toBe('words')
    expect(unreadOf('olive 300 g\nlard')).toMatchObject([{ short: 'no figure' }])
  })
})

describe('nothing is scaled unasked', () => {
  test('percents that add to 96 are a question, until they are spread', () => {
    const text = 'olive 60 %\ncoconut 25 %\nshea 11 %'
    expect(reader.read(text).outcome).toEqual({
      status: 'question',
      ask: 'sum',
      percent: 96,
      missing: 4,
    })
    const spread = reader.read(text, { spread: true })
    expect(spread.outcome).toMatchObject({ status: 'blend' })
    expect(spread.notes).toEqual(['The shares add to 96 %; they are scaled to 100 %.'])
  })

  test.each([
    ['olive 60 %, coconut 44 %', -4],
    ['olive 60, coconut 25, shea 11', 4],
    ['olive 55 %', 45],
  ])('“%s” is asked about too', (text, missing) => {
    expect(reader.read(text).outcome).toMatchObject({ ask: 'sum', missing })
  })

  test('grams and parts are never asked about', () => {
    expect(reader.read('olive 60 g, coconut 36 g').outcome).toMatchObject({ grams: 96 })
    expect(reader.read('olive 3 parts, coconut 1 part').outcome).toMatchObject({
      blend: { olive: 75, coconut: 25 },
    })
  })

  test('a sum that the text gives is held against what is read', () => {
    expect(reader.read('olive 500 g\nlard 450 g\ntotal oils 1000 g').notes).toEqual([
      'The text gives 1000 g of oils; those read add to 950 g.',
    ])
    expect(reader.read('olive 500 g\nlard 500 g\ntotal oils 1000 g').notes).toEqual([])
  })
})

describe('facts', () => {
  const found = (text: string) => reader.read(`olive 700 g\nlard 300 g\n${text}`).found

  test.each([
    ['lye 142 g', 142],
    ['NaOH 142 g', 142],
    ['142 g sodium hydroxide', 142],
    ['142g of lye', 142],
    ['lye: 5 oz', 141.747615625],
    ['Ätznatron 142 g', 142],
    ['soude caustique 142 g', 142],
    ['sosa cáustica 142 g', 142],
    ['soda caustica 142 g', 142],
    ['50 % lye solution 284 g', 142],
  ])('“%s” is lye of %d g', (text, grams) => {
    expect(found(text).lye).toMatchObject([
      { alkali: 'naoh', grams: expect.closeTo(grams, 6) as number },
    ])
  })

  test('purity stands beside grams, and potash is another alkali', () => {
    expect(found('KOH 90 % 210 g').lye).toMatchObject([
      { alkali: 'koh', grams: 210, purityPercent: 90 },
    ])
  })

  test.each([
    ['lye concentration 33 %', { rule: { lyeConcentration: 33 } }],
    ['lye at 33 %', { rule: { lyeConcentration: 33 } }],
    ['33% lye solution', { rule: { lyeConcentration: 33 } }],
    ['2:1 water to lye', { rule: { ratio: 2 } }],
    ['water : lye 2:1', { rule: { ratio: 2 } }],
    ['lye to water 1:2', { rule: { ratio: 2 } }],
    ['water 2:1', { rule: { ratio: 2 } }],
    ['water 38 %', { rule: { percentOfOils: 38 } }],
    ['distilled water 300 g', { grams: 300 }],
    ['water 300', { grams: 300 }],
  ])('“%s” is water', (text, water) => {
    expect(found(text).water).toMatchObject(water)
  })

  test.each([
    '5 % SF',
    'superfat 5',
    'superfat: 5%',
    'lye discount 5 %',
    'SF5',
    'Überfettung 5 %',
    'surgras 5 %',
  ])('“%s” is a superfat of 5 %%', (text) => {
    expect(found(text).superfat).toMatchObject({ percent: 5 })
  })

  test.each([
    ['EO lavender 30 g', 'lavender'],
    ['lavender essential oil 30 g', 'lavender'],
    ['30 g lavender EO', 'lavender'],
    ['lavender oil 30 g', 'lavender'],
    ['Lavendelöl 30 g', 'lavender'],
    ['tea tree 30 g', 'tea-tree'],
    ['sea breeze FO 30 g', undefined],
    ['fragrance oil 30 g', undefined],
  ])('“%s” is a scent', (text, scent) => {
    expect(found(text).scents).toMatchObject([{ grams: 30, scent }])
  })

  test.each([
    ['sodium lactate 2 %', 'additives', { id: 'sodium-lactate-60', percentOfOils: 2 }],
    ['salt 10 g', 'additives', { id: 'salt', grams: 10 }],
    ['sugar 10 g', 'additives', { id: 'sugar', grams: 10 }],
    ['honey 10 g', 'additives', { id: 'honey', grams: 10 }],
    ['citric acid 10 g', 'acids', { id: 'citric', grams: 10 }],
    ['vinegar 5 % 200 g', 'acids', { id: 'acetic', grams: 200, strengthPercent: 5 }],
    ['goat’s milk 100 g', 'liquids', { id: 'goat-milk', grams: 100 }],
    ['coconut milk 100 g', 'liquids', { id: 'coconut-milk', grams: 100 }],
    ['milk 100 g', 'liquids', { id: 'cow-milk', grams: 100 }],
  ] as const)('“%s” goes to the %s', (text, list, thing) => {
    expect(found(text)[list]).toMatchObject([thing])
  })

  test.each([
    ['makes 10 bars', { bars: 10 }],
    ['makes 10 bars of 100 g', { bars: 10, barGrams: 100 }],
    ['batch of 1000 g', { grams: 1000, of: 'unsaid' }],
    ['for 1.2 l', { mouldMl: 1200 }],
    ['1200 ml mould', { mouldMl: 1200 }],
  ])('“%s” is a size', (text, size) => {
    expect(found(text).size).toMatchObject(size)
  })

  test.each([
    ['cold process', 'cold'],
    ['CP', 'cold'],
    ['HP', 'hot'],
    ['hot process', 'hot'],
    ['Kaltverfahren', 'cold'],
  ])('“%s” is a method', (text, process) => {
    expect(found(text).process).toMatchObject({ process })
  })
})

describe('what stands around the facts', () => {
  const read = (text: string) => reader.read(text)

  test('a fact in brackets is one of its own, and takes nothing from its neighbour', () => {
    const { found } = read('olive 1000 g\nNaOH: 128.5g (5% superfat)')
    expect(found.lye).toMatchObject([{ grams: 128.5 }])
    expect(found.superfat).toMatchObject({ percent: 5 })
  })

  test('numbered steps and years are no amounts', () => {
    const { lines, unread } = read(
      'Castile of 2019\n1. Melt 500 g olive oil at 60 °C\n2. Dissolve 60 g NaOH in 150 ml cold water\n5. Pour, cut, cure 4-6 weeks',
    )
    expect(unread).toEqual([])
    expect(lines.map(({ read: { kind } }) => kind).slice(0, 4)).toEqual([
      'words',
      'oil',
      'lye',
      'water',
    ])
  })

  test('a point before three figures of grams is asked about', () => {
    expect(unreadOf('olive oil 1.200 g')).toMatchObject([
      { reason: '1.200 g can be read two ways. Write 1200 g or 1.2 g' },
    ])
    expect(read('olive oil 1.200 kg').outcome).toMatchObject({ grams: 1200 })
  })

  test('sentences without capitals are parted', () => {
    const { found, outcome, unread } = read(
      'soap: coconut oil 80%, castor 20%. superfat 20% . 33% lye concentration. salt 50% of oils',
    )
    expect(unread).toEqual([])
    expect(outcome).toMatchObject({ blend: { coconut: 80, castor: 20 } })
    expect(found).toMatchObject({
      superfat: { percent: 20 },
      water: { rule: { lyeConcentration: 33 } },
      additives: [{ id: 'salt', percentOfOils: 50 }],
    })
  })
})

describe('what can’t be told is asked, with what it may mean', () => {
  test.each([
    ['fractionated palm kernel oil 200 g', 'palm-kernel'],
    ['hydrogenated palm 200 g', 'palm'],
    ['1/2 cup castor', 'castor'],
    ['Olea europaea fruit oil 50 g', 'olive-pomace'],
    ['Talg 300 g', 'tallow-mutton'],
    ['sal 10 g', 'sal'],
  ])('“%s” may be %s', (text, id) => {
    const [unread] = unreadOf(text)
    expect(unread?.candidates.map((oil) => oil.id)).toContain(id)
    expect(unread?.touchesLye).toBe(true)
  })

  test.each([
    'lye 33 %',
    'Natronlauge 300 g',
    'lye solution 300 g',
    'superfat 5-8 %',
    'superfat 60 %',
    'lye concentration 80 %',
    'NaOH 142 g\nNaOH 130 g',
    'superfat 5 %\nsuperfat 8 %',
    'NaOH 1 cup',
    'olive 50-60 g',
  ])('“%s” is asked about and holds the comparison', (text) => {
    expect(unreadOf(text).some((read) => read.touchesLye)).toBe(true)
  })

  test.each(['honey 1 tbsp', 'red pigment 5 g', 'lavender essential oil'])(
    '“%s” does not hold the comparison',
    (text) => {
      expect(unreadOf(text).every((read) => !read.touchesLye)).toBe(true)
    },
  )
})

describe('hostile texts', () => {
  test.each(['', '\n\n', '|||', '\t\t', '::', '% % %', '()', '🧼', 'lye', 'water', '1:2', 'SF'])(
    '%j is nothing',
    (text) => {
      expect(reader.read(text).outcome.status).toBe('nothing')
    },
  )

  test.each([
    [
      'many gibberish lines',
      Array.from({ length: 400 }, (_, n) => `olvie oyl x${n} 5 g`).join('\n'),
    ],
    ['a million letters', 'a'.repeat(1e6)],
    ['a million figures with words', 'in 1 g '.repeat(1.5e5)],
    ['a million bars', '|'.repeat(1e6)],
    ['a million dots', '1. A'.repeat(2.5e5)],
  ])('%s are read soon', (_, text) => {
    const before = process.cpuUsage()
    reader.read(text)
    const { user, system } = process.cpuUsage(before)
    expect((user + system) / 1000).toBeLessThan(10_000)
  })
})

describe('data/recipe-words.json', () => {
  test('it names only what the data know', () => {
    const { things } = recipeWordsSchema.parse(words)
    expect(Object.keys(things.additive).filter((id) => !batchFacts.additives.has(id))).toEqual([])
    expect(Object.keys(things.acid).filter((id) => !batchFacts.acids.has(id))).toEqual([])
    expect(Object.keys(things.liquid).filter((id) => !batchFacts.liquids.has(id))).toEqual([])
    expect(Object.keys(things.scent).filter((id) => !batchFacts.scents.has(id))).toEqual([])
  })

  test.each(['acids', 'liquids', 'scents'] as const)('all %s have a name there', (kind) => {
    const { acid: acids, liquid: liquids, scent: scents } = words.things
    const named = { acids, liquids, scents }[kind]
    const missing = [...batchFacts[kind].keys()].filter((id) => !(id in named))
    expect(missing.filter((id) => id !== 'rosemary-spain')).toEqual([])
  })

  test('no name is listed twice', () => {
    const all = Object.values(words.things).flatMap((one) => Object.values(one).flat())
    expect(all.filter((name, at) => all.indexOf(name) !== at)).toEqual([])
    expect(one('kaolin 10 g')).toMatchObject({ kind: 'additive' })
  })
})
