import { spawn, spawnSync } from 'node:child_process'
import { existsSync, lstatSync, readFileSync, statSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

/** Absolute path of the project, with a trailing slash. */
export const ROOT = fileURLToPath(new URL('../../', import.meta.url))

/** Absolute path of a file of the project. */
export const at = (path) => ROOT + path

/** A tool of node_modules/.bin as a command line for {@link run}. */
export const tool = (name, ...args) => [at(`node_modules/.bin/${name}`), ...args]

/** Runs a command in the project and shows its output. Resolves to the exit code, 1 when it could not start. */
export function run([command, ...args], env = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, { cwd: ROOT, stdio: 'inherit', env: { ...process.env, ...env } })
    child.on('error', (error) => {
      console.error(`${command}: ${error.message}`)
      resolve(1)
    })
    child.on('exit', (code) => resolve(code ?? 1))
  })
}

/** True when node_modules holds what the lock file asks for, as far as npm's own record of it tells. */
function modulesAreCurrent() {
  const record = at('node_modules/.package-lock.json')
  if (!existsSync(record)) return false
  if (statSync(record).mtimeMs >= statSync(at('package-lock.json')).mtimeMs) return true
  const wanted = JSON.parse(readFileSync(at('package-lock.json'), 'utf8')).packages
  const present = JSON.parse(readFileSync(record, 'utf8')).packages
  return Object.entries(wanted).every(
    ([path, entry]) => path === '' || entry.optional || present[path]?.version === entry.version,
  )
}

/** Installs the packages of the lock file when they are missing or outdated. Exits the process on failure. */
export function ensureModules() {
  if (modulesAreCurrent()) return
  // npm empties what it installs into, and through a link that is another checkout's.
  if (lstatSync(at('node_modules'), { throwIfNoEntry: false })?.isSymbolicLink()) {
    console.error('node_modules is a link, and holds other packages than the lock file asks for.')
    process.exit(1)
  }
  console.log('Installing packages (once) ...')
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm'
  const options = { cwd: ROOT, stdio: 'inherit', shell: process.platform === 'win32' }
  // NODE_ENV=production in the environment would leave the build tools out.
  if (spawnSync(npm, ['ci', '--include=dev'], options).status === 0) return
  if (spawnSync(npm, ['install', '--include=dev'], options).status === 0) return
  console.error('The packages could not be installed; see the lines above.')
  process.exit(1)
}
