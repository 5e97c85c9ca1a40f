import { library } from '../data/library'
import type { Oil } from '../domain/blend/oil'
import { type Command, solved } from './command'

export const oils: Command = {
  flags: {},
  run: () => Promise.resolve(solved([...library.oils.values()].map(listed))),
}

function listed({ id, name, tags, saponificationValue, iodineValue }: Oil) {
  return { id, name, tags, saponificationValue, iodineValue }
}
