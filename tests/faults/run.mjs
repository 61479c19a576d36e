/**
 * Applies each fault of the list to a copy of the tree and runs the tests named beside it: fails if none notices.
 * node tests/faults/run.mjs [--slice N] [--seed S] [--only words]: N faults drawn by the seed, or those whose id holds
 * the words; all without.
 */
import { spawnSync } from 'node:child_process'
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { runnerImport } from 'vite'

const root = fileURLToPath(new URL('../..', import.meta.url))
const { values } = parseArgs({
  options: { slice: { type: 'string' }, seed: { type: 'string' }, only: { type: 'string' } },
})

const { module } = await runnerImport(join(root, 'tests/faults/list.ts'), {
  root,
  configFile: false,
  logLevel: 'error',
})
const all = module.FAULTS

/** Numbers from 0 to 1 from a seed (mulberry32). */
function dice(seed) {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

function chosen() {
  if (values.only) return all.filter(({ id }) => id.includes(values.only))
  if (!values.slice) return all
  const roll = dice(Number(values.seed ?? 1))
  return all
    .map((fault) => ({ fault, at: roll() }))
    .sort((a, b) => a.at - b.at)
    .slice(0, Number(values.slice))
    .map(({ fault }) => fault)
}

const OUTSIDE = new Set(['node_modules', '.git', 'dist', '.cache', '.types'])
const copy = mkdtempSync(join(tmpdir(), 'faults-'))
const patience = 600_000

/** Do these test files pass in the copy? */
function passes(tests) {
  const { PROVE, PROVE_RUNS, ...env } = process.env
  const { status } = spawnSync(
    process.execPath,
    [
      join(copy, 'node_modules/vitest/vitest.mjs'),
      'run',
      '--config',
      'tests/vitest.config.ts',
      '--bail=1',
      ...tests,
    ],
    { cwd: copy, env, stdio: 'ignore', timeout: patience },
  )
  return status === 0
}

let unnoticed = 0
try {
  cpSync(root, copy, {
    recursive: true,
    filter: (path) => !OUTSIDE.has(path.slice(root.length).split('/')[0]),
  })
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'))
  const faults = chosen()
  if (faults.length === 0) throw new Error('no fault chosen')
  if (!passes([...new Set(faults.flatMap(({ tests }) => tests))]))
    throw new Error('the tests fail without any fault')
  for (const { id, file, find, replace, tests } of faults) {
    const path = join(copy, file)
    const sound = readFileSync(path, 'utf8')
    if (sound.split(find).length !== 2) {
      console.log(`MISPLACED  ${id}: ${file} must hold the line to change exactly once`)
      unnoticed++
      continue
    }
    writeFileSync(
      path,
      sound.replace(find, () => replace),
    )
    const noticed = !passes(tests)
    writeFileSync(path, sound)
    console.log(`${noticed ? 'noticed   ' : 'UNNOTICED '} ${id}`)
    if (!noticed) unnoticed++
  }
  console.log(`${faults.length - unnoticed} of ${faults.length} faults noticed`)
} finally {
  rmSync(copy, { recursive: true, force: true })
}
process.exitCode = unnoticed > 0 ? 1 : 0
