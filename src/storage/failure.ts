/** Why nothing could be kept or read, in words that go on after a colon. */
export class StorageFailure extends Error {}

/** Reasons by the name of the browser's error. */
const REASONS: Readonly<Record<string, string>> = {
  QuotaExceededError: 'there is no room left on this machine; free some space',
  SecurityError: 'the browser does not let this page keep anything, as in some private windows',
  InvalidStateError: 'the browser does not let this page keep anything, as in some private windows',
  VersionError: 'a newer Barwright has kept work here; reload the page to get it',
}

/** The reason that an error stands for, for people. */
export function failureReason(error: unknown): string {
  if (error instanceof StorageFailure) return error.message
  if (!(error instanceof Error)) return String(error)
  return REASONS[error.name] ?? `${error.name}, ${error.message}`
}
