import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

interface Graph {
  getModuleInfo(id: string): { readonly importedIds: readonly string[] } | null
}

/** Modules that `from` need to run, themselves among them. */
function neededBy(from: readonly string[], graph: Graph): ReadonlySet<string> {
  const found = new Set(from)
  for (const id of found) for (const next of graph.getModuleInfo(id)?.importedIds ?? []) found.add(next)
  return found
}

const part =
  (name: string, ...from: readonly string[]) =>
  (id: string, graph: Graph) =>
    neededBy(from, graph).has(id) ? name : null

/** Small modules that are of use together: one file is less than several. */
const together = (name: string, files: RegExp) => (id: string) => (files.test(id) ? name : null)

/** What one visit fetches in turn: the first screen, the bench, what its first card goes without. The rest: the bundler. */
const MAIN = here('main.tsx')
const BENCH = here('wire/start.tsx')
const WALLS = here('wire/with-coats.ts')
const FACES = [here('screens/bench/lazy-bench.tsx'), here('table/card/engine-judge.ts')]

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
    // Which part needs which, for `npm run size`: taken out of dist/ once it is built.
    manifest: 'parts.json',
    rolldownOptions: {
      output: {
        codeSplitting: {
          includeDependenciesRecursively: false,
          groups: [
            { name: part('first', MAIN), debugName: 'first', priority: 3 },
            { name: part('bench', BENCH), debugName: 'bench', priority: 2 },
            { name: part('walls', WALLS), debugName: 'walls', priority: 1.5 },
            { name: part('faces', ...FACES), debugName: 'faces', priority: 1 },
            { name: together('frame', /desk\/(head|kiln-main|use-bar|save)\.tsx?$/), priority: 0.5 },
            {
              name: together('fields', /(ui\/(stepper|field|choice)|desk\/(entry-field|settings))\.tsx?$/),
              priority: 0.5,
            },
          ],
        },
      },
    },
  },
})
