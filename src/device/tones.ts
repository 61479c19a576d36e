/**
 * Tones as samples. A hand drill is loudest below 1 kHz and a phone's speaker weakest there, so every tone
 * has its strongest partials between 1.5 and 3 kHz (tuned by reasoning, to be confirmed at a bench).
 */

import type { ToneName } from './sound-plan.ts'
import { CALL_S, callLetter, TONE_S } from './sound-plan.ts'

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
  ...more,
})
type Rest = { glide?: number; beatHz?: number; shape?: Note['shape'] }

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

function callNotes(letter: string): Note[] {
  const index = callLetter(letter).charCodeAt(0) - 'A'.charCodeAt(0)
  const others = CALL_NOTES_HZ.length - 1
  const first = Math.floor(index / others)
  const step = 1 + (index % others)
  const second = (first + step) % CALL_NOTES_HZ.length
  const pair = [first, second].flatMap((at) => CALL_NOTES_HZ[at] ?? [])
  return pair.map((hz, i) => note(i * 0.26, 0.24, one(hz)))
}
/** A call is said twice, so long apart. */
const CALL_AGAIN_S = 0.6

const isPlain = (name: ToneName): name is keyof typeof PLAIN => Object.hasOwn(PLAIN, name)

/** Samples between -1 and 1 at `sampleRate` Hz. A name `call-X` is the two notes of bucket X, twice. */
export function renderTone(name: ToneName, sampleRate: number): Float32Array<ArrayBuffer> {
  const notes = isPlain(name) ? PLAIN[name] : callNotes(name.slice('call-'.length))
  const lastsS = isPlain(name) ? TONE_S[name] : CALL_S
  const samples = new Float32Array(Math.ceil(lastsS * sampleRate))
  for (const each of notes) addNote(samples, each, sampleRate)
  // Copied: computing takes a slow phone a tenth of a second.
  if (!isPlain(name)) {
    const again = Math.round(CALL_AGAIN_S * sampleRate)
    samples.copyWithin(again, 0, samples.length - again)
  }
  return samples
}

function addNote(samples: Float32Array, each: Note, sampleRate: number): void {
  const from = Math.round(each.fromS * sampleRate)
  const length = Math.min(Math.round(each.lastsS * sampleRate), samples.length - from)
  const total = each.partials.reduce((sum, p) => sum + p.gain, 0)
  const partials = each.partials.map(({ hz, gain }) => ({ hz, gain, phase: 0 }))
  for (let i = 0; i < length; i++) {
    const loud = (PEAK / total) * loudness(each, i / sampleRate)
    const turn = ((2 * Math.PI) / sampleRate) * (each.glide === 1 ? 1 : each.glide ** (i / length))
    let sum = 0
    for (const partial of partials) {
      sum += partial.gain * Math.sin(partial.phase)
      partial.phase += turn * partial.hz
    }
    samples[from + i] = (samples[from + i] ?? 0) + loud * sum
  }
}

function loudness(each: Note, atS: number): number {
  const attack = Math.min(1, atS / ATTACK_S)
  const release = Math.min(1, (each.lastsS - atS) / RELEASE_S)
  const fall = each.shape === 'struck' ? Math.exp((-6.9 * atS) / each.lastsS) : 1
  const beat = each.beatHz === 0 ? 1 : 0.75 + 0.25 * Math.cos(2 * Math.PI * each.beatHz * atS)
  return attack * release * fall * beat
}
