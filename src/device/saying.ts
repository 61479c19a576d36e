/**
 * Words of the table in the order and the form a language says them: `number:248`, `clock:15:20` (hours 0 to 23) and
 * what stands in another place than in English become words that have clips, see `speech.ts`.
 */
import type { VoiceLanguage } from '../../shared/languages.ts'
import type { CuePlan, WordId } from './sound-plan.ts'

/** What is said beside a count, as `language` says it: all its words follow one another. */
export function planAsSaid(plan: CuePlan, language: VoiceLanguage): CuePlan {
  const words = plan.cues.flatMap((cue) => ('word' in cue ? [cue] : []))
  const atS = words[0]?.atS ?? 0
  const said = asSaid(
    words.map(({ word }) => word),
    language,
  )
  return {
    cues: [
      ...plan.cues.filter((cue) => 'tone' in cue),
      ...said.map((word) => ({ atS, word, onBeat: false })),
    ],
  }
}

/** Words as `language` says them. A number that no clips make, and a clock that is none, is left out. */
export function asSaid(words: readonly WordId[], language: VoiceLanguage): readonly WordId[] {
  const { number, clock, order } = GRAMMAR[language]
  return order(
    words.flatMap((word) => {
      const [kind = '', a = '', b = ''] = word.split(':')
      if (kind === 'number') return number(Number(a))
      return kind === 'clock' ? clock(Number(a), Number(b)) : word
    }),
  )
}

interface Grammar {
  number(n: number): readonly WordId[]
  /** A time of day to five minutes. */
  clock(hours: number, minutes: number): readonly WordId[]
  order(words: readonly WordId[]): readonly WordId[]
}

const MOST = 599
const isSayable = (n: number): boolean => Number.isInteger(n) && n >= 0 && n <= MOST

/** The hour, minutes to five, and the hour after. */
function fives(hours: number, minutes: number) {
  const rounded = Math.round(minutes / 5) * 5
  const hour = (hours + (rounded === 60 ? 1 : 0)) % 24
  return { hour, minute: rounded % 60, next: (hour + 1) % 24 }
}

const twelve = (hour: number): string => `${hour % 12 || 12}`

const english: Grammar = {
  /** One twenty-five. */
  number(n) {
    if (!isSayable(n)) return []
    const [hundreds, rest] = [Math.floor(n / 100), n % 100]
    if (hundreds === 0) return [`${rest}`]
    const round =
      hundreds === 1 ? ['one hundred'] : hundreds === 5 ? ['five hundred'] : [`${hundreds}`, 'hundred']
    return rest === 0 ? round : rest < 10 ? [...round, `${rest}`] : [`${hundreds}`, `${rest}`]
  },
  /** Ten to midnight. */
  clock(hours, minutes) {
    const { hour, minute, next } = fives(hours, minutes)
    const name = (of: number) => (of === 0 ? 'midnight' : of === 12 ? 'noon' : twelve(of))
    if (minute === 0)
      return hour % 12 === 0 ? [name(hour)] : hour % 12 === 1 ? ['one o’clock'] : [twelve(hour), 'o’clock']
    if (minute === 30) return [twelve(hour), '30']
    return minute < 30 ? [`${minute}`, 'past', name(hour)] : [`${60 - minute}`, 'to', name(next)]
  },
  order: (words) => words,
}

const spanish: Grammar = {
  /** Ciento veinte. */
  number(n) {
    if (!isSayable(n)) return []
    const [hundreds, rest] = [Math.floor(n / 100), n % 100]
    if (n === 100) return ['one hundred']
    const last = rest === 0 ? [] : [`${rest}`]
    if (hundreds === 0) return [`${rest}`]
    if (hundreds === 1) return ['one hundred and', ...last]
    return hundreds === 5 ? ['five hundred', ...last] : [`${hundreds}`, 'hundred', ...last]
  },
  /** Las ocho menos diez. */
  clock(hours, minutes) {
    const { hour, minute, next } = fives(hours, minutes)
    const name = (of: number) => (of % 12 === 1 ? ['one o’clock'] : ['o’clock', twelve(of)])
    if (minute === 0) return hour === 0 ? ['midnight'] : hour === 12 ? ['noon'] : name(hour)
    return minute <= 30 ? [...name(hour), 'past', `${minute}`] : [...name(next), 'to', `${60 - minute}`]
  },
  /** The half after what it is of, the day before its hour, a question of a number behind it. */
  order(words) {
    const said = [...words]
    for (const [i, word] of words.entries()) {
      if (word !== 'and a half' && word !== 'and one half') continue
      const of = said[i + 1]
      if (of === 'seconds' || of === 'inches') said.splice(i, 2, of, word)
    }
    const asks = said.indexOf('was it')
    if (asks >= 0) said.push(...said.splice(asks, 1))
    const about = said.indexOf('about')
    if (about >= 0 && said.at(-1) === 'tomorrow') said.splice(about, 0, ...said.splice(-1, 1))
    return said
  },
}

const GRAMMAR: Readonly<Record<VoiceLanguage, Grammar>> = { en: english, es: spanish }
