import { vi } from 'vitest'

/** Only a last stop: a machine may be as slow as it likes. */
const AT_LAST = { timeout: 60_000 }

/** Waits until an expectation holds. */
export function until(expectation: () => void): Promise<void> {
  return vi.waitFor(expectation, AT_LAST)
}
