/**
 * What the voice says at the kiln, in words that have clips or are put into such by language: see `device/speech.ts`
 * and `device/saying.ts`.
 */
import type { LevelState, LoadState } from '../model/load-state.ts'
import type { Table } from '../model/state.ts'
import type { LoadCall } from './calls.ts'
import { postsUnderMm } from './level-shown.ts'
import { LID_C, UNLOAD_C } from './loads.ts'

/** Said once: another key is another thing to say. */
export interface KilnLine {
  readonly key: string
  readonly words: readonly string[]
}

const MM_PER_INCH = 25.4
/** A length is said to the half inch where it is so, in. */
const INCH_SLACK = 0.1

/** A cone as its label is read out: 6, 0 4, 5 and a half. */
export const coneWords = (cone: string): readonly string[] =>
  [...cone.matchAll(/^0|\d+|\.5|a/g)].map(([part]) =>
    part === '.5' ? 'and a half' : part === 'a' ? 'A' : part,
  )

/** The small hours still belong to the evening before. */
const NIGHT_ENDS = 4

/** A moment from now on, both epoch ms, by this phone's own time of day; undefined from the day after tomorrow on. */
function momentWords(at: number, now: number): readonly string[] | undefined {
  const [then, today] = [new Date(at), new Date(now)]
  const midnight = (date: Date) => new Date(date).setHours(0, 0, 0, 0)
  const days = Math.round((midnight(then) - midnight(today)) / 86_400_000)
  const words = [`clock:${then.getHours()}:${then.getMinutes()}`]
  if (days === 0) return words
  if (days !== 1) return undefined
  return then.getHours() < NIGHT_ENDS ? words : [...words, 'tomorrow']
}

const tempWords = (table: Table, tempC: number): readonly string[] => [
  `number:${Math.round(table.settings.units === 'us' ? tempC * 1.8 + 32 : tempC)}`,
  'degrees',
]

function postWords(table: Table, mm: number): readonly string[] {
  if (table.settings.units !== 'us') return [`number:${Math.round(mm)}`]
  const inches = Math.round((2 * mm) / MM_PER_INCH) / 2
  if (inches < 1 || Math.abs(inches - mm / MM_PER_INCH) > INCH_SLACK) return []
  if (inches === 1) return ['one inch']
  return [`${Math.floor(inches)}`, ...(inches % 1 === 0 ? [] : ['and one half']), 'inches']
}

/** The shelf that is loaded next, and what it stands on. */
export function shelfLine(table: Table, load: LoadState, level: LevelState): KilnLine {
  const mm = postsUnderMm(load, level)
  const posts = postWords(table, mm)
  const stands = mm === 0 ? ['on stilts'] : posts.length > 0 ? ['three posts of', ...posts] : []
  return {
    key: `shelf ${load.loadId} ${level.number} ${mm}`,
    words: ['shelf', `${level.number}`, ...stands],
  }
}

/** When pots come out, as the latest reading tells; undefined where that is not known, or is too far off. Table time, ms. */
export function coldLine(table: Table, load: LoadState, likelyAt: number, now: number): KilnLine | undefined {
  const when = Number.isFinite(likelyAt)
    ? momentWords(likelyAt + table.skewMs, now + table.skewMs)
    : undefined
  if (!when || likelyAt <= now) return undefined
  const last = load.readings.at(-1)
  return { key: `cold ${last?.id}`, words: ['below', ...tempWords(table, UNLOAD_C), 'about', ...when] }
}

/** What is called of a load when it is due. */
export function callWords(table: Table, loadId: string, what: LoadCall['what']): readonly string[] {
  switch (what) {
    case 'cone':
      return ['cone', ...coneWords(table.loads?.[loadId]?.firing.cone ?? ''), 'down?']
    case 'hold':
      return ['cone', ...coneWords(table.loads?.[loadId]?.firing.cone ?? ''), 'hold is over']
    case 'lid':
      return ['lid from', ...tempWords(table, LID_C)]
    case 'unload':
      // The likely moment of an estimate: the thermometer says whether it is so.
      return ['read it again', 'about', ...tempWords(table, UNLOAD_C)]
    case 'read':
      return ['read it again']
  }
}
