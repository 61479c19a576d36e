import { execFileSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'

/** Absolute path of a file of the project. */
export const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url))

/** Builds the page with five clocks. Returns the folder to serve. */
export function buildPage(): string {
  const config = at('tests/lifecycle/page/vite.config.ts')
  execFileSync(at('node_modules/.bin/vite'), ['build', '--logLevel', 'warn', '--config', config])
  return at('.cache/page')
}
