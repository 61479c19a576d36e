/**
 * npm run bench: times on this machine, figure and budget a row. Every function of tests/bench/ whose name begins
 * with "bench" gives rows `{ name, ms, budgetMs }`; without a budget a row is for information. [-- words] picks files.
 */
import { existsSync, readdirSync } from 'node:fs'
import { runnerImport } from 'vite'
import { ensureChromium } from './chromium.mjs'
import { at, ensureModules, run } from './project.mjs'

ensureModules()
process.env.CHROMIUM_PATH = ensureChromium()
if (!existsSync(at('dist/sw.js')) && (await run([process.execPath, at('tests/tools/build.mjs')])) !== 0) {
  process.exit(1)
}

const words = process.argv.slice(2)
const files = readdirSync(at('tests/bench'))
  .filter((file) => file.endsWith('.ts'))
  .filter((file) => words.length === 0 || words.some((word) => file.includes(word)))
let over = 0
for (const file of files) {
  const { module } = await runnerImport(at(`tests/bench/${file}`), {
    root: at(''),
    configFile: false,
    logLevel: 'error',
  })
  for (const [name, measure] of Object.entries(module)) {
    if (!name.startsWith('bench') || typeof measure !== 'function') continue
    const rows = await Promise.resolve()
      .then(measure)
      .catch((error) => {
        console.error(`${file} ${name}: ${error.message}`)
        over++
        return []
      })
    for (const row of rows) {
      const tooLong = row.budgetMs !== undefined && row.ms > row.budgetMs
      if (tooLong) over++
      const budget = row.budgetMs === undefined ? '' : `of ${row.budgetMs} ms`
      const ms = row.ms < 10 ? row.ms.toFixed(2) : row.ms.toFixed(0)
      console.log(`${row.name.padEnd(72)} ${ms.padStart(8)} ms ${budget.padEnd(12)} ${tooLong ? 'OVER' : ''}`)
    }
  }
}
console.log(over === 0 ? 'All within budget.' : `${over} over budget or not measured.`)
process.exitCode = over > 0 ? 1 : 0
