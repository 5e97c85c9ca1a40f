import { z } from 'zod'
import { batchFile } from './batch-file'
import { amount } from './bounds'
import { pricesOn } from './cost-shape'
import { mass } from './mass-text'
import { priceBookShape } from './price-book-file'

/** The file format of what is to be bought for, version 1; money in whole minor units. */
export const buyingFile = z.strictObject({
  format: z.literal('barwright-buying/1'),
  on: pricesOn,
  prices: priceBookShape,
  batches: z
    .array(z.strictObject({ batch: batchFile, times: z.int().min(1).max(10_000).default(1) }))
    .default([])
    .describe('Batches to be made, and how often'),
  needs: z
    .record(z.string(), mass.pipe(amount))
    .default({})
    .describe('More of single materials, in g or pieces'),
  stock: z
    .record(z.string(), mass.pipe(amount))
    .default({})
    .describe('What is there, in g or pieces by material'),
  wastePercent: z.number().min(0).max(99).default(0).describe('Lost before the pot, percent'),
  seconds: z.number().min(0.1).max(600).default(30).describe('Longest time to search'),
})
