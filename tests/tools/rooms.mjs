/** Import rules: who may import whom. node tests/tools/rooms.mjs lists every breach. */
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, normalize, relative, sep } from 'node:path'
import { fileURLToPath } from 'node:url'
import { ROOT } from './project.mjs'

const ANY = '*'

/**
 * Rooms, first match first. `rooms`: rooms of ours it may import; `types`: further ones for their types alone;
 * `packages`: `false` where computing has to stay free of everything else.
 */
const ROOMS = [
  { room: 'shared', path: 'shared/', rooms: ['shared'], types: [], packages: true },
  { room: 'engine', path: 'src/engine/', rooms: ['engine'], types: [], packages: false },
  { room: 'planner', path: 'src/planner/', rooms: ['planner'], types: [], packages: false },
  {
    room: 'table',
    path: 'src/table/',
    rooms: ['table', 'engine', 'shared'],
    types: ['planner'],
    packages: false,
  },
  { room: 'store', path: 'src/store/', rooms: ['store', 'shared', 'table'], types: [], packages: true },
  { room: 'device', path: 'src/device/', rooms: ['device', 'shared'], types: [], packages: true },
  { room: 'ui', path: 'src/ui/', rooms: ['ui'], types: [], packages: true },
  {
    room: 'screens',
    path: 'src/screens/',
    rooms: ['screens', 'ui', 'table', 'words'],
    types: ['shared'],
    packages: true,
  },
  { room: 'words', path: 'src/words/', rooms: ['words'], types: [], packages: false },
  { room: 'wire', path: 'src/wire/', rooms: [ANY], types: [], packages: true },
  { room: 'main', path: 'src/main.tsx', rooms: [ANY], types: [], packages: true },
  { room: 'settings', path: 'src/vite.config.ts', rooms: [], types: [], packages: true },
  { room: 'worker', path: 'sw/', rooms: ['worker', 'shared'], types: [], packages: true },
  { room: 'tests', path: 'tests/', rooms: [ANY], types: [], packages: true },
]

/** Rooms that nobody imports but those of {@link ANY}. */
const TOP = ['wire', 'main', 'tests', 'settings']

const STATEMENT = /^[ \t]*(?:import|export)\b([^'";]*?)\bfrom\s*(['"])(.+?)\2/gm
const BARE = /^[ \t]*import\s*(['"])(.+?)\1/gm
const CALL = /\bimport\(\s*(['"])(.+?)\1/g
const ADDRESS = /\bnew URL\(\s*(['"])(\.{1,2}\/.+?)\1\s*,\s*import\.meta\.url/g

const lineOf = (text, index) => text.slice(0, index).split('\n').length

/** True for `import type …` and for braces in which every name is a type. */
function isTypeOnly(clause) {
  const trimmed = clause.trim()
  if (/^type\b(?!\s*,)/.test(trimmed)) return true
  const braces = /^\{([^}]*)\}$/.exec(trimmed)
  const names = braces?.[1].split(',').flatMap((name) => name.trim() || [])
  return names !== undefined && names.length > 0 && names.every((name) => name.startsWith('type '))
}

/** What a source imports: `{ line, target, typeOnly }`. */
export function importsOf(text) {
  const found = [...text.matchAll(STATEMENT)].map((match) => ({
    line: lineOf(text, match.index + match[0].length),
    target: match[3],
    typeOnly: isTypeOnly(match[1]),
  }))
  for (const pattern of [BARE, CALL, ADDRESS]) {
    for (const match of text.matchAll(pattern)) {
      found.push({ line: lineOf(text, match.index), target: match[2], typeOnly: false })
    }
  }
  return found
}

const roomOf = (path) => ROOMS.find((entry) => path.startsWith(entry.path)) ?? null

/** Why `path` may not import `target`, null when it may. Paths are relative to the project, with slashes. */
export function breachOf(path, { target, typeOnly }) {
  const from = roomOf(path)
  if (!from) return 'the file is in no known room'
  if (!target.startsWith('.')) {
    return from.packages || typeOnly ? null : `${from.room} imports no packages`
  }
  const to = roomOf(
    normalize(join(dirname(path), target))
      .split(sep)
      .join('/'),
  )
  if (!to) return 'it is in no known room'
  if (from.rooms.includes(ANY) || from.rooms.includes(to.room)) return null
  if (TOP.includes(to.room)) return `nothing imports ${to.room}`
  if (from.types.includes(to.room)) return typeOnly ? null : `${from.room} takes types alone from ${to.room}`
  return `${from.room} may import ${[...from.rooms, ...from.types.map((room) => `types of ${room}`)].join(', ')}`
}

/** All breaches in sources given as `{ path, text }`, as lines to print. */
export function breachesOf(sources) {
  return sources.flatMap(({ path, text }) =>
    importsOf(text).flatMap((entry) => {
      const why = breachOf(path, entry)
      return why ? [`${path}:${entry.line} imports ${entry.target}: ${why}`] : []
    }),
  )
}

function sourcesIn(folder) {
  return readdirSync(join(ROOT, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name) && !entry.name.endsWith('.d.ts'))
    .map((entry) => {
      const file = join(entry.parentPath ?? entry.path, entry.name)
      return { path: relative(ROOT, file).split(sep).join('/'), text: readFileSync(file, 'utf8') }
    })
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const sources = ['shared', 'src', 'sw'].flatMap(sourcesIn)
  const breaches = breachesOf(sources)
  for (const breach of breaches) console.error(breach)
  console.log(`${sources.length} files, ${breaches.length} imports against the rules`)
  process.exitCode = breaches.length > 0 ? 1 : 0
}
