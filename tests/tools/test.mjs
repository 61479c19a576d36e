/** npm test: everything that has to hold before a change goes in. */
import { ensureChromium, ensureShell } from './chromium.mjs'
import { at, ensureModules, tool } from './project.mjs'
import { check, playwright, runSteps, vitest } from './steps.mjs'

ensureModules()
process.env.CHROMIUM_PATH = ensureChromium()
process.env.CHROMIUM_SHELL_PATH = ensureShell()

const node = process.execPath
await runSteps([
  check('format and lint', tool('biome', 'ci', '--error-on-warnings', '.')),
  check('import rules', [node, at('tests/tools/rooms.mjs')]),
  check('types', tool('tsc', '-b')),
  vitest('unit, laws, reference', 'tests/vitest.config.ts'),
  check('build', [node, at('tests/tools/build.mjs')]),
  { ...playwright('browser', ['--project', 'phone', '--project', 'whole']), needs: 'build' },
  { ...playwright('browser, real time', ['--project', 'timed']), needs: 'build' },
  { ...vitest('lifecycle', 'tests/lifecycle/vitest.config.ts'), needs: 'build' },
  { ...check('sizes', [node, at('tests/tools/size.mjs')]), needs: 'build' },
])
