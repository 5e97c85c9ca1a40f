import type { Environment } from 'vitest/runtime'

/**
 * Node without a DOM, but with Svelte's files compiled for the page and not for server rendering,
 * where `$effect` never runs and `$state` is a plain variable.
 */
const clientEnvironment: Environment = {
  name: 'client',
  viteEnvironment: 'client',
  setup: () => ({ teardown: () => undefined }),
}

export default clientEnvironment
