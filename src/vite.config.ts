import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

interface Graph {
  getModuleInfo(id: string): { readonly importedIds: readonly string[] } | null
}

/** Modules that `from` needs to run, itself among them. */
function neededBy(from: string, graph: Graph): ReadonlySet<string> {
  const found = new Set([from])
  for (const id of found) for (const next of graph.getModuleInfo(id)?.importedIds ?? []) found.add(next)
  return found
}

const part = (name: string, from: string) => (id: string, graph: Graph) =>
  neededBy(from, graph).has(id) ? name : null

const MAIN = here('main.tsx')
/** What one visit fetches in turn: the first screen, then the bench. What comes later is left to the bundler. */
const BENCH = here('wire/start.tsx')

export default defineConfig({
  root: here('.'),
  base: './',
  publicDir: here('../public'),
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    outDir: here('../dist'),
    emptyOutDir: true,
    target: 'es2022',
    modulePreload: { polyfill: false },
    rolldownOptions: {
      output: {
        codeSplitting: {
          includeDependenciesRecursively: false,
          groups: [
            { name: part('first', MAIN), debugName: 'first', priority: 2 },
            { name: part('bench', BENCH), debugName: 'bench', priority: 1 },
          ],
        },
      },
    },
  },
})
