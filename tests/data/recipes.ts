import type { RecipeLye } from '../../src/data/recipe/recipe-order'
import type { BatchOrder } from '../../src/domain/batch/order/order'
import { GRAMS_PER_OUNCE } from '../../src/domain/units'

/** What a recipe comes to: the order that a person would write by hand, or the question it ends in. */
interface Expected {
  readonly order?: Partial<BatchOrder>
  readonly question?: object
  readonly unread?: readonly string[]
  /** What else the order holds. */
  readonly also?: Partial<BatchOrder>
  readonly lye: Partial<RecipeLye>
}

const compared = { status: 'compared' } as const
const notCompared = (because: 'unread' | 'question' | 'noLye' | 'noSize') =>
  ({ status: 'notCompared', because }) as const

/** Recipes as people write them, all made up for this test. */
export const RECIPES: readonly {
  readonly name: string
  readonly text: string
  readonly expected: Expected
}[] = [
  {
    name: 'grams, with slips of the hand',
    text: `Kitchen bar
olvie oil 450 g
cocnut oil 250g
shea buter 100 g
rice bran oil 150 g
caster oil 50 g
lye 139 g
water 300 g
superfat 5%`,
    expected: {
      order: {
        blend: { olive: 45, coconut: 25, shea: 10, 'rice-bran': 15, castor: 5 },
        oilGrams: 1000,
        superfat: 5,
        water: { percentOfOils: 30 },
      },
      also: { oilGrams: 1000, superfat: 5, water: { percentOfOils: 30 } },
      lye: compared,
    },
  },
  {
    name: 'ounces',
    text: `16 oz olive oil
8 oz coconut oil (76 degree)
6 oz. palm oil
2 oz castor oil
4.4 oz sodium hydroxide
10 oz distilled water
1 oz lavender essential oil
5 % superfat`,
    expected: {
      order: {
        blend: { olive: 50, coconut: 25, palm: 18.75, castor: 6.25 },
        oilGrams: 32 * GRAMS_PER_OUNCE,
      },
      also: { fragrance: { blend: { lavender: 100 }, grams: GRAMS_PER_OUNCE } },
      lye: compared,
    },
  },
  {
    name: 'percent with what is usual around them',
    text: `Olive 60 %
Coconut 25 %
Shea 15 %
lye concentration 33 %
SF 6 %
batch of 1200 g
sodium lactate 2 %
citric acid 1 %
CP`,
    expected: {
      order: {
        blend: { olive: 60, coconut: 25, shea: 15 },
        oilGrams: 1200,
        superfat: 6,
        acids: [{ acid: 'citric', percentOfOils: 1, alkali: 'add' }],
      },
      also: { process: 'cold', additives: [{ additive: 'sodium-lactate-60', percentOfOils: 2 }] },
      lye: notCompared('noLye'),
    },
  },
  {
    name: 'percents that do not add up',
    text: 'olive 60 %, coconut 25 %, shea 11 %, superfat 5, lye 130 g',
    expected: {
      question: { status: 'question', ask: 'sum', percent: 96, missing: 4 },
      lye: notCompared('question'),
    },
  },
  {
    name: 'a table',
    text: `| Oil | % | g |
|---|---:|---:|
| Olive oil | 50 | 500 |
| Coconut oil | 30 | 300 |
| Lard | 20 | 200 |
| Total | 100 | 1000 |
| NaOH | | 139 |
| Water | | 280 |`,
    expected: {
      order: { blend: { olive: 50, coconut: 30, lard: 20 }, oilGrams: 1000 },
      also: { water: { percentOfOils: 28 } },
      lye: compared,
    },
  },
  {
    name: 'a German one',
    text: `Olivenseife
Olivenöl 720 g
Kokosoel 180 g
Rizinusöl 100 g
NaOH 128 g
Wasser 300 g
Überfettung 8 %
Lavendelöl 30 g
Kaltverfahren`,
    expected: {
      order: { blend: { olive: 72, coconut: 18, castor: 10 }, oilGrams: 1000, superfat: 8 },
      also: { process: 'cold', fragrance: { blend: { lavender: 100 }, grams: 30 } },
      lye: compared,
    },
  },
  {
    name: 'prose, as a diary has it',
    text: `I love how this one feels! I melt 300 g of coconut oil with 500 g of olive oil and 200 g lard. While that cools to 40 °C I stir 138 g of NaOH into 280 g of water. Stir for 10 to 15 minutes, then pour. Makes 10 bars. Cold process, cure for 6 weeks.`,
    expected: {
      order: { blend: { coconut: 30, olive: 50, lard: 20 }, oilGrams: 1000 },
      also: { process: 'cold', water: { percentOfOils: 28 } },
      lye: compared,
    },
  },
  {
    name: 'percents of everything, lye and water too',
    text: 'olive 45 %\ncoconut 20 %\nNaOH 9 %\nwater 26 %',
    expected: {
      order: { blend: { olive: (45 / 65) * 100, coconut: (20 / 65) * 100 } },
      also: { water: { percentOfOils: 40 } },
      lye: compared,
    },
  },
  {
    name: 'potash and soda together, liquids and vinegar',
    text: `olive 600 g
coconut 400 g
NaOH 90 g
KOH (90 % pure) 60 g
goat milk 100 g
water 200 g
vinegar 5 % 100 g
superfat 5`,
    expected: {
      order: {
        blend: { olive: 60, coconut: 40 },
        oilGrams: 1000,
        // By hand: 90 g and 60 × 0.9 = 54 g of pure hydroxide.
        alkali: { naoh: (90 / 144) * 100, koh: (54 / 144) * 100 },
        alkaliBy: 'weight',
        purity: { koh: 90 },
        acids: [{ acid: 'acetic', grams: 100, strengthPercent: 5, alkali: 'add' }],
        liquids: [{ liquid: 'goat-milk', grams: 100, when: 'lye' }],
      },
      also: { liquids: [{ liquid: 'goat-milk', grams: 100, when: 'lye' }] },
      lye: compared,
    },
  },
  {
    name: 'a fat the library has not, and a spoon',
    text: `olive 500 g
fractionated palm kernel oil 200 g
castor 4 tbsp
lye 95 g`,
    expected: {
      order: { blend: { olive: 100 }, oilGrams: 500 },
      unread: ['fractionated palm kernel oil 200 g', 'castor 4 tbsp'],
      lye: notCompared('unread'),
    },
  },
]
