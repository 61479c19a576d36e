import { defineConfig } from 'vitest/config'
import base from '../vitest.config.ts'

/** Whole browsers that are frozen, stopped and killed: one after another, as two cores allow. */
export default defineConfig({
  ...base,
  test: {
    ...base.test,
    include: ['tests/lifecycle/**/*.test.ts'],
    fileParallelism: false,
    testTimeout: 300_000,
    hookTimeout: 60_000,
  },
})
