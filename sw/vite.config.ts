import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

/** One classic script beside the app: module workers are younger than some phones. */
export default defineConfig({
  root: here('.'),
  publicDir: false,
  define: { 'process.env.NODE_ENV': '"production"' },
  build: {
    outDir: here('../dist'),
    emptyOutDir: false,
    target: 'es2022',
    lib: { entry: here('sw.ts'), formats: ['iife'], name: 'worker', fileName: () => 'sw.js' },
  },
})
