import { defineConfig } from 'vitest/config'
import base from '../vitest.config.ts'

/** The other browsers, one after another. */
export default defineConfig({
  ...base,
  test: { ...base.test, include: ['tests/engines/**/*.test.ts'], fileParallelism: false },
})
