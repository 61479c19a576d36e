/**
 * Advice against closed forms and the trade's own figures. On a thick dry wall a coat is L = sqrt(t/(rho B + B2/S2))
 * plus its film (cake and mould in series: Tiller & Tsai, J. Am. Ceram. Soc. 69 (1986) 882; from memory, exact by
 * Darcy), so seconds and density have answers that can be written down.
 */

import { describe, expect, test } from 'vitest'
import { densityFor, type PotHistory, secondsFor, stackThatFits } from '../../src/engine/index.ts'
import { DRIP_S } from '../../src/engine/parameters.ts'
import { secondsUnder } from '../../src/engine/shape/immersion.ts'
import { filmOf } from '../../src/engine/slop/film.ts'
import { defaultSlop, shedPerMm } from '../../src/engine/slop/slop.ts'
import { tellingZone, zonesAfter } from '../../src/engine/wait/seconds.ts'
import { fillablePerMm } from '../../src/engine/wall/body.ts'
import { dip, potOf, ROOM } from '../fixtures/wall.ts'
import { near } from './near.ts'

const HIGH_MM = 80
const thick: PotHistory = {
  pot: potOf({ form: 'cylinder', heightMm: HIGH_MM, rimMm: 120, wallMm: 25, floorMm: 10, footLineMm: 0 }),
  events: [],
  air0: ROOM,
}
/** Coats are told in the middle of the tallest stretch: from the skirt, 20 mm up, to the rim. */
const TOLD_MM = (20 + HIGH_MM) / 2
const travelS = secondsUnder(dip('a', 0, 0), HIGH_MM, TOLD_MM)

function coatMm(seconds: number, gramsPerMl: number): number {
  const slop = defaultSlop(gramsPerMl, 2.6)
  const shed = shedPerMm(slop)
  const perMm2 = slop.cakeResistanceSPerMm2 * shed + shed ** 2 / thick.pot.body.sorptivityMmPerSqrtS ** 2
  return Math.sqrt(seconds / perMm2) + filmOf(slop, HIGH_MM, 2000, DRIP_S).thirstyMm
}

describe('seconds for a coat (Tiller & Tsai, closed form)', () => {
  test.each([
    [0.35, 1.45],
    [0.6, 1.45],
    [0.5, 1.45],
    [0.5, 1.4],
    [0.9, 1.5],
  ])('%d mm at %d', (wantedMm, gramsPerMl) => {
    const slop = defaultSlop(gramsPerMl, 2.6)
    const { holdS } = secondsFor(thick, dip('a', 0, 3, { kind: 'full' }, slop), wantedMm)
    // Told to a twentieth of a second.
    near(holdS!, inverse((s) => coatMm(s, gramsPerMl), wantedMm) - travelS, { by: 0.06 })
  })
})

describe('density for a coat (same)', () => {
  test.each([
    [0.4, 3],
    [0.55, 3],
    [0.7, 4],
  ])('%d mm in %d s', (wantedMm, holdS) => {
    const gramsPerMl = densityFor(thick, dip('a', 0, holdS), wantedMm)!
    near(coatMm(holdS + travelS, gramsPerMl), wantedMm, { by: 3e-3 })
  })
})

/** x at which a growing function reaches `goal`. */
function inverse(of: (x: number) => number, goal: number): number {
  let [low, high] = [0, 60]
  for (let k = 0; k < 60; k++) {
    const mid = (low + high) / 2
    if (of(mid) < goal) low = mid
    else high = mid
  }
  return high
}

describe('the trade’s own doses', () => {
  // refsan.com.tr: credit-card thickness, one dip of 5 s or two of 2 s. A card is 0.76 mm (ISO/IEC 7810, ID-1).
  const CARD_MM = 0.76
  const wall: PotHistory = {
    ...thick,
    pot: potOf({ form: 'cylinder', heightMm: HIGH_MM, rimMm: 80, wallMm: 7, floorMm: 8, footLineMm: 8 }),
  }
  const told = (events: PotHistory['events']): number =>
    tellingZone(zonesAfter({ ...wall, events }), 'a')!.likelyMm

  const byHand = (id: string, atMin: number, holdS: number, gramsPerMl = 1.45) =>
    dip(id, atMin, holdS, { kind: 'full' }, defaultSlop(gramsPerMl, 2.6), 120)

  // The density is not told; dipping glazes are kept at 1.45 to 1.55.
  test('five seconds are thinner than a credit card at 1.45 and thicker at 1.55', () => {
    expect(told([byHand('a', 0, 5)])).toBeLessThan(CARD_MM)
    expect(told([byHand('a', 0, 5, 1.55)])).toBeGreaterThan(CARD_MM)
  })

  test('two dips of two seconds are a card within a quarter, the second on a coat that is touch-dry', () =>
    near(told([byHand('a', 0, 2), byHand('b', 5, 2)]), CARD_MM, { part: 0.25 }))

  // L. Katz, louiskatz.net: a wall that is full lets no coat grow, however long. Capacity of a 3 mm wall by ISO 10545-3
  // (absorption x density) filled to 0.85: half of it over the water that each mm sheds.
  test('a 3 mm wall takes no more than its pores, and no seconds give 0.9 mm', () => {
    const thin: PotHistory = {
      ...thick,
      pot: potOf({ form: 'cylinder', heightMm: HIGH_MM, rimMm: 80, wallMm: 3, floorMm: 4, footLineMm: 0 }),
    }
    const slop = defaultSlop(1.45, 2.6)
    const mostMm =
      (fillablePerMm(thin.pot.body) * 1.5) / shedPerMm(slop) + filmOf(slop, HIGH_MM, 2000, DRIP_S).thirstyMm
    const { holdS, likelyMm } = secondsFor(thin, dip('a', 0, 3), 0.9)
    expect(holdS).toBeUndefined()
    expect(likelyMm).toBeLessThanOrEqual(mostMm + 1e-9)
    expect(likelyMm).toBeGreaterThan(0.75 * mostMm)
  })

  // potters.org subject 45572 (C. Strnad): eggshell walls may not take enough however long; thick ones do.
  test('three dips of 4, 3, 3 s fill 4 mm and not 14 mm', () => {
    const fits = (wallMm: number): boolean =>
      stackThatFits(
        { ...thick, pot: potOf({ form: 'cylinder', heightMm: HIGH_MM, rimMm: 80, wallMm, footLineMm: 8 }) },
        [dip('a', 0, 4), dip('b', 0, 3), dip('c', 0, 3)],
      ).fits
    expect(fits(4)).toBe(false)
    expect(fits(14)).toBe(true)
  })
})
