import { describe, expect, it } from 'vitest'
import { CALL_S, TONE_S, type ToneName } from '../../../src/device/sound-plan.ts'
import { renderTone } from '../../../src/device/tones.ts'

/** Two buckets of a table never have one letter, so no two of up to 26 share a call: measured on what is heard. */
const RATE = 48_000
const LETTERS = Array.from('ABCDEFGHIJKLMNOPQRSTUVWXYZ')
/** First letters of most names. */
const COMMON = Array.from('SCBMTPGRWHAL')

interface Heard {
  /** When the notes begin, s, and their pitch, semitones over 1 kHz. */
  readonly atS: readonly number[]
  readonly semitones: readonly number[]
}

/** Loudest sample of each millisecond. */
const envelope = (samples: Float32Array): number[] =>
  Array.from({ length: Math.ceil((samples.length / RATE) * 1000) }, (_, ms) =>
    samples
      .subarray((ms * RATE) / 1000, ((ms + 1) * RATE) / 1000)
      .reduce((a, x) => Math.max(a, Math.abs(x)), 0),
  )

/** The notes of a call, found in its samples: where it grows loud again, and by zero crossings after. */
function heard(letter: string): Heard {
  const samples = renderTone(`call-${letter}`, RATE)
  const loud = envelope(samples)
  const onsets = loud.flatMap((now, ms) => {
    const before = loud.slice(Math.max(0, ms - 40), ms)
    return now > 0.3 && before.every((level) => level < 0.3) ? [ms] : []
  })
  const semitones = onsets.map((ms) => {
    const part = samples.subarray(((ms + 15) * RATE) / 1000, ((ms + 95) * RATE) / 1000)
    let crossings = 0
    for (let i = 1; i < part.length; i++) if (part[i - 1]! < 0 !== part[i]! < 0) crossings++
    return 12 * Math.log2(crossings / 2 / 0.08 / 1000)
  })
  return { atS: onsets.map((ms) => ms / 1000), semitones }
}

/** In how many ways an ear tells two calls apart: up or down, how far, how fast, how high. */
function waysApart(a: Heard, b: Heard): number {
  const step = ({ semitones: [first = 0, second = 0] }: Heard) => second - first
  const gap = ({ atS: [first = 0, second = 0] }: Heard) => second - first
  const off = (note: 0 | 1) => Math.abs(a.semitones[note]! - b.semitones[note]!)
  return [
    step(a) * step(b) < 0,
    Math.abs(Math.abs(step(a)) - Math.abs(step(b))) > 2.5,
    Math.max(gap(a) / gap(b), gap(b) / gap(a)) > 1.3,
    Math.max(off(0), off(1)) > 4.5,
  ].filter(Boolean).length
}

const calls = new Map(LETTERS.map((letter) => [letter, heard(letter)]))
const pairsOf = (letters: readonly string[]) =>
  letters.flatMap((a, i) => letters.slice(i + 1).map((b) => [a, b] as const))
const apart = ([a, b]: readonly [string, string]) => waysApart(calls.get(a)!, calls.get(b)!)

describe('the calls of buckets', () => {
  it('have two notes, twice, in one rhythm', () => {
    for (const { atS, semitones } of calls.values()) {
      expect(atS).toHaveLength(4)
      expect(atS[3]! - atS[2]!).toBeCloseTo(atS[1]! - atS[0]!, 2)
      expect(semitones[2]).toBeCloseTo(semitones[0]!, 1)
      expect(atS[3]! + 0.2).toBeLessThan(CALL_S)
    }
  })

  it('can be told apart by ear: any two in a way, nine in ten in two, the commonest letters always', () => {
    const all = pairsOf(LETTERS).map((pair) => ({ pair: pair.join(''), ways: apart(pair) }))
    expect(all.filter(({ ways }) => ways === 0)).toEqual([])
    expect(all.filter(({ ways }) => ways > 1).length / all.length).toBeGreaterThan(0.9)
    expect(pairsOf(COMMON).filter((pair) => apart(pair) < 2)).toEqual([])
  })

  it('are as loud as one another, to 1.5 dB as an ear weighs their pitch', () => {
    const levels = LETTERS.map((letter) => weighted(renderTone(`call-${letter}`, RATE), calls.get(letter)!))
    expect(10 * Math.log10(Math.max(...levels) / Math.min(...levels))).toBeLessThan(1.5)
  })
})

/** Energy of a call with each note weighed by A (IEC 61672-1, its formula). */
function weighted(samples: Float32Array, { atS, semitones }: Heard): number {
  return atS.reduce((sum, from, i) => {
    const f2 = (1000 * 2 ** (semitones[i]! / 12)) ** 2
    const ra =
      (12194 ** 2 * f2 ** 2) /
      ((f2 + 20.6 ** 2) * Math.sqrt((f2 + 107.7 ** 2) * (f2 + 737.9 ** 2)) * (f2 + 12194 ** 2))
    const part = samples.subarray(from * RATE, (from + 0.17) * RATE)
    return sum + ra ** 2 * part.reduce((energy, x) => energy + x * x, 0)
  }, 0)
}

describe('nothing startles', () => {
  const names: ToneName[] = [
    ...(Object.keys(TONE_S) as (keyof typeof TONE_S)[]),
    ...LETTERS.map((letter): ToneName => `call-${letter}`),
  ]

  it.each(names)('%s keeps well below full level and does not begin with a click', (name) => {
    const samples = renderTone(name, RATE)
    const peak = samples.reduce((max, x) => Math.max(max, Math.abs(x)), 0)
    // -4.4 dB of what a phone can give.
    expect(peak).toBeLessThanOrEqual(0.605)
    const within = (ms: number) =>
      samples.subarray(0, (ms * RATE) / 1000).reduce((max, x) => Math.max(max, Math.abs(x)), 0)
    expect(within(0.5)).toBeLessThan(0.4 * peak)
    if (name.startsWith('call-')) expect(within(4)).toBeLessThan(0.5 * peak)
  })
})
