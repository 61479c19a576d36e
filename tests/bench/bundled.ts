import { execFileSync } from 'node:child_process'
import { mkdtemp, readdir, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { build } from 'vite'

/** Runs an exported function in a fresh process and answers what it returns, as JSON. */
export type Ask = (name: string) => unknown

/**
 * Bundles a file of tests/fixtures as the app ships its code (module by module the same code runs half as fast) and
 * lends the way to ask it. A process of its own: the code that loaded this file can load no more once it has.
 */
export async function bundled<Answer>(fixture: string, use: (ask: Ask) => Answer): Promise<Answer> {
  const entry = fileURLToPath(new URL(`../fixtures/${fixture}`, import.meta.url))
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
    return use((name) => {
      const script = `import('${url}').then((m) => console.log(JSON.stringify(m.${name}())))`
      return JSON.parse(execFileSync(process.execPath, ['-e', script], { encoding: 'utf8' }))
    })
  } finally {
    await rm(outDir, { recursive: true, force: true })
  }
}
