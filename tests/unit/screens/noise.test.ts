import fc from 'fast-check'
import { expect, it } from 'vitest'
import { BEAT_SEEN_MS, noiseAt } from '../../../src/screens/bench/noise.tsx'
import type { Card } from '../../../src/table/card/card.ts'

/** A count from its tap at 0, IN after `leadS`. */
function countCard(kind: 'count' | 'out', leadS: number, lowerS: number, holdS: number): Card {
  const underAt = (leadS + lowerS) * 1000
  const dip = { lowerS, holdS, underAt, outAt: underAt + holdS * 1000 }
  return { kind, potId: 'p', dip } as Card
}

it('begins fewer than three flashes in any second of any count, and shows IN, beats and OUT', () => {
  const ask = fc.record({
    leadS: fc.integer({ min: 3, max: 8 }),
    lowerS: fc.double({ min: 0, max: 4, noNaN: true }),
    holdS: fc.double({ min: 0.5, max: 20, noNaN: true }),
  })
  fc.assert(
    fc.property(ask, ({ leadS, lowerS, holdS }) => {
      const outAt = (leadS + lowerS + holdS) * 1000
      const starts: number[] = []
      let before: string | undefined
      for (let ms = 0; ms < outAt + 3000; ms += 10) {
        const noise = noiseAt(countCard(ms < outAt ? 'count' : 'out', leadS, lowerS, holdS), ms)
        if (noise && noise !== before) starts.push(ms)
        before = noise
      }
      for (const at of starts)
        expect(starts.filter((other) => other >= at && other < at + 1000).length).toBeLessThan(3)
      for (const sign of [leadS * 1000 - 2000, leadS * 1000, outAt])
        expect(Math.min(...starts.map((at) => Math.abs(at - sign)))).toBeLessThanOrEqual(10)
    }),
    { numRuns: 60 },
  )
})

it('pauses between a beat and the next', () => {
  const card = countCard('count', 4, 1, 5)
  expect(noiseAt(card, 6000)).toBe('beat')
  expect(noiseAt(card, 6000 + BEAT_SEEN_MS)).toBeUndefined()
  expect(noiseAt({ kind: 'ready', potIds: ['p'], bucketId: 'b' }, 0)).toBe('call')
  expect(noiseAt({ kind: 'wait', after: [] }, 0)).toBeUndefined()
})
