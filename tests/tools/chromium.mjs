import { spawnSync } from 'node:child_process'
import { accessSync, constants } from 'node:fs'
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

/** Path of a Chromium: CHROMIUM_PATH, then PATH, then the usual places; null when there is none. */
export function findChromium() {
  const named = process.env.CHROMIUM_PATH
  if (named) return runs(named) ? named : null
  const folders = (process.env.PATH ?? '').split(delimiter).filter(Boolean)
  const candidates = [...NAMES.flatMap((name) => folders.map((folder) => join(folder, name))), ...PLACES]
  return candidates.find(runs) ?? null
}

/** Path of a Chromium, Debian's being installed when there is none and we may. Exits the process otherwise. */
export function ensureChromium() {
  const found = findChromium()
  if (found) return found
  if (!process.env.CHROMIUM_PATH && process.getuid?.() === 0) {
    console.log("Installing Debian's chromium (once) ...")
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
    spawnSync('apt-get', ['update', '-q'], { stdio: 'inherit', env })
    spawnSync('apt-get', ['install', '-q', '-y', '--reinstall', 'chromium'], { stdio: 'inherit', env })
    const installed = findChromium()
    if (installed) return installed
  }
  console.error(
    'The browser tests need Chromium: install the package "chromium" or set CHROMIUM_PATH to one.',
  )
  process.exit(1)
}
