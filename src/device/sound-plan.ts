/**
 * What shall sound, as data: seconds after a tap, a tone or a word. No audio here; `sound.ts` puts a plan
 * on the audio clock and `tones.ts` makes the tones.
 */

export type ToneName =
  | 'heard'
  | 'low'
  | 'in'
  | 'tick'
  | 'rise'
  | 'out'
  | 'drip'
  | 'refused'
  | 'saved'
  | 'hold'
  | `call-${string}`

/**
 * A number "0" to "99", a letter "A" to "Z", or one of the words of the voice script. `name:LETTER:ID` is a bucket by
 * its recorded name, else its letter; `own:ID` the recorded name or nothing.
 */
export type WordId = string

/** The bucket that a word stands for, see {@link WordId}. */
export function bucketOf(word: WordId): { readonly bucketId?: string; readonly letter?: string } {
  if (word.startsWith('own:')) return { bucketId: word.slice(4) }
  return word.startsWith('name:') ? { letter: word.slice(5, 6), bucketId: word.slice(7) } : {}
}

export interface ToneCue {
  readonly atS: number
  readonly tone: ToneName
  readonly lastsS: number
}

/** `onBeat`: the stressed onset falls on `atS`. Otherwise the word follows the one before it. */
export interface WordCue {
  readonly atS: number
  readonly word: WordId
  readonly onBeat: boolean
}

export type Cue = ToneCue | WordCue

export interface CuePlan {
  readonly cues: readonly Cue[]
}

export interface CountTotals {
  readonly inS: number
  /** Fully under: the dose begins. */
  readonly holdFromS: number
  readonly outS: number
  readonly outUntilS: number
  readonly dripS: number
}

export interface CountPlan extends CuePlan {
  readonly totals: CountTotals
}

export interface CountAsk {
  /** From the tap to IN, 3 to 8 s. */
  readonly leadS: number
  /** From IN until the pot is fully under. */
  readonly lowerS: number
  readonly holdS: number
  /** From OUT to the drip call. */
  readonly dripS?: number
  /** The glaze is poured into the pot: the words are those of pouring, and the rim is wiped after it. */
  readonly poured?: boolean
}

/** A place on a ware board: board letter and number. */
export interface Place {
  readonly board: string
  readonly place: number
}

export const LEAD_S = { min: 3, max: 8 }
/** A dip may be no longer than its way in and out. */
export const HOLD_S = { min: 0, max: 120 }
const LOWER_S = { min: 0, max: 60 }
const DRIP_S = { min: 1, max: 120, usual: 10 }
export const OUT_S = 3
/** A beat nearer than this to the next sign would only blur it (assumption). */
const CROWDED_S = 0.35
/** A word is over by then. */
const SAID_S = 1
/** Words exist up to here. */
export const LAST_NUMBER = 99

export const TONE_S: Readonly<Record<Exclude<ToneName, `call-${string}`>, number>> = {
  heard: 0.03,
  low: 0.16,
  in: 0.2,
  tick: 0.07,
  rise: 0.22,
  out: OUT_S,
  drip: 0.3,
  refused: 0.26,
  saved: 0.025,
  hold: 0.7,
}
/** Two notes, twice, in the slowest rhythm. */
export const CALL_S = 1.3

const tone = (atS: number, name: keyof typeof TONE_S): ToneCue => ({ atS, tone: name, lastsS: TONE_S[name] })

/**
 * A count: an answer to the tap, two low beats, IN, a beat at each whole second of the dose with the last
 * one rising, OUT, and the drip call. A spoken number is the seconds done, so the first beat has none.
 * Throws RangeError for an ask outside the ranges above.
 */
export function planCount(ask: CountAsk): CountPlan {
  const dripAfterS = ask.dripS ?? DRIP_S.usual
  within('leadS', ask.leadS, LEAD_S)
  within('lowerS', ask.lowerS, LOWER_S)
  within('holdS', ask.holdS, HOLD_S)
  within('dripS', dripAfterS, DRIP_S)
  const inS = ask.leadS
  const holdFromS = inS + ask.lowerS
  const outS = holdFromS + ask.holdS
  const dripS = outS + dripAfterS
  const cues: Cue[] = [tone(0, 'heard'), tone(inS - 2, 'low'), tone(inS - 1, 'low'), tone(inS, 'in')]
  cues.push({ atS: inS, word: ask.poured ? 'pour' : 'in', onBeat: true })
  const beats = beatsOf(ask.holdS).filter((s) => s > 0 || ask.lowerS >= CROWDED_S)
  const lastBeat = beats.at(-1)
  for (const s of beats) {
    cues.push(tone(holdFromS + s, s === lastBeat ? 'rise' : 'tick'))
    if (s > 0 && s <= LAST_NUMBER) cues.push({ atS: holdFromS + s, word: String(s), onBeat: true })
  }
  cues.push(tone(outS, 'out'), { atS: outS, word: 'out', onBeat: true })
  if (!ask.poured && dripAfterS - OUT_S > SAID_S)
    cues.push({ atS: outS + OUT_S, word: 'drip', onBeat: false })
  cues.push(...dripCues(dripS, ask.poured))
  return { cues, totals: { inS, holdFromS, outS, outUntilS: outS + OUT_S, dripS } }
}

/** Whole seconds of a dose that get a beat. */
function beatsOf(holdS: number): number[] {
  const beats: number[] = []
  for (let s = 0; s <= holdS - CROWDED_S; s++) beats.push(s)
  return beats
}

function dripCues(atS: number, poured = false): Cue[] {
  const word = poured ? 'wipe the rim' : 'sponge the foot'
  return [tone(atS, 'drip'), { atS: atS + TONE_S.drip + 0.1, word, onBeat: false }]
}

/** The drip call alone, for a dip that ended before its time. */
export function planDrip(afterS: number, poured = false): CuePlan {
  within('afterS', afterS, { min: 0, max: DRIP_S.max })
  return { cues: dripCues(afterS, poured) }
}

/**
 * A bucket's two notes, then "B one, three, A two, ready", then the bucket's name where it was recorded: its letter would
 * sound like a board's; the notes alone where no place is named, the words alone of a bucket without a letter. `first` is said before the places. Throws RangeError for a place that is no number up to 99.
 */
export function planCall(
  bucketLetter: string,
  places: readonly Place[],
  bucketId = '',
  first: readonly WordId[] = [],
): CuePlan {
  const notes: ToneCue[] =
    bucketLetter === '' ? [] : [{ atS: 0, tone: `call-${callLetter(bucketLetter)}`, lastsS: CALL_S }]
  const words: WordId[] = [...first]
  let board = ''
  for (const at of places) {
    if (at.board !== board) words.push(...spelled(at.board))
    board = at.board
    words.push(numberWord('place', at.place))
  }
  if (places.length > 0) words.push(places.length === 1 ? 'ready to touch' : 'ready')
  if (places.length > 0 && bucketId) words.push(`own:${bucketId}`)
  return { cues: [...notes, ...wordCues(words, notes.length > 0 ? CALL_S + 0.1 : 0)] }
}

/** Words one after another, from `atS` on. */
export function planWords(words: readonly WordId[], atS = 0): CuePlan {
  return { cues: wordCues(words, atS) }
}

const wordCues = (words: readonly WordId[], atS: number): WordCue[] =>
  words.map((word) => ({ atS, word, onBeat: false }))

export function planTone(name: keyof typeof TONE_S): CuePlan {
  return { cues: [tone(0, name)] }
}

function numberWord(field: string, value: number): WordId {
  if (!Number.isInteger(value)) throw new RangeError(`${field} ${value}: a whole number is wanted`)
  within(field, value, { min: 0, max: LAST_NUMBER })
  return String(value)
}

/**
 * The letter whose two notes a bucket is called by: its own without accents, and for a letter of another alphabet always
 * the same one of A to Z.
 */
export function callLetter(letter: string): string {
  const [plain = ''] = letter.normalize('NFD').toUpperCase()
  return /^[A-Z]$/.test(plain) ? plain : String.fromCharCode(65 + ((plain.codePointAt(0) ?? 0) % 26))
}

/** A board as it is said, letter by letter: AB is A, B. */
export const spelled = (board: string): readonly WordId[] =>
  [...board.toUpperCase()].filter((letter) => /^[A-Z]$/.test(letter))

function within(field: string, value: number, range: { readonly min: number; readonly max: number }): void {
  if (!(value >= range.min && value <= range.max)) {
    throw new RangeError(`${field} ${value}: ${range.min} to ${range.max} is allowed`)
  }
}
