import { spawnSync } from 'node:child_process'
import { accessSync, constants, existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

/** Switches for a browser in a container without a display, sound or network of its own. */
export const CHROMIUM_ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** Chromium without any window of its own: draws a page with half the work. */
const SHELL = 'chromium-headless-shell'
/** The mirror of the packages may be out of reach, ms. */
const FETCH_MS = 600_000

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome']
const PLACES = [
  '/usr/bin/chromium',
  '/usr/lib/chromium/chromium',
  '/snap/bin/chromium',
  '/opt/google/chrome/chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
]

function runs(path) {
  try {
    accessSync(path, constants.X_OK)
    return spawnSync(path, ['--version'], { stdio: 'ignore', timeout: 20_000 }).status === 0
  } catch {
    return false
  }
}

const onPath = (name) =>
  (process.env.PATH ?? '')
    .split(delimiter)
    .filter(Boolean)
    .map((folder) => join(folder, name))

/** Path of a Chromium: CHROMIUM_PATH, then PATH, then the usual places; null when there is none. */
export function findChromium() {
  const named = process.env.CHROMIUM_PATH
  if (named) return runs(named) ? named : null
  return [...NAMES.flatMap(onPath), ...PLACES].find(runs) ?? null
}

function install(...packages) {
  const options = {
    stdio: 'inherit',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    timeout: FETCH_MS,
  }
  spawnSync('apt-get', ['update', '-q'], options)
  spawnSync('apt-get', ['install', '-q', '-y', ...packages], options)
}

/** Path of a Chromium, Debian's being installed when there is none and we may. Exits the process otherwise. */
export function ensureChromium() {
  const found = findChromium()
  if (found) return found
  if (!process.env.CHROMIUM_PATH && process.getuid?.() === 0) {
    console.log("Installing Debian's chromium (once) ...")
    install('--reinstall', 'chromium')
    const installed = findChromium()
    if (installed) return installed
  }
  console.error(
    'The browser tests need Chromium: install the package "chromium" or set CHROMIUM_PATH to one.',
  )
  process.exit(1)
}

/**
 * Path of the Chromium without windows: CHROMIUM_SHELL_PATH, then PATH. Installed when there is none and we may; where
 * there is none to be had it is the whole Chromium, and slower.
 */
export function ensureShell() {
  const chromium = ensureChromium()
  const find = () =>
    [process.env.CHROMIUM_SHELL_PATH ?? '', ...onPath(SHELL)].find((path) => path && runs(path))
  const found = find()
  if (found) return found
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log(`Installing Debian's ${SHELL} (once) ...`)
    install(SHELL)
  }
  return find() ?? chromium
}
