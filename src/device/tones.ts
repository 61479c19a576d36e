/**
 * Tones as samples. A hand drill is loudest below 1 kHz and a phone's speaker weakest there, so every tone
 * has its strongest partials between 1.5 and 3 kHz (tuned by reasoning, to be confirmed at a bench).
 */

import type { ToneName } from './sound-plan.ts'
import { callLetter, TONE_S } from './sound-plan.ts'

interface Partial {
  readonly hz: number
  readonly gain: number
}

interface Note {
  readonly fromS: number
  readonly lastsS: number
  readonly partials: readonly Partial[]
  /** Pitch at the end as a multiple of that at the start. */
  readonly glide: number
  /** Strokes per second of a loudness beat; 0 is steady. */
  readonly beatHz: number
  /** Falls to a thousandth within its length, or stays up. */
  readonly shape: 'struck' | 'held'
  readonly attackS: number
}

/** Short enough for an onset to be exact, long enough not to click. */
const ATTACK_S = 0.002
const RELEASE_S = 0.012
const PEAK = 0.6

/** Five notes to the octave from 1319 Hz: any two of them sound well, no two are a semitone apart. */
const CALL_NOTES_HZ = [1319, 1568, 1760, 2093, 2349, 2637]

const note = (fromS: number, lastsS: number, partials: readonly Partial[], more: Rest = {}): Note => ({
  fromS,
  lastsS,
  partials,
  glide: 1,
  beatHz: 0,
  shape: 'struck',
  attackS: ATTACK_S,
  ...more,
})
type Rest = { glide?: number; beatHz?: number; shape?: Note['shape']; attackS?: number }

/** A deep voice by its pitch, carried by its second to fourth partial. */
const LOW = [
  { hz: 784, gain: 0.5 },
  { hz: 1568, gain: 1 },
  { hz: 2352, gain: 0.7 },
]
const HIGH = [
  { hz: 1568, gain: 0.4 },
  { hz: 2093, gain: 1 },
  { hz: 3136, gain: 0.4 },
]
const FIFTH = [
  { hz: 1760, gain: 1 },
  { hz: 2640, gain: 0.9 },
]
const HARSH = [
  { hz: 1480, gain: 1 },
  { hz: 1568, gain: 1 },
]
const one = (hz: number): Partial[] => [{ hz, gain: 1 }]

const PLAIN: Readonly<Record<keyof typeof TONE_S, readonly Note[]>> = {
  heard: [note(0, TONE_S.heard, one(2093))],
  low: [note(0, TONE_S.low, LOW)],
  in: [note(0, TONE_S.in, HIGH, { shape: 'held' })],
  tick: [note(0, TONE_S.tick, FIFTH)],
  rise: [note(0, TONE_S.rise, one(1760), { glide: 1.65, shape: 'held' })],
  out: [note(0, TONE_S.out, FIFTH, { beatHz: 8, shape: 'held' })],
  drip: [note(0, 0.12, one(2637)), note(0.15, 0.15, one(1976))],
  refused: [note(0, 0.1, HARSH, { shape: 'held' }), note(0.16, 0.1, HARSH, { shape: 'held' })],
  saved: [note(0, TONE_S.saved, one(2794))],
  hold: [note(0, TONE_S.hold, one(1047), { glide: 2.5, shape: 'held' })],
}

const CALL_NOTE_S = 0.24
/** From the first note of a call to its second: three rhythms that an ear counts as three; and to its first again. */
const CALL_NEXT_S = [0.18, 0.26, 0.39]
const CALL_AGAIN_S = 0.66
/** Slower than a beat, which must be exact: a call comes when nobody waits for it, and may not startle. */
const CALL_ATTACK_S = 0.01

/** So many notes are all that calls are made of. */
export const CALL_NOTES = CALL_NOTES_HZ.length

/**
 * Of A to Z: first note, second note, rhythm. Chosen by search, so that any two differ in one of four ways and 295 of the
 * 325 pairs in two: up or down, a step of three semitones more, the rhythm, a note five semitones off. The commonest first
 * letters, S C B M T P G R W H A L, do so among themselves.
 */
const CALLS =
  '200 120 240 051 500 242 421 502 211 020 422 301 021 341 151 032 501 452 540 050 052 510 212 022 202 541'.split(
    ' ',
  )

/** The two notes of a bucket's letter, twice: which of the {@link CALL_NOTES}, and when. */
export function callNotes(letter: string): readonly { readonly index: number; readonly fromS: number }[] {
  const place = callLetter(letter).charCodeAt(0) - 'A'.charCodeAt(0)
  const [first = 0, second = 0, rhythm = 0] = Array.from(CALLS[place] ?? '', Number)
  return [0, CALL_AGAIN_S].flatMap((fromS) => [
    { index: first, fromS },
    { index: second, fromS: fromS + (CALL_NEXT_S[rhythm] ?? 0) },
  ])
}

/** Samples of one note of calls. */
export function renderCallNote(index: number, sampleRate: number): Float32Array<ArrayBuffer> {
  const samples = new Float32Array(Math.round(CALL_NOTE_S * sampleRate))
  const tone = note(0, CALL_NOTE_S, one(CALL_NOTES_HZ[index] ?? 0), { attackS: CALL_ATTACK_S })
  addNote(samples, tone, sampleRate)
  return samples
}

function renderCall(letter: string, sampleRate: number): Float32Array<ArrayBuffer> {
  const notes = callNotes(letter)
  const endS = (notes.at(-1)?.fromS ?? 0) + CALL_NOTE_S
  const samples = new Float32Array(Math.ceil(endS * sampleRate))
  for (const { index, fromS } of notes) {
    const from = Math.round(fromS * sampleRate)
    for (const [i, sample] of renderCallNote(index, sampleRate).entries())
      samples[from + i] = (samples[from + i] ?? 0) + sample
  }
  return samples
}

const isPlain = (name: ToneName): name is keyof typeof PLAIN => Object.hasOwn(PLAIN, name)

/** Samples between -1 and 1 at `sampleRate` Hz. A name `call-X` is the two notes of bucket X, twice. */
export function renderTone(name: ToneName, sampleRate: number): Float32Array<ArrayBuffer> {
  if (!isPlain(name)) return renderCall(name.slice('call-'.length), sampleRate)
  const samples = new Float32Array(Math.ceil(TONE_S[name] * sampleRate))
  for (const each of PLAIN[name]) addNote(samples, each, sampleRate)
  return samples
}

function addNote(samples: Float32Array, each: Note, sampleRate: number): void {
  const from = Math.round(each.fromS * sampleRate)
  const length = Math.min(Math.round(each.lastsS * sampleRate), samples.length - from)
  const total = each.partials.reduce((sum, p) => sum + p.gain, 0)
  const partials = each.partials.map(({ hz, gain }) => ({ hz, gain, phase: 0 }))
  let turn = (2 * Math.PI) / sampleRate
  const glide = each.glide ** (1 / length)
  for (let i = 0; i < length; i++, turn *= glide) {
    const loud = (PEAK / total) * loudness(each, i / sampleRate)
    let sum = 0
    for (const partial of partials) {
      sum += partial.gain * Math.sin(partial.phase)
      partial.phase += turn * partial.hz
    }
    samples[from + i] = (samples[from + i] ?? 0) + loud * sum
  }
}

function loudness(each: Note, atS: number): number {
  const attack = Math.min(1, atS / each.attackS)
  const release = Math.min(1, (each.lastsS - atS) / RELEASE_S)
  const fall = each.shape === 'struck' ? Math.exp((-6.9 * atS) / each.lastsS) : 1
  const beat = each.beatHz === 0 ? 1 : 0.75 + 0.25 * Math.cos(2 * Math.PI * each.beatHz * atS)
  return attack * release * fall * beat
}
