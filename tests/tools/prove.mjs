/** npm run prove: the long proofs at full counts, of which npm test runs a slice. */
import { ensureChromium } from './chromium.mjs'
import { at, ensureModules } from './project.mjs'
import { check, playwright, runSteps, vitest } from './steps.mjs'

ensureModules()
process.env.CHROMIUM_PATH = ensureChromium()

const full = { PROVE: '1', PROVE_RUNS: process.env.PROVE_RUNS ?? '100000' }
const patient = ['--testTimeout=7200000']
const node = process.execPath
await runSteps([
  vitest('unit, laws, reference', 'tests/vitest.config.ts', patient, full),
  check('build', [node, at('tests/tools/build.mjs')]),
  { ...vitest('lifecycle', 'tests/lifecycle/vitest.config.ts', patient, full), needs: 'build' },
  { ...vitest('engines', 'tests/engines/vitest.config.ts', patient, full), needs: 'build' },
  { ...playwright('browser', [], full), needs: 'build' },
  check('faults', [node, at('tests/faults/run.mjs')], full),
])
