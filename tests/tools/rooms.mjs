/**
 * Import rules: who may import whom. `node tests/tools/rooms.mjs` prints the map of rooms and lists every breach;
 * it fails on any, and on files whose values need each other in a circle.
 */
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
  { room: 'pass', path: 'src/pass/', rooms: ['pass', 'shared'], types: [], packages: true },
  { room: 'device', path: 'src/device/', rooms: ['device', 'shared'], types: [], packages: true },
  { room: 'ui', path: 'src/ui/', rooms: ['ui'], types: [], packages: true },
  {
    room: 'screens',
    path: 'src/screens/',
    rooms: ['screens', 'ui', 'table', 'words'],
    types: ['shared'],
    packages: true,
  },
  { room: 'words', path: 'src/words/', rooms: ['words', 'shared'], types: [], packages: false },
  { room: 'wire', path: 'src/wire/', rooms: [ANY], types: [], packages: true },
  { room: 'main', path: 'src/main.tsx', rooms: [ANY], types: [], packages: true },
  { room: 'settings', path: 'src/vite.config.ts', rooms: [], types: [], packages: true },
  { room: 'worker', path: 'sw/', rooms: ['worker', 'shared'], types: [], packages: true },
  { room: 'tests', path: 'tests/', rooms: [ANY], types: [], packages: true },
]

/** Files of a room that lie in none of its sub-rooms and are named in no level stand above all of them. */
const TOP_LEVEL = '(top)'

/** Languages besides English: the folders of words there are. */
const languages = readdirSync(join(ROOT, 'src/words'), { withFileTypes: true })
  .filter((it) => it.isDirectory() && it.name !== 'en')
  .map((it) => it.name)

/**
 * Sub-rooms of a room, from the ground up: a file may import its own sub-room and those of lower levels, never one
 * of its own level or above. A name with an ending is a file of the room itself.
 */
const LEVELS = {
  engine: [
    ['contract.ts', 'check.ts', 'parameters.ts'],
    ['numeric'],
    ['shape', 'air', 'slop'],
    ['bucket', 'wall'],
    ['wait', 'melt'],
    ['kiln', 'fired', 'photo'],
  ],
  planner: [['types.ts'], ['problem'], ['timing', 'bound'], ['search'], ['plan']],
  table: [
    ['model'],
    ['fold', 'entry', 'forecast'],
    ['firing', 'steps', 'meeting'],
    ['fired'],
    ['advice', 'order'],
    ['load'],
    ['opening'],
    ['card', 'decide', 'sheets'],
  ],
  words: [
    ['name.ts', 'number.ts'],
    ['en'],
    languages,
    ['languages.ts'],
    [
      'front.ts',
      'bench.ts',
      'late.ts',
      'desk.ts',
      'opening.ts',
      'photo-outline.ts',
      'back.ts',
      'room.ts',
      'format.ts',
      'sheets.ts',
      'meeting.ts',
    ],
  ],
  screens: [
    ['app.ts', 'calendar.ts', 'days.ts', 'extras.ts', 'late-words.ts', 'lazy.tsx', 'passing.ts'],
    ['text'],
    ['parts', 'desk'],
    ['bench', 'board', 'buckets', 'codes', 'first', 'help', 'meeting', 'opening', 'room', 'shelf', 'stacks'],
  ],
}

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

/** What a source imports: `{ line, target, typeOnly, late }`; late is what is fetched when it is asked for. */
export function importsOf(text) {
  const found = [...text.matchAll(STATEMENT)].map((match) => ({
    line: lineOf(text, match.index + match[0].length),
    target: match[3],
    typeOnly: isTypeOnly(match[1]),
  }))
  for (const pattern of [BARE, CALL, ADDRESS]) {
    for (const match of text.matchAll(pattern)) {
      const late = pattern === CALL || pattern === ADDRESS
      found.push({
        line: lineOf(text, match.index),
        target: match[2],
        typeOnly: false,
        ...(late ? { late } : {}),
      })
    }
  }
  return found
}

/** Path of what `path` imports as `target`, from the project's top, with slashes. */
const resolved = (path, target) =>
  normalize(join(dirname(path), target))
    .split(sep)
    .join('/')

const roomOf = (path) => ROOMS.find((entry) => path.startsWith(entry.path)) ?? null

/** The sub-room a file of a room with levels is in, and how high it stands. */
function placeIn(room, path) {
  const levels = LEVELS[room.room]
  if (!levels) return null
  const rest = path.slice(room.path.length)
  const name = rest.includes('/') ? rest.slice(0, rest.indexOf('/')) : rest
  const level = levels.findIndex((names) => names.includes(name))
  if (level >= 0) return { name: name.includes('.') ? '(ground)' : name, level }
  return rest.includes('/') ? null : { name: TOP_LEVEL, level: levels.length }
}

/** Why one file of a room may not import another of the same room, null when it may. */
function subRoomBreach(room, path, target) {
  if (!LEVELS[room.room]) return null
  const from = placeIn(room, path)
  const to = placeIn(room, target)
  if (!from || !to) return `${from ? target : path} is in no known sub-room`
  if (from.name === to.name || to.level < from.level) return null
  return `${room.room}/${from.name} stands below or beside ${room.room}/${to.name}`
}

/** Files whose values need each other in a circle, as lists of paths; sources are given as `{ path, text }`. */
export function circlesOf(sources) {
  const needs = new Map(
    sources.map(({ path, text }) => [
      path,
      importsOf(text).flatMap(({ target, typeOnly, late }) =>
        typeOnly || late || !target.startsWith('.') ? [] : [resolved(path, target)],
      ),
    ]),
  )
  const circles = []
  const done = new Set()
  const walk = (path, trail) => {
    const again = trail.indexOf(path)
    if (again >= 0) {
      circles.push(trail.slice(again))
      return
    }
    if (done.has(path)) return
    for (const next of needs.get(path) ?? []) walk(next, [...trail, path])
    done.add(path)
  }
  for (const path of needs.keys()) walk(path, [])
  return circles
}

/** The map: each room and sub-room with its number of files and what it imports of its own room. */
export function mapOf(sources) {
  const rows = new Map()
  const rowOf = (name) => rows.get(name) ?? rows.set(name, { files: 0, to: new Set() }).get(name)
  for (const { path, text } of sources) {
    const room = roomOf(path)
    if (!room) continue
    const sub = placeIn(room, path)
    const name = sub ? `${room.room}/${sub.name}` : room.room
    const row = rowOf(name)
    row.files++
    for (const { target } of importsOf(text)) {
      if (!target.startsWith('.')) continue
      const to = resolved(path, target)
      const other = roomOf(to)
      if (!other) continue
      const below = other === room ? placeIn(room, to)?.name : other.room
      if (below && below !== sub?.name && below !== name) row.to.add(below)
    }
  }
  return [...rows]
    .sort(([a], [b]) => a.localeCompare(b))
    .map(
      ([name, { files, to }]) =>
        `${name.padEnd(20)} ${String(files).padStart(3)}  ${[...to].sort().join(' ')}`,
    )
}

/** Why `path` may not import `target`, null when it may. Paths are relative to the project, with slashes. */
export function breachOf(path, { target, typeOnly }) {
  const from = roomOf(path)
  if (!from) return 'the file is in no known room'
  if (!target.startsWith('.')) {
    return from.packages || typeOnly ? null : `${from.room} imports no packages`
  }
  const file = resolved(path, target)
  const to = roomOf(file)
  if (!to) return 'it is in no known room'
  if (to === from) return subRoomBreach(from, path, file)
  if (from.rooms.includes(ANY) || from.rooms.includes(to.room)) return null
  if (TOP.includes(to.room)) return `nothing imports ${to.room}`
  if (from.types.includes(to.room)) return typeOnly ? null : `${from.room} takes types alone from ${to.room}`
  return `${from.room} may import ${[...from.rooms, ...from.types.map((room) => `types of ${room}`)].join(', ')}`
}

/** Rooms that may reach for what a phone keeps: those that keep it, and those that tie rooms together. */
const KEEPERS = ['shared', 'store', 'device', 'wire', 'main', 'worker']
const KEPT = /\b(?:localStorage|sessionStorage|indexedDB)\b|\bnavigator\.storage\b/

/** Lines of a source that reach for what the phone keeps, from a room that must not. */
export function reachesOf({ path, text }) {
  const room = roomOf(path)?.room
  if (room === undefined || KEEPERS.includes(room)) return []
  return text
    .split('\n')
    .flatMap((line, index) =>
      KEPT.test(line) && !/^\s*(?:\/\/|\/?\*)/.test(line)
        ? [`${path}:${index + 1} reaches for storage: that is for store and device`]
        : [],
    )
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
  const breaches = [...breachesOf(sources), ...sources.flatMap(reachesOf)]
  const circles = circlesOf(sources)
  console.log(mapOf(sources).join('\n'))
  for (const breach of breaches) console.error(breach)
  for (const circle of circles) console.error(`a circle: ${[...circle, circle[0]].join(' needs ')}`)
  console.log(`${sources.length} files, ${breaches.length} breaches of the rules, ${circles.length} circles`)
  process.exitCode = breaches.length + circles.length > 0 ? 1 : 0
}
