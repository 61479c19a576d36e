import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { audioVerdict, contextTimeAt } from '../../../src/device/audio.ts'
import { JUMP_MS, jumpBetween } from '../../../src/device/clock.ts'
import { isBigAction } from '../../../src/device/keys.ts'
import { gapBetween } from '../../../src/device/lifecycle.ts'

const at = (epochMs: number, pageMs: number, awake = true) => ({ epochMs, pageMs, awake })

describe('the watch between two clocks', () => {
  it('sees nothing when both go on alike, however long', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e9 }),
        fc.integer({ min: -JUMP_MS, max: JUMP_MS }),
        (ms, drift) => {
          expect(jumpBetween(at(1e12, 500), at(1e12 + ms + drift, 500 + ms))).toBeNull()
        },
      ),
    )
  })

  it('tells a clock that was set from a phone that slept', () => {
    const hour = 3_600_000
    expect(jumpBetween(at(1e12, 0), at(1e12 + hour, 1000))).toEqual({
      byMs: hour - 1000,
      sinceMs: 0,
      kind: 'moved',
    })
    expect(jumpBetween(at(1e12, 0), at(1e12 + hour, 1000, false))).toEqual({
      byMs: hour - 1000,
      sinceMs: 0,
      kind: 'slept',
    })
    expect(jumpBetween(at(1e12, 0), at(1e12 - hour, 1000, false))?.kind).toBe('moved')
  })

  it('takes the longer of the two for a gap, and never less than nothing', () => {
    expect(gapBetween({ epochMs: 1000, pageMs: 50 }, { epochMs: 61_000, pageMs: 60 })).toBe(60_000)
    expect(gapBetween({ epochMs: 1000, pageMs: 0 }, { epochMs: 0, pageMs: 2000 })).toBe(2000)
    expect(gapBetween({ epochMs: 1000, pageMs: 0 }, { epochMs: 0, pageMs: 0 })).toBe(0)
  })
})

describe('the health of the audio', () => {
  it.each([
    ['running', 1, 1, 'ok'],
    ['running', 0, 0.05, null],
    ['running', 0, 1380, null],
    ['running', 0, 0.5, 'rebuild'],
    ['suspended', 0, 1, 'resume'],
    ['interrupted', 0, 1, 'resume'],
    ['closed', 0, 1, 'rebuild'],
  ])('%s, %d s on in %d s: %s', (state, advancedS, elapsedS, verdict) => {
    expect(audioVerdict(state, advancedS, elapsedS)).toBe(verdict)
  })
})

describe('the start of what shall be heard at a page time', () => {
  const now = { contextS: 10, pageMs: 5000, latencyS: 0.04 }

  it('trusts a sane output timestamp, also when the tap is long past', () => {
    // The sample of 9.8 s left the loudspeaker 120 ms ago: 80 ms of latency.
    const point = { contextS: 9.8, pageMs: 4880 }
    expect(contextTimeAt(5000, now, point)).toBeCloseTo(9.92, 9)
    expect(contextTimeAt(4200, now, point)).toBeCloseTo(9.12, 9)
  })

  it.each([
    null,
    { contextS: 0, pageMs: 0 },
    { contextS: 1, pageMs: 4990 },
    { contextS: 10.5, pageMs: 5000 },
  ])('falls back to the stated latency for %j', (point) => {
    expect(contextTimeAt(5000, now, point)).toBeCloseTo(9.96, 9)
  })
})

describe('keys and pedals', () => {
  const key = {
    key: 'PageDown',
    repeat: false,
    withModifier: false,
    inText: false,
    onControl: false,
  }

  it.each([
    'PageDown',
    'PageUp',
    ' ',
    'Enter',
    'ArrowRight',
    'b',
    'MediaTrackNext',
    'MediaPlayPause',
    'AudioVolumeUp',
  ])('takes %s for the big action', (name) => {
    expect(isBigAction({ ...key, key: name })).toBe(true)
  })

  it.each(['Tab', 'Escape', 'Shift', 'F5', 'Unidentified', 'BrowserBack'])('leaves %s alone', (name) => {
    expect(isBigAction({ ...key, key: name })).toBe(false)
  })

  it('leaves repeats, chords, typing and a focused button alone', () => {
    expect(isBigAction({ ...key, repeat: true })).toBe(false)
    expect(isBigAction({ ...key, withModifier: true })).toBe(false)
    expect(isBigAction({ ...key, inText: true })).toBe(false)
    expect(isBigAction({ ...key, key: 'Enter', onControl: true })).toBe(false)
    expect(isBigAction({ ...key, onControl: true })).toBe(true)
  })
})
