/** Builds dist/: the app, then its service worker with the list of everything to keep offline. */
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { licencesText } from './licences.mjs'
import { at, ensureModules, run, tool } from './project.mjs'

// What no page of the app asks for: the large icons serve its installation.
const NOT_KEPT = ['**/*.map', '**/*.md', 'robots.txt', 'sw.js', 'icon-512.png', 'icon-maskable-512.png']
// A single file beyond this is a mistake rather than a part of the app.
const LARGEST_BYTES = 2_000_000

/** As in Subresource Integrity (W3C). */
const integrityOf = (path) => `sha256-${createHash('sha256').update(readFileSync(path)).digest('base64')}`

ensureModules()
for (const config of ['src/vite.config.ts', 'sw/vite.config.ts']) {
  const code = await run(tool('vite', 'build', '--logLevel', 'warn', '--config', config))
  if (code !== 0) process.exit(code)
}
if (!existsSync(at('dist/index.html'))) {
  console.error('The build left no dist/index.html')
  process.exit(1)
}

// Which part needs which: for `npm run size`, no part of the app.
mkdirSync(at('.cache'), { recursive: true })
renameSync(at('dist/parts.json'), at('.cache/parts.json'))

writeFileSync(at('dist/licences.txt'), licencesText())

const { injectManifest } = await import('workbox-build')
const { count, size, warnings } = await injectManifest({
  swSrc: at('dist/sw.js'),
  swDest: at('dist/sw.js'),
  globDirectory: at('dist'),
  globPatterns: ['**/*'],
  globIgnores: NOT_KEPT,
  maximumFileSizeToCacheInBytes: LARGEST_BYTES,
  // What the worker holds each file to before it keeps it.
  manifestTransforms: [
    async (entries) => ({
      manifest: entries.map(({ url, size }) => ({ url, size, integrity: integrityOf(at(`dist/${url}`)) })),
      warnings: [],
    }),
  ],
})
for (const warning of warnings) console.error(warning)
if (warnings.length > 0) process.exit(1)
console.log(`dist: ${count} files kept offline, ${(size / 1000).toFixed(0)} kB before compression`)
