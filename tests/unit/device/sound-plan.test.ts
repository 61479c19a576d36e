import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { ToneCue, ToneName, WordCue } from '../../../src/device/sound-plan.ts'
import {
  CALL_S,
  OUT_S,
  planCall,
  planCount,
  planDrip,
  planWords,
  TONE_S,
} from '../../../src/device/sound-plan.ts'
import { renderTone } from '../../../src/device/tones.ts'
import { LIMITS } from '../../../src/table/model/limits.ts'

const tones = (plan: { cues: readonly object[] }) => plan.cues.filter((c): c is ToneCue => 'tone' in c)
const words = (plan: { cues: readonly object[] }) => plan.cues.filter((c): c is WordCue => 'word' in c)
const ask = fc.record({
  leadS: fc.integer({ min: 3, max: 8 }),
  lowerS: fc.double({ min: 0, max: 5, noNaN: true }),
  holdS: fc.integer({ min: 1, max: 120 }),
})

describe('the plan of a count', () => {
  it('is two low beats, IN, four one-second beats with the last one rising, OUT', () => {
    const plan = planCount({ leadS: 3, lowerS: 0.6, holdS: 4 })
    expect(tones(plan).map((c) => [c.tone, Number(c.atS.toFixed(3))])).toEqual([
      ['heard', 0],
      ['low', 1],
      ['low', 2],
      ['in', 3],
      ['tick', 3.6],
      ['tick', 4.6],
      ['tick', 5.6],
      ['rise', 6.6],
      ['out', 7.6],
      ['drip', 17.6],
    ])
    expect(words(plan).map((c) => c.word)).toEqual(['in', '1', '2', '3', 'out', 'drip', 'sponge the foot'])
    expect(plan.totals).toEqual({ inS: 3, holdFromS: 3.6, outS: 7.6, outUntilS: 7.6 + OUT_S, dripS: 17.6 })
  })

  it('is said as a pour where the glaze is poured in: no foot was under', () => {
    const plan = planCount({ leadS: 3, lowerS: 0.6, holdS: 3, poured: true })
    expect(words(plan).map((c) => c.word)).toEqual(['pour', '1', '2', 'out', 'wipe the rim'])
    expect(words(planDrip(10, true)).map((c) => c.word)).toEqual(['wipe the rim'])
  })

  it('says the seconds done on the beat, for every count', () => {
    fc.assert(
      fc.property(ask, (a) => {
        const plan = planCount(a)
        const beats = tones(plan).filter((c) => c.tone === 'tick' || c.tone === 'rise')
        for (const word of words(plan)) {
          if (!word.onBeat || word.word === 'in' || word.word === 'out') continue
          expect(word.atS).toBeCloseTo(plan.totals.holdFromS + Number(word.word), 9)
          expect(beats.some((b) => b.atS === word.atS)).toBe(true)
        }
        expect(beats.filter((b) => b.tone === 'rise').length).toBe(beats.length > 0 ? 1 : 0)
        expect(plan.totals.outS).toBeCloseTo(a.leadS + a.lowerS + a.holdS, 9)
        expect(tones(plan).filter((c) => c.tone === 'out')).toHaveLength(1)
      }),
    )
  })

  it('keeps signs apart: nothing else begins within 0.35 s of IN, a beat or OUT', () => {
    fc.assert(
      fc.property(ask, fc.double({ min: 0.5, max: 30, noNaN: true }), (a, holdS) => {
        const times = tones(planCount({ ...a, holdS })).map((c) => c.atS)
        for (let i = 1; i < times.length; i++) expect(times[i]! - times[i - 1]!).toBeGreaterThan(0.35 - 1e-9)
      }),
    )
  })

  it('plans every count that a table can ask for', () => {
    const { leadInS, lowerMmPerS, heightMm, holdS, dripS } = LIMITS
    for (const end of ['least', 'most'] as const) {
      const lowerS = heightMm[end] / lowerMmPerS[end === 'least' ? 'most' : 'least']
      const plan = planCount({ leadS: leadInS[end], lowerS, holdS: holdS[end], dripS: dripS[end] })
      expect(plan.totals.outS).toBeCloseTo(leadInS[end] + lowerS + holdS[end], 9)
    }
  })

  it.each([
    [{ leadS: 2, lowerS: 0, holdS: 4 }, 'leadS 2: 3 to 8'],
    [{ leadS: 3, lowerS: -1, holdS: 4 }, 'lowerS -1: 0 to 60'],
    [{ leadS: 3, lowerS: 0, holdS: -1 }, 'holdS -1: 0 to 120'],
    [{ leadS: 3, lowerS: 0, holdS: Number.NaN }, 'holdS NaN'],
    [{ leadS: 3, lowerS: 0, holdS: 4, dripS: 500 }, 'dripS 500: 1 to 120'],
  ])('refuses %j', (bad, message) => {
    expect(() => planCount(bad)).toThrow(message)
    expect(() => planCount(bad)).toThrow(RangeError)
  })
})

describe('calls and words', () => {
  it('names the bucket by two notes, then board and places, then ready', () => {
    const plan = planCall('b', [
      { board: 'A', place: 3 },
      { board: 'A', place: 4 },
      { board: 'B', place: 3 },
    ])
    expect(tones(plan).map((c) => c.tone)).toEqual(['call-B'])
    expect(words(plan).map((c) => c.word)).toEqual(['A', '3', '4', 'B', '3', 'ready'])
    expect(words(plan).every((c) => c.atS > CALL_S)).toBe(true)
  })

  it('calls a letter of any alphabet, and spells a board past Z', () => {
    const called = (letter: string) => tones(planCall(letter, [])).map((c) => c.tone)
    expect(called('É')).toEqual(['call-E'])
    expect(called('ñ')).toEqual(['call-N'])
    for (const letter of 'ØЖΩ') expect(called(letter)[0]).toMatch(/^call-[A-Z]$/)
    const far = planCall('G', [
      { board: 'AB', place: 3 },
      { board: 'AB', place: 4 },
    ])
    expect(words(far).map((c) => c.word)).toEqual(['A', 'B', '3', '4', 'ready'])
  })

  it('refuses what is no place', () => {
    expect(() => planCall('G', [{ board: 'A', place: 1.5 }])).toThrow('place 1.5')
    expect(() => planCall('G', [{ board: 'A', place: 100 }])).toThrow('0 to 99')
  })

  it('drips after the asked time', () => {
    expect(tones(planDrip(10)).map((c) => [c.tone, c.atS])).toEqual([['drip', 10]])
    expect(() => planDrip(-1)).toThrow(RangeError)
    expect(words(planWords(['stir', 'G'])).map((c) => c.word)).toEqual(['stir', 'G'])
  })
})

describe('the tones', () => {
  const RATE = 48_000
  const LETTERS = Array.from('ABCDEFGHIJKLMNOPQRSTUVWXYZ')
  const names: ToneName[] = [
    ...(Object.keys(TONE_S) as (keyof typeof TONE_S)[]),
    ...LETTERS.map((l): ToneName => `call-${l}`),
  ]

  it.each(names)('%s: no clipping, starts and ends at nothing', (name) => {
    const samples = renderTone(name, RATE)
    const peak = samples.reduce((max, x) => Math.max(max, Math.abs(x)), 0)
    expect(peak).toBeGreaterThan(0.3)
    expect(peak).toBeLessThanOrEqual(0.605)
    expect(Math.abs(samples[0]!)).toBeLessThan(0.01)
    expect(Math.abs(samples.at(-1)!)).toBeLessThan(0.02)
  })

  it.each(names.filter((n) => n !== 'hold' && !n.startsWith('call')))(
    '%s carries most of its energy where a drill is quiet and a small speaker loud, 1.4 to 3.3 kHz',
    (name) => {
      expect(shareBetween(renderTone(name, RATE), RATE, 1400, 3300)).toBeGreaterThan(0.7)
    },
  )
})

/** Share of the energy between two frequencies, by a plain Fourier sum on a 25 Hz grid up to 6 kHz. */
function shareBetween(samples: Float32Array, rate: number, lowHz: number, highHz: number): number {
  let inside = 0
  let all = 0
  const part = samples.subarray(0, Math.min(samples.length, rate / 4))
  for (let hz = 50; hz <= 6000; hz += 25) {
    let re = 0
    let im = 0
    for (let i = 0; i < part.length; i++) {
      const angle = (2 * Math.PI * hz * i) / rate
      re += part[i]! * Math.cos(angle)
      im += part[i]! * Math.sin(angle)
    }
    const power = re * re + im * im
    all += power
    if (hz >= lowHz && hz <= highHz) inside += power
  }
  return inside / all
}
