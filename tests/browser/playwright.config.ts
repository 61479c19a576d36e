import { defineConfig } from '@playwright/test'
import { CHROMIUM_ARGS, ensureChromium, ensureShell } from '../tools/chromium.mjs'
import { APP_BASE, APP_PORT, APP_URL, at, LONG, PAGE_PORT, PAGE_URL } from './places.ts'

const serve = (port: number, root: string, base: string) =>
  `node tests/tools/serve.mjs --port ${port} --root ${root} --base ${base}`

/** Real time, workers and sound: side by side the timings would say nothing. */
const TIMED = /(slices|sound|tape)\.spec\.ts$/
/** What only the whole browser has, or needs the service worker: installing, updates, notices, sensors, voices. */
const WHOLE = /(broken|evening|lost|names|noisy|odd-host|offline|policy|store|update)\.spec\.ts$/
/** A page that lives for seconds is compiled for longer than that pays: a fifth of the work of these tests. */
const QUICK_TO_RUN = '--js-flags=--no-turbofan'

/** The built app at the size of a small phone, with touch. `npm run build` comes first. */
export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results',
  workers: 2,
  fullyParallel: false,
  forbidOnly: true,
  grepInvert: process.env.PROVE ? [] : new RegExp(LONG.tag),
  retries: 0,
  // A busy machine takes twenty seconds for what a quiet one does in five.
  timeout: 60_000,
  expect: { timeout: 10_000 },
  // The counts of `npm test` come from a file that its step names.
  reporter: process.env.PLAYWRIGHT_JSON_OUTPUT_FILE ? [['list'], ['json']] : [['list']],
  use: {
    baseURL: APP_URL,
    viewport: { width: 360, height: 640 },
    deviceScaleFactor: 2,
    hasTouch: true,
    isMobile: true,
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    // A trace takes more of the machine than the test itself: TRACE=1 keeps those of failures.
    trace: process.env.TRACE === '1' ? 'retain-on-failure' : 'off',
    launchOptions: { executablePath: ensureChromium(), args: [...CHROMIUM_ARGS, QUICK_TO_RUN] },
  },
  projects: [
    {
      name: 'phone',
      testIgnore: [TIMED, WHOLE],
      use: {
        serviceWorkers: 'block',
        launchOptions: { executablePath: ensureShell(), args: [...CHROMIUM_ARGS, QUICK_TO_RUN] },
      },
    },
    { name: 'whole', testMatch: WHOLE },
    {
      name: 'timed',
      testMatch: TIMED,
      workers: 1,
      use: { launchOptions: { executablePath: ensureChromium(), args: CHROMIUM_ARGS } },
    },
  ],
  webServer: [
    { command: serve(APP_PORT, 'dist', APP_BASE), url: APP_URL, cwd: at(''), reuseExistingServer: false },
    {
      command: `node_modules/.bin/vite build --logLevel warn --config tests/lifecycle/page/vite.config.ts && ${serve(PAGE_PORT, '.cache/page', '/')}`,
      url: PAGE_URL,
      cwd: at(''),
      reuseExistingServer: false,
    },
  ],
})
