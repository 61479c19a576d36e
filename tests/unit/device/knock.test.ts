import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { deaf, knockStep, type Level } from '../../../src/device/knock.ts'

/** A sample each 10 ms, as the microphone's peaks come. */
const STEP_MS = 10
const LEAST = 0.08

/** Levels of a quiet room with strokes on it, each loud for 30 ms and fading. */
function trace(
  strokesMs: readonly number[],
  { lastsMs = 4000, noise = 0.005, loud = 0.5, gated = false } = {},
): Level[] {
  return Array.from({ length: lastsMs / STEP_MS }, (_, i) => {
    const atMs = i * STEP_MS
    const own = strokesMs
      .filter((from) => atMs >= from && atMs < from + 100)
      .map((from) => (atMs < from + 30 ? loud : loud * Math.exp(-(atMs - from - 30) / 15)))
    return { atMs, level: Math.max(noise * (0.6 + 0.4 * Math.sin(i * 1.7)), ...own), gated }
  })
}

/** When two knocks were made out, ms. */
function knocks(levels: readonly Level[]): number[] {
  let state = deaf
  return levels.flatMap((level) => {
    const step = knockStep(state, level, LEAST)
    state = step.state
    return step.knocked ? [level.atMs] : []
  })
}

describe('two knocks on the table', () => {
  it('are made out half a second later, however loud and fast, in any ordinary room', () => {
    fc.assert(
      fc.property(
        fc.record({
          first: fc.integer({ min: 1500, max: 2200 }),
          apart: fc.integer({ min: 140, max: 480 }),
          noise: fc.double({ min: 0, max: 0.03, noNaN: true }),
          loud: fc.double({ min: 0.25, max: 1, noNaN: true }),
        }),
        ({ first, apart, noise, loud }) => {
          const heard = knocks(trace([first, first + apart], { noise, loud }))
          expect(heard).toHaveLength(1)
          expect(heard[0]! - first - apart).toBeGreaterThan(500)
          expect(heard[0]! - first - apart).toBeLessThan(600)
        },
      ),
    )
  })

  it('are not one pot set down, nor three strokes and more, nor two far apart', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1500, max: 2000 }), fc.integer({ min: 3, max: 7 }), (first, count) => {
        expect(knocks(trace([first]))).toEqual([])
        expect(knocks(trace([first, first + 900]))).toEqual([])
        expect(knocks(trace(Array.from({ length: count }, (_, i) => first + i * 250)))).toEqual([])
      }),
      { numRuns: 40 },
    )
  })

  it('are not a drill, whether it hums on or starts', () => {
    const drill = Array.from({ length: 400 }, (_, i): Level => {
      const atMs = i * STEP_MS
      return { atMs, level: atMs < 1000 ? 0.01 : 0.4 + 0.1 * Math.sin(i / 3), gated: false }
    })
    expect(knocks(drill)).toEqual([])
  })

  it('are not what the app sounds itself, nor one knock in it and one after', () => {
    const two = trace([1500, 1800])
    expect(knocks(two.map((level) => ({ ...level, gated: true })))).toEqual([])
    expect(knocks(two.map((level) => ({ ...level, gated: level.atMs < 1700 })))).toEqual([])
  })
})
