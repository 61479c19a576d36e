import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'

/** Debian's packages of the other two browsers, and where their programs end up. */
const FIREFOX = { packages: ['firefox-esr'], places: ['/usr/bin/firefox-esr', '/usr/bin/firefox'] }
const WEBKIT_PACKAGES = ['webkit2gtk-driver', 'xvfb', 'xauth', 'gstreamer1.0-plugins-good']

/** Installs packages when we may; says in one line what it does. */
function install(packages) {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return
  console.log(`Installing Debian's ${packages.join(', ')} (once) ...`)
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  const quiet = { stdio: 'ignore', env }
  spawnSync('apt-get', ['update', '-q'], quiet)
  spawnSync('apt-get', ['install', '-q', '-y', '--no-install-recommends', ...packages], quiet)
}

const first = (paths) => paths.find((path) => existsSync(path)) ?? null

/** WebKitGTK's small browser lies in a folder of the machine's kind and its own version. */
const miniBrowsers = () =>
  readdirSync('/usr/lib')
    .filter((kind) => kind.endsWith('-linux-gnu'))
    .flatMap((kind) =>
      ['4.1', '4.0'].map((version) => join('/usr/lib', kind, `webkit2gtk-${version}`, 'MiniBrowser')),
    )

/** Path of Firefox, installed when there is none and we may; null otherwise. */
export function ensureFirefox() {
  const find = () => first(FIREFOX.places)
  const found = find()
  if (found) return found
  install(FIREFOX.packages)
  return find()
}

/** WebKitGTK's small browser, its driver and a screen for it; null where they cannot be had. */
export function ensureWebKit() {
  const find = () => {
    const browser = first(existsSync('/usr/lib') ? miniBrowsers() : [])
    const driver = first(['/usr/bin/WebKitWebDriver'])
    const screen = first(['/usr/bin/xvfb-run'])
    return browser && driver && screen ? { browser, driver, screen } : null
  }
  const found = find()
  if (found) return found
  install(WEBKIT_PACKAGES)
  return find()
}
