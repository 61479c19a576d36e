/** Times of the water balance, bundled as the app ships it: module by module the same code runs half as fast. */

import { execFileSync } from 'node:child_process'
import { mkdtemp, readdir, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { build } from 'vite'
import type { Timing } from './melt.ts'

const entry = fileURLToPath(new URL('../fixtures/water-times.ts', import.meta.url))

export async function benchEngine(): Promise<readonly Timing[]> {
  const outDir = await mkdtemp(join(tmpdir(), 'bench-'))
  try {
    await build({
      configFile: false,
      publicDir: false,
      logLevel: 'error',
      build: { target: 'es2022', outDir, lib: { entry, formats: ['es'], fileName: 'times' } },
    })
    const [file] = await readdir(outDir)
    // In a process of its own: the code that loaded this file can load no more once it has.
    const url = pathToFileURL(join(outDir, file!)).href
    const script = `import('${url}').then((m) => console.log(JSON.stringify(m.waterTimes())))`
    return JSON.parse(execFileSync(process.execPath, ['-e', script], { encoding: 'utf8' }))
  } finally {
    await rm(outDir, { recursive: true, force: true })
  }
}
