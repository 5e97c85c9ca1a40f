import { z } from 'zod'
import { amount } from './bounds'
import { found } from './problems'
import { readAtOnce } from './typed-number'
import { readQuantity } from './typed-quantity'

const FORMS = 'Give a number of g, or a text with its unit, such as "2.5 kg" or "1 lb 4 oz".'

/** A text such as "1 lb 4 oz" as g, read as a field of the page reads it. */
const massText = z.string().transform((text, context) => {
  const typed = /[a-z]/iu.test(text) ? readAtOnce(text, { unit: 'g' }) : undefined
  const read = typed?.status === 'sum' ? readQuantity(typed.text, 'g') : undefined
  if (read?.status === 'number') return read.value
  context.addIssue({ code: 'custom', message: `${found(text)} ${FORMS}`, input: text })
  return z.NEVER
})

/** A weight in a file: a number is g, a text names its unit. */
export const mass = z.union([amount, massText.pipe(amount)], {
  error: ({ input }) => `${found(input)} ${FORMS}`,
})
