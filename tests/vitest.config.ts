import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

// The reporter of failures calls Map.groupBy, which Node 20 lacks (ECMA-262 15th edition, 24.1.2.1).
if (!('groupBy' in Map))
  Object.defineProperty(Map, 'groupBy', {
    value: <K, T>(items: Iterable<T>, keyOf: (item: T, index: number) => K): Map<K, T[]> => {
      const groups = new Map<K, T[]>()
      let index = 0
      for (const item of items) {
        const key = keyOf(item, index++)
        groups.set(key, [...(groups.get(key) ?? []), item])
      }
      return groups
    },
  })

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/{unit,reference,laws,planner}/**/*.test.ts'],
    environment: 'node',
    setupFiles: ['tests/fixtures/seeded.ts', 'src/table/card/with-coats.ts'],
    // Nothing here leaves anything behind for the next file: fresh workers would only cost time.
    isolate: false,
    testTimeout: 30_000,
  },
})
