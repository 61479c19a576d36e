import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

export default defineConfig({
  root: here('.'),
  base: './',
  publicDir: here('../public'),
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: { outDir: here('../dist'), emptyOutDir: true, target: 'es2022', modulePreload: { polyfill: false } },
})
