/** That pot once more: seconds for today's slop and wall. Rows computed once with this engine. */
import { describe, expect, test } from 'vitest'
import { differences, type MadeWith, stackAgain } from '../../../../src/engine/fired/again.ts'
import { defaultSlop } from '../../../../src/engine/index.ts'
import { tellingZone, zonesAfter } from '../../../../src/engine/wait/seconds.ts'
import { bisqueOf } from '../../../../src/engine/wall/body.ts'
import { beaker, dip, potOf, ROOM } from '../../../fixtures/wall.ts'
import { near } from '../../../reference/near.ts'

const standing = (wallMm: number, absorption: number) => ({
  pot: potOf(beaker(wallMm), bisqueOf(absorption)),
  events: [],
  air0: ROOM,
})
const first = (gramsPerMl: number, holdS = 4) =>
  dip('first', 0, holdS, { kind: 'full' }, defaultSlop(gramsPerMl, 2.6))
const usual = standing(6.5, 0.13)
const mmOf = (pot: typeof usual, density: number, holdS: number): number =>
  tellingZone(zonesAfter({ ...pot, events: [first(density, holdS)] }), 'first')!.coats[0]!.likelyMm
/** What four seconds at 1.45 left then. */
const THEN_MM = mmOf(usual, 1.45, 4)

describe('one coat', () => {
  const again = (pot: typeof usual, density: number) =>
    stackAgain(pot, [{ dip: first(density), mm: THEN_MM }], 'touch')[0]!
  test('in the same slop on the same wall takes the same seconds', () => {
    near(again(usual, 1.45).holdS, 4, { by: 0.4 })
  })

  test.each([
    [1.42, 7],
    [1.48, 2.1],
    [1.5, 1.15],
  ])('in slop of %d takes about %d s', (density, seconds) => {
    const { holdS, meets, likelyMm } = again(usual, density)
    near(holdS, seconds, { by: 0.5 })
    expect(meets).toBe(true)
    near(likelyMm, THEN_MM, { part: 0.05 })
  })

  test('that no seconds give is told with the nearest, and the density that would', () => {
    const thin = again(standing(3, 0.1), 1.4)
    expect(thin.meets).toBe(false)
    near(thin.likelyMm, 0.37, { by: 0.04 })
    expect(thin.wouldGramsPerMl).toBeGreaterThan(1.4)
    const thick = stackAgain(usual, [{ dip: first(1.62), mm: 0.3 }], 'touch')[0]!
    expect(thick.meets).toBe(false)
    expect(thick.likelyMm).toBeGreaterThan(0.3)
    expect(thick.wouldGramsPerMl).toBeLessThan(1.62)
  })
})

test('the second coat is solved on the wall that the first one leaves, once it may go on', () => {
  const second = { ...first(1.45), id: 'second' }
  const [one, two] = stackAgain(
    usual,
    [
      { dip: first(1.45), mm: THEN_MM },
      { dip: second, mm: 0.8 * THEN_MM },
    ],
    'touch',
  )
  const alone = stackAgain(usual, [{ dip: second, mm: 0.8 * THEN_MM }], 'touch')[0]!
  expect(one!.waitMin).toBeGreaterThan(1)
  expect(two!.holdS).toBeGreaterThan(1.3 * alone.holdS)
  const thin = stackAgain(
    standing(4, 0.13),
    [
      { dip: first(1.45), mm: THEN_MM },
      { dip: second, mm: 0.8 * THEN_MM },
    ],
    'touch',
  )
  expect(thin[1]!.holdS).toBeGreaterThan(1.1 * two!.holdS)
  expect(() => stackAgain(usual, [{ dip: second, mm: 0 }], 'touch')).toThrow('coats[0].mm is 0')
})

describe('what is not as it was', () => {
  const then: MadeWith = {
    wallMm: 6.5,
    bisqueCone: '06',
    absorption: 0.13,
    coats: [
      { glazeId: 'g', fill: 'one', gramsPerMl: 1.48 },
      { glazeId: 'g', fill: 'one', gramsPerMl: 1.48 },
    ],
    waitMin: 30,
  }
  const plan = { overK: null, plannedEndC: 1222 }
  test('is nothing on the same day', () => {
    expect(differences(then, then, plan)).toEqual([])
  })

  test('is each thing past a twentieth, and not below it', () => {
    const now: MadeWith = {
      wallMm: 4,
      bisqueCone: '04',
      absorption: 0.12,
      coats: [{ glazeId: 'g', fill: 'two', gramsPerMl: 1.45 }],
      waitMin: 61,
    }
    expect(differences(then, now, { ...plan, overK: -8 })).toEqual([
      { what: 'wall', was: 6.5, now: 4 },
      { what: 'bisque', was: '06', now: '04' },
      { what: 'absorption', was: 0.13, now: 0.12 },
      { what: 'density', glazeId: 'g', was: 1.48, now: 1.45 },
      { what: 'fill', glazeId: 'g' },
      { what: 'waits', was: 30, now: 61 },
      { what: 'heat', overK: -8 },
    ])
    const near = {
      ...then,
      wallMm: 6.3,
      waitMin: 31,
      coats: [{ glazeId: 'g', fill: 'one', gramsPerMl: 1.47 }],
    }
    expect(differences(then, near, { ...plan, overK: 2 })).toEqual([])
  })
})
