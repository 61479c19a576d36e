/** What the voice says at the kiln, in words that have clips: see `device/speech.ts`. */
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

/** A whole number, as it is said of posts and temperatures: one twenty-five. Nothing beyond 999. */
export function numberWords(n: number): readonly string[] {
  if (!Number.isInteger(n) || n < 0 || n > 999) return []
  const [hundreds, rest] = [Math.floor(n / 100), n % 100]
  if (hundreds === 0) return [`${rest}`]
  const round = hundreds === 1 ? ['one hundred'] : [`${hundreds}`, 'hundred']
  return rest === 0 ? round : rest < 10 ? [...round, `${rest}`] : [`${hundreds}`, `${rest}`]
}

/** A cone as its label is read out: 6, 0 4, 5 and a half. */
export const coneWords = (cone: string): readonly string[] =>
  [...cone.matchAll(/^0|\d+|\.5|a/g)].map(([part]) =>
    part === '.5' ? 'and a half' : part === 'a' ? 'A' : part,
  )

/** A time of day to five minutes: ten to midnight. Hours 0 to 23. */
export function clockWords(hours: number, minutes: number): readonly string[] {
  const round = Math.round(minutes / 5) * 5
  if (round === 60) return clockWords((hours + 1) % 24, 0)
  const twelve = (hour: number) => `${hour % 12 || 12}`
  const name = (hour: number) => (hour === 0 ? 'midnight' : hour === 12 ? 'noon' : twelve(hour))
  if (round === 0) return hours % 12 === 0 ? [name(hours)] : [twelve(hours), 'o’clock']
  if (round === 30) return [twelve(hours), '30']
  return round < 30 ? [`${round}`, 'past', name(hours)] : [`${60 - round}`, 'to', name((hours + 1) % 24)]
}

/** The small hours still belong to the evening before. */
const NIGHT_ENDS = 4

/** A moment from now on, both epoch ms, by this phone's own time of day; undefined from the day after tomorrow on. */
function momentWords(at: number, now: number): readonly string[] | undefined {
  const [then, today] = [new Date(at), new Date(now)]
  const midnight = (date: Date) => new Date(date).setHours(0, 0, 0, 0)
  const days = Math.round((midnight(then) - midnight(today)) / 86_400_000)
  const words = clockWords(then.getHours(), then.getMinutes())
  if (days === 0) return words
  if (days !== 1) return undefined
  return then.getHours() < NIGHT_ENDS ? words : [...words, 'tomorrow']
}

const tempWords = (table: Table, tempC: number): readonly string[] =>
  numberWords(Math.round(table.settings.units === 'us' ? tempC * 1.8 + 32 : tempC))

function postWords(table: Table, mm: number): readonly string[] {
  if (table.settings.units !== 'us') return numberWords(Math.round(mm))
  const inches = Math.round((2 * mm) / MM_PER_INCH) / 2
  if (Math.abs(inches - mm / MM_PER_INCH) > INCH_SLACK) return []
  const whole = numberWords(Math.floor(inches))
  return [...whole, ...(inches % 1 === 0 ? [] : ['and a half']), 'inches']
}

/** The shelf that is loaded next, and what it stands on. */
export function shelfLine(table: Table, load: LoadState, level: LevelState): KilnLine {
  const mm = postsUnderMm(load, level)
  const posts = postWords(table, mm)
  const stands = mm === 0 ? ['on stilts'] : posts.length > 0 ? ['three posts of', ...posts] : []
  return {
    key: `shelf ${load.loadId} ${level.number} ${mm}`,
    words: ['shelf', ...numberWords(level.number), ...stands],
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
      return ['cone', ...coneWords(table.loads?.[loadId]?.firing.cone ?? ''), 'ready']
    case 'lid':
      return ['lid from', ...tempWords(table, LID_C)]
    case 'unload':
      // The likely moment of an estimate: the thermometer says whether it is so.
      return ['read it again', 'about', ...tempWords(table, UNLOAD_C)]
    case 'read':
      return ['read it again']
  }
}
