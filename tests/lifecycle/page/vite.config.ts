import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

/** A page with five clocks and nothing but the store behind them. */
export default defineConfig({
  root: here('.'),
  base: './',
  publicDir: false,
  build: { outDir: here('../../../.cache/page'), emptyOutDir: true, target: 'es2022' },
})
