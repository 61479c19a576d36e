import { describe, expect, it } from 'vitest'
import { NAME_S, type RecordedName, trimName } from '../../../src/device/names.ts'

const RATE = 16_000

/** A room with a hum at `noise`, and a voiced stretch at `level` between two moments, s. */
function recorded(
  lastsS: number,
  noise: number,
  spoken: readonly [fromS: number, untilS: number, level: number][],
): RecordedName {
  const samples = new Float32Array(Math.round(lastsS * RATE))
  for (let i = 0; i < samples.length; i++) {
    const s = i / RATE
    samples[i] = noise * Math.sin(2 * Math.PI * 50 * s)
    for (const [from, until, level] of spoken)
      if (s >= from && s < until) samples[i]! += level * Math.sin(2 * Math.PI * 220 * s)
  }
  return { rate: RATE, samples }
}

const rms = (samples: Float32Array): number =>
  Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length)
const peak = (samples: Float32Array): number => samples.reduce((max, x) => Math.max(max, Math.abs(x)), 0)

describe('a recorded name', () => {
  it.each([0.03, 0.15, 0.6])(
    'said at %f is cut to its sound and brought to the level of the clips',
    (level) => {
      const name = trimName(recorded(3, 0.0005, [[1, 1.6, level]]))
      const lastsS = (name?.samples.length ?? 0) / RATE
      expect(lastsS).toBeGreaterThan(0.6)
      expect(lastsS).toBeLessThan(0.68)
      const middle = name!.samples.subarray(RATE * 0.1, RATE * 0.5)
      // The clips are within 2 dB of -14.
      expect(20 * Math.log10(rms(middle))).toBeGreaterThan(-16)
      expect(20 * Math.log10(rms(middle))).toBeLessThan(-12)
      expect(peak(name!.samples)).toBeLessThan(0.9)
      expect(Math.abs(name!.samples[0]!)).toBe(0)
      expect(Math.abs(name!.samples.at(-1)!)).toBeLessThan(0.01)
    },
  )

  it('keeps two words together and leaves out a cough before them', () => {
    const name = trimName(
      recorded(4, 0.0005, [
        [0.3, 0.4, 0.1],
        [1.5, 1.9, 0.3],
        [2.05, 2.4, 0.3],
      ]),
    )
    const lastsS = (name?.samples.length ?? 0) / RATE
    expect(lastsS).toBeGreaterThan(0.88)
    expect(lastsS).toBeLessThan(1)
  })

  it('is nothing when nobody spoke, when it was a click, and when somebody talked on', () => {
    expect(trimName(recorded(2, 0.004, []))).toBeNull()
    expect(trimName({ rate: RATE, samples: new Float32Array(0) })).toBeNull()
    expect(trimName(recorded(2, 0.0005, [[1, 1.03, 0.5]]))).toBeNull()
    expect(trimName(recorded(6, 0.0005, [[1, 1.5 + NAME_S.most, 0.3]]))).toBeNull()
  })
})
