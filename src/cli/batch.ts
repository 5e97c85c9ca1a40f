import { batchFile, orderOf } from '../data/batch-file'
import { lyeCautions } from '../data/cautions'
import { jsonSchemas } from '../data/json-schema'
import { library } from '../data/library'
import { parseJson } from '../data/problems'
import { planBatch } from '../domain/batch/plan'
import { allInvalid, type Command, type Result, solved } from './command'

export const batch: Command = {
  says: 'the weights of a batch, with its lye',
  flags: {},
  schema: jsonSchemas.batch,
  run: (text) => Promise.resolve(plan(text)),
}

function plan(text: string): Result {
  const file = parseJson(batchFile, text)
  if (file.status === 'invalid') return allInvalid(file.problems)
  const answer = planBatch(orderOf(file.value), library)
  if (answer.status === 'invalid') return allInvalid(answer.problems)
  return solved({ ...answer, cautions: lyeCautions })
}
