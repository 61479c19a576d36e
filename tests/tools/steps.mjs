import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import { stripVTControlCharacters } from 'node:util'
import { at, run, tool } from './project.mjs'

const report = (name) => at(`.cache/${name}.json`)

/** Counts in a report of Vitest (`--reporter=json`), null when it left none. */
export function vitestCounts(text) {
  const { numPassedTests, numFailedTests, numPendingTests, numTodoTests, testResults } = JSON.parse(text)
  // A file that could not even be loaded holds no tests, yet fails.
  const unloaded = testResults.filter(
    (file) => file.status === 'failed' && file.assertionResults.every((test) => test.status !== 'failed'),
  ).length
  return {
    passed: numPassedTests,
    failed: numFailedTests + unloaded,
    skipped: numPendingTests + numTodoTests,
  }
}

/** What failed in a report of Vitest: file and case, and the first line of why. */
export function vitestFailures(text) {
  return JSON.parse(text).testResults.flatMap((file) => {
    const cases = file.assertionResults.filter((test) => test.status === 'failed')
    if (cases.length === 0 && file.status !== 'failed') return []
    if (cases.length === 0) return [`${named(file.name)}: ${firstLine(file.message)}`]
    return cases.map(
      (test) => `${named(file.name)} > ${test.fullName}: ${firstLine(test.failureMessages?.join('\n'))}`,
    )
  })
}

/** What failed in a report of Playwright: file, line and case, and the first line of why. */
export function playwrightFailures(text) {
  const { suites, errors } = JSON.parse(text)
  const specs = (suite) => [...(suite.specs ?? []), ...(suite.suites ?? []).flatMap(specs)]
  return [
    ...(errors ?? []).map((error) => firstLine(error.message)),
    ...(suites ?? [])
      .flatMap(specs)
      .filter((spec) => spec.tests.some((test) => test.status === 'unexpected' || test.status === 'flaky'))
      .map((spec) => {
        const why = spec.tests.flatMap((test) => test.results.flatMap((result) => result.errors ?? []))
        return `${spec.file}:${spec.line} > ${spec.title}: ${firstLine(why[0]?.message)}`
      }),
  ]
}

const named = (path) => path?.replace(at(''), '') ?? 'a file'

/** First line of a message, without the colours of a terminal. */
const firstLine = (message) =>
  stripVTControlCharacters(message ?? '')
    .trim()
    .split('\n')[0] || 'no reason given'

/** Counts in a report of Playwright (`json` reporter). A flaky case counts as failed. */
export function playwrightCounts(text) {
  const { stats, errors } = JSON.parse(text)
  return {
    passed: stats.expected,
    failed: stats.unexpected + stats.flaky + (errors?.length ?? 0),
    skipped: stats.skipped,
  }
}

/** A command that passes or fails as a whole. */
export const check = (name, command, env) => ({ name, command, env })

/** Vitest under a config of ours, its cases counted. */
export const vitest = (name, config, args = [], env = {}) => ({
  name,
  env,
  report: report(name),
  counts: vitestCounts,
  failures: vitestFailures,
  command: tool(
    'vitest',
    'run',
    '--config',
    config,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report(name)}`,
    ...args,
  ),
})

/** Playwright on the built app, its cases counted. */
export const playwright = (name, args = [], env = {}) => ({
  name,
  report: report(name),
  counts: playwrightCounts,
  failures: playwrightFailures,
  env: { ...env, PLAYWRIGHT_JSON_OUTPUT_FILE: report(name) },
  command: tool('playwright', 'test', '--config', 'tests/browser/playwright.config.ts', ...args),
})

/** Runs one step. Resolves to its counts and what failed by name; a step that breaks without a report is one failure. */
async function take(step) {
  if (step.report) rmSync(step.report, { force: true })
  const code = await run(step.command, step.env)
  if (!step.report) return { passed: code === 0 ? 1 : 0, failed: code === 0 ? 0 : 1, skipped: 0 }
  if (!existsSync(step.report)) return { passed: 0, failed: 1, skipped: 0 }
  const text = readFileSync(step.report, 'utf8')
  const counts = { ...step.counts(text), names: step.failures(text) }
  if (code !== 0 && counts.failed === 0) counts.failed = 1
  if (code === 0 && counts.passed + counts.failed + counts.skipped === 0) counts.failed = 1
  return counts
}

/** The closing line: `N passed, N failed`, and what was skipped if anything was. */
export const closingLine = ({ passed, failed, skipped }) =>
  `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`

/**
 * Runs steps one after another, all of them even when one fails, except those whose `needs` failed.
 * Prints what failed, a row a step and the closing line last, and sets the exit code of the process.
 */
export async function runSteps(steps) {
  mkdirSync(at('.cache'), { recursive: true })
  const total = { passed: 0, failed: 0, skipped: 0 }
  const rows = []
  const broken = new Set()
  for (const step of steps) {
    console.log(`\n== ${step.name}`)
    const since = Date.now()
    const stopped = step.needs && broken.has(step.needs)
    if (stopped) console.log(`not run: ${step.needs} failed`)
    const counts = stopped ? { passed: 0, failed: 1, skipped: 0 } : await take(step)
    if (counts.failed > 0) broken.add(step.name)
    for (const key of Object.keys(total)) total[key] += counts[key]
    rows.push({ name: step.name, ...counts, seconds: ((Date.now() - since) / 1000).toFixed(1) })
  }
  for (const { name, names } of rows) {
    for (const failure of names ?? []) console.log(`\nfailed in ${name}: ${failure}`)
  }
  console.log('')
  for (const { name, seconds, ...counts } of rows) {
    console.log(`${name.padEnd(24)} ${closingLine(counts).padEnd(36)} ${seconds.padStart(7)} s`)
  }
  console.log(`\n${closingLine(total)}`)
  process.exitCode = total.failed > 0 ? 1 : 0
}
