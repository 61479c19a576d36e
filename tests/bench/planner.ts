/** Times of the planner for 40 pots of 3 coats, bundled as the app ships it. */
import { execFileSync } from 'node:child_process'
import { mkdtemp, readdir, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { build } from 'vite'
import type { Timing } from './melt.ts'

const entry = fileURLToPath(new URL('../fixtures/planner-times.ts', import.meta.url))
/** Fresh processes for the cold answer. */
const STARTS = 5

export async function benchPlanner(): Promise<readonly Timing[]> {
  const outDir = await mkdtemp(join(tmpdir(), 'bench-'))
  try {
    await build({
      configFile: false,
      publicDir: false,
      logLevel: 'error',
      build: { target: 'es2022', outDir, lib: { entry, formats: ['es'], fileName: 'times' } },
    })
    const [file] = await readdir(outDir)
    const url = pathToFileURL(join(outDir, file!)).href
    const ask = (name: 'coldMs' | 'warmMs') => {
      const script = `import('${url}').then((m) => console.log(JSON.stringify(m.${name}())))`
      return JSON.parse(execFileSync(process.execPath, ['-e', script], { encoding: 'utf8' }))
    }
    const cold: number[] = Array.from({ length: STARTS }, () => ask('coldMs'))
    const { first, final }: { first: number; final: number } = ask('warmMs')
    return [
      { name: 'planner, 40 x 3: first answer', ms: first, budgetMs: 5 },
      {
        name: 'planner, 40 x 3: first answer of a worker just started',
        ms: cold.sort((a, b) => a - b)[STARTS >> 1]!,
        budgetMs: 20,
      },
      { name: 'planner, 40 x 3: final answer', ms: final, budgetMs: 100 },
    ]
  } finally {
    await rm(outDir, { recursive: true, force: true })
  }
}
