/** Laws of thickness that hold for any wall, slop, dips and air. */

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Slop } from '../../src/engine/contract.ts'
import { zonesOf } from '../../src/engine/wait/forecast.ts'
import { courseOf, runPot } from '../../src/engine/wall/pot.ts'
import {
  type Case,
  cases,
  dipsOf,
  lastMm,
  pieceOf,
  RUNS,
  SLACK,
  straight,
  within,
} from '../fixtures/cases.ts'

describe('thickness', () => {
  const coats = fc.integer({ min: 1, max: 4 }).chain(cases)

  test('never shrinks with seconds, whatever is already on', () => {
    fc.assert(
      fc.property(coats, within(1, 3), (of, factor) => {
        const longer = { ...of, holds: [...of.holds.slice(0, -1), of.holds.at(-1)! * factor] }
        expect(lastMm(pieceOf(longer))).toBeGreaterThanOrEqual(lastMm(pieceOf(of)) - SLACK)
      }),
      RUNS,
    )
  })

  test('never shrinks with density, whatever is already on', () => {
    fc.assert(
      fc.property(coats, within(0, 0.05), (of, more) => {
        const dips = dipsOf(of)
        const last = dips.at(-1)!
        const slop = { ...of.slop, gramsPerMl: of.slop.gramsPerMl + more }
        const denser = pieceOf(of, [...dips.slice(0, -1), { ...last, slop }])
        expect(lastMm(denser)).toBeGreaterThanOrEqual(lastMm(pieceOf(of)) - SLACK)
      }),
      RUNS,
    )
  })

  test('first coat: grows with absorption, wall and suction', () => {
    fc.assert(
      fc.property(cases(1), within(1, 1.5), (of, factor) => {
        const mm = lastMm(pieceOf(of))
        const { body } = of
        const more: Case[] = [
          { ...of, body: { ...body, absorption: body.absorption * factor } },
          { ...of, wallMm: of.wallMm * factor },
          { ...of, body: { ...body, sorptivityMmPerSqrtS: body.sorptivityMmPerSqrtS * factor } },
        ]
        for (const thirstier of more) expect(lastMm(pieceOf(thirstier))).toBeGreaterThanOrEqual(mm - SLACK)
      }),
      RUNS,
    )
  })

  test('first coat: falls with cake resistance, solids gravity and packing', () => {
    fc.assert(
      fc.property(cases(1), within(1, 1.1), (of, factor) => {
        const mm = lastMm(pieceOf(of))
        const { slop } = of
        const less: Slop[] = [
          { ...slop, cakeResistanceSPerMm2: slop.cakeResistanceSPerMm2 * factor },
          { ...slop, solidsGravity: slop.solidsGravity * factor },
          { ...slop, cakeSolids: slop.cakeSolids * factor },
        ]
        for (const other of less)
          expect(lastMm(pieceOf({ ...of, slop: other }))).toBeLessThanOrEqual(mm + SLACK)
      }),
      RUNS,
    )
  })

  test('first coat: four times the seconds cast at most twice as much', () => {
    fc.assert(
      fc.property(cases(1), (of) => {
        const cast = (holdS: number): number =>
          pieceOf({ ...of, holds: [holdS] }).laid.outside[0]!.gain.castMm
        expect(cast(4 * of.holds[0]!)).toBeLessThanOrEqual(2 * cast(of.holds[0]!) * (1 + 1e-3))
      }),
      RUNS,
    )
  })

  test('more water in the body never makes the next coat thicker', () => {
    fc.assert(
      fc.property(cases(1), within(0, 0.2), (of, more) => {
        const wetter = { ...of, startWater: of.startWater + more }
        expect(lastMm(pieceOf(wetter))).toBeLessThanOrEqual(lastMm(pieceOf(of)) + SLACK)
      }),
      RUNS,
    )
  })

  test('a longer wait never makes the next coat thinner', () => {
    fc.assert(
      fc.property(cases(2), within(1, 5), (of, factor) => {
        const later = { ...of, gapsMin: [of.gapsMin[0]! * factor, 0] }
        // Within the error of the waits' steps.
        expect(lastMm(pieceOf(later))).toBeGreaterThanOrEqual(lastMm(pieceOf(of)) * (1 - 5e-3))
      }),
      RUNS,
    )
  })

  test('first coat: lower, likely and upper stand in order, and the upper never falls as a dip gets longer', () => {
    fc.assert(
      fc.property(cases(1), within(1, 3), (of, factor) => {
        const longer = { ...of, holds: [...of.holds.slice(0, -1), of.holds.at(-1)! * factor] }
        const zones = (one: Case) => zonesOf(runPot(courseOf(straight(one), dipsOf(one), one.air), 1))
        const [short, long] = [zones(of), zones(longer)]
        short.forEach((zone, k) => {
          expect(zone.lowerMm).toBeLessThanOrEqual(zone.likelyMm + SLACK)
          expect(zone.likelyMm).toBeLessThanOrEqual(zone.upperMm + SLACK)
          expect(long[k]!.upperMm).toBeGreaterThanOrEqual(zone.upperMm - SLACK)
        })
      }),
      RUNS,
    )
  })
})
