import type { Command } from './command'

/** What is known of a command before it is loaded: a call loads only what it needs. */
export interface Entry {
  /** One line for the help text. */
  readonly says: string
  /** Calls to learn from, each run by a test in the folder of the example files. */
  readonly examples: readonly string[]
  load(): Promise<Command>
}

export const COMMANDS: ReadonlyMap<string, Entry> = new Map<string, Entry>([
  [
    'solve',
    {
      says: 'the best blend for a brief',
      examples: [
        'solve brief.json',
        'solve brief.json --why',
        'solve brief-own.json --oils oils.json',
        'solve - < brief.json',
      ],
      load: async () => (await import('./solve')).solve,
    },
  ],
  [
    'range',
    {
      says: 'the true least and most of every measure and every oil’s share',
      examples: ['range brief.json'],
      load: async () => (await import('./range')).range,
    },
  ],
  [
    'frontier',
    {
      says: 'the exact trade-off surface of 2 to 4 measures',
      examples: ['frontier brief.json --axes hardness,lather,cost'],
      load: async () => (await import('./frontier')).frontier,
    },
  ],
  [
    'terrain',
    {
      says: 'the best of a measure over a grid of two others',
      examples: ['terrain brief.json --axes hardness,lather --value cost --grid 20'],
      load: async () => (await import('./terrain')).terrain,
    },
  ],
  [
    'at',
    {
      says: 'the best blend that has given values of some measures',
      examples: ['at brief.json --point hardness=34.5,lather=32'],
      load: async () => (await import('./at')).at,
    },
  ],
  [
    'alternatives',
    {
      says: 'blends nearly as good as the best and as different as can be',
      examples: ['alternatives brief.json --slack 3% --count 4'],
      load: async () => (await import('./alternatives')).alternatives,
    },
  ],
  [
    'spread',
    {
      says: 'how the best blend moves from lot to lot, and what it costs to hold any lot',
      examples: ['spread brief.json --draws 1000 --seed 1'],
      load: async () => (await import('./spread')).spread,
    },
  ],
  [
    'batch',
    {
      says: 'the weights of a batch, with its lye; or its sheet for the workshop',
      examples: [
        'batch batch.json',
        'batch batch-salt.json --sheet --unit oz',
        'batch batch-own.json',
      ],
      load: async () => (await import('./batch')).batch,
    },
  ],
  [
    'label',
    {
      says: 'the words of a bar’s label: ingredients both ways, allergens, net weight, what the law still asks',
      examples: ['label batch-lots.json', 'label batch-lots.json --text'],
      load: async () => (await import('./label')).label,
    },
  ],
  [
    'sweep',
    {
      says: 'answers every line of a file of briefs or prices, over all cores or machines',
      examples: ['sweep sweep.ndjson --out answers.ndjson', 'sweep - < sweep.ndjson'],
      load: async () => (await import('./sweep')).sweep,
    },
  ],
  [
    'oils',
    {
      says: 'the oils that a brief can name',
      examples: ['oils'],
      load: async () => (await import('./oils')).oils,
    },
  ],
  [
    'prices',
    {
      says: 'reads a price list (CSV) into a price book, or tells and exports a price book (JSON)',
      examples: [
        'prices prices.csv',
        'prices prices.json --need olive=12kg',
        'prices prices.json --csv',
      ],
      load: async () => (await import('./prices')).prices,
    },
  ],
  [
    'buy',
    {
      says: 'the cheapest packs for some batches, over all suppliers, with freight',
      examples: ['buy buying.json'],
      load: async () => (await import('./buy')).buy,
    },
  ],
  [
    'cost',
    {
      says: 'what a bar, a batch and a kg cost, and where the money goes',
      examples: ['cost cost.json'],
      load: async () => (await import('./cost')).cost,
    },
  ],
  [
    'quote',
    {
      says: 'prices for some quantities of bars, with margin, tax, lead time and break-even',
      examples: ['quote quote.json', 'quote quote.json --html --locale en-GB'],
      load: async () => (await import('./quote')).quote,
    },
  ],
  [
    'reprice',
    {
      says: 'the cheapest formula as prices move, where it switches, and what holding the old one costs',
      examples: [
        'reprice brief.json --oil olive --from -30% --to 80%',
        'reprice change.json --together --draws 200',
      ],
      load: async () => (await import('./reprice')).reprice,
    },
  ],
  [
    'gone',
    {
      says: 'what can take the place of an oil: lye anew, label changes, and cost per bar and year',
      examples: ['gone change.json --oil palm --bars-per-year 4000'],
      load: async () => (await import('./gone')).gone,
    },
  ],
  [
    'completion',
    {
      says: 'what makes a shell complete commands and flags',
      examples: ['completion bash', 'completion zsh', 'completion fish'],
      load: async () => (await import('./completion')).completion,
    },
  ],
])
