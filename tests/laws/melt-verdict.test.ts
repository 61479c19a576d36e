import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type FootRoomInput, footRoom, pairsOf } from '../../src/engine/melt/melt.ts'
import { coatsFor, fromTo, inputOf, pots } from '../fixtures/melt-pots.ts'

describe('verdicts', () => {
  const withExtra = pots.chain(({ profile, coats }) =>
    coatsFor(profile).map(([extra]) => ({ profile, coats, extra: { ...extra!, dipId: 'extra' } })),
  )

  test('an added coat never turns over into clear', () => {
    let overs = 0
    fc.assert(
      fc.property(withExtra, ({ profile, coats, extra }) => {
        const before = footRoom(inputOf(profile, coats)).verdict
        if (before === 'over') overs++
        const after = footRoom(inputOf(profile, [...coats, extra])).verdict
        if (before === 'over') expect(after).not.toBe('clear')
      }),
      { numRuns: 300 },
    )
    expect(overs).toBeGreaterThan(30)
  })

  test('unknown is never clear: an untested glaze, or a pair not proved, is never cleared', () => {
    fc.assert(
      fc.property(withExtra, fc.boolean(), ({ profile, coats, extra }, untested) => {
        const outside = {
          ...extra,
          face: 'outside' as const,
          glazeId: 'z',
          dose: untested ? null : extra.dose,
        }
        const input = inputOf(profile, [...coats, outside])
        const lone = !pairsOf(input.coats.filter((c) => c.face === 'outside')).some((p) => p.over === 'z')
        fc.pre(untested || !lone)
        const room = footRoom({ ...input, provedPairs: untested ? input.provedPairs : [] })
        expect(room.verdict).not.toBe('clear')
        expect(room.doubts.length).toBeGreaterThan(0)
      }),
      { numRuns: 200 },
    )
  })

  test('a wider margin, a higher dose or more thickness never eases a verdict', () => {
    const rank = { clear: 0, near: 1, over: 2, unknown: 3 }
    fc.assert(
      fc.property(
        pots,
        fromTo(1.1, 2),
        fc.constantFrom('margin', 'dose', 'thickness'),
        ({ profile, coats }, by, what) => {
          const input = inputOf(profile, coats)
          const harder: FootRoomInput = {
            ...input,
            marginFactor: what === 'margin' ? 2 * by : 2,
            coats: coats.map((coat) => ({
              ...coat,
              likelyMm: what === 'thickness' ? coat.likelyMm * by : coat.likelyMm,
              upperMm: what === 'thickness' ? coat.upperMm * by : coat.upperMm,
              dose:
                what === 'dose' && coat.dose
                  ? { likelyPerMm: coat.dose.likelyPerMm * by, highPerMm: coat.dose.highPerMm * by }
                  : coat.dose,
            })),
          }
          const [before, after] = [footRoom(input), footRoom(harder)]
          expect(rank[after.verdict]).toBeGreaterThanOrEqual(Math.min(rank[before.verdict], 2))
        },
      ),
      { numRuns: 200 },
    )
  })

  test('every number is finite', () => {
    fc.assert(
      fc.property(pots, fromTo(1, 5), ({ profile, coats }, marginFactor) => {
        const room = footRoom({ ...inputOf(profile, coats), marginFactor })
        const { verdict, doubts, untestedGlazes, untried, ...numbers } = room
        for (const value of Object.values(numbers)) expect(Number.isFinite(value) && value >= 0).toBe(true)
        expect([verdict, doubts.length, untestedGlazes.length, untried.length]).toEqual([
          verdict,
          doubts.length,
          0,
          0,
        ])
      }),
      { numRuns: 200 },
    )
  })
})
