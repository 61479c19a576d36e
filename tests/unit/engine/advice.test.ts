import { describe, expect, test } from 'vitest'
import type { ZoneForecast } from '../../../src/engine/contract.ts'
import {
  DEFAULT_BODY,
  densityFor,
  forecastPot,
  gradeZone,
  halfAndHalf,
  nextCoat,
  type PotHistory,
  repairRest,
  secondsFor,
  stackThatFits,
  UNLEARNED,
  worstZone,
} from '../../../src/engine/index.ts'
import { latestOf } from '../../../src/engine/wait/pieces.ts'
import { BOARD, stackDips } from '../../fixtures/class.ts'
import { air, beaker, dip, potOf, ROOM, SLIP } from '../../fixtures/wall.ts'

const standing = (wallMm: number, events: PotHistory['events'] = []): PotHistory => ({
  pot: potOf(beaker(wallMm)),
  events,
  air0: ROOM,
})

const bodyMm = ({ pot, events, air0 }: PotHistory): number =>
  forecastPot(pot, events, air0, UNLEARNED).zones.find(({ name }) => name === 'body')!.likelyMm

describe('seconds for a thickness', () => {
  test('give it, on a dry pot', () => {
    const at = standing(8)
    const { holdS, likelyMm } = secondsFor(at, dip('a', 0, 3), 0.5)
    expect(likelyMm).toBeCloseTo(0.5, 2)
    expect(bodyMm({ ...at, events: [dip('a', 0, holdS!)] })).toBeCloseTo(0.5, 2)
  })

  test('are more on a wall that has drunk', () => {
    const first = [dip('a', 0, 3)]
    const dry = secondsFor(standing(5), dip('b', 5, 3), 0.4)
    const wet = secondsFor(standing(5, first), dip('b', 5, 3), 0.4)
    expect(wet.holdS!).toBeGreaterThan(dry.holdS! * 1.5)
  })

  test('are none on a full wall, and the most it takes is told', () => {
    const { holdS, likelyMm } = secondsFor(standing(4, [dip('a', 0, 8)]), dip('b', 20, 3), 0.5)
    expect(holdS).toBeUndefined()
    expect(likelyMm).toBeLessThan(0.3)
  })

  test('the next coat is told thinner on a half-full wall', () => {
    const thick = nextCoat(standing(8, [dip('a', 0, 3)]), dip('b', 10, 3))
    expect(thick.likelyMm).toBeLessThan(thick.thirstyMm)
  })

  test('a density makes the planned seconds give the planned coat', () => {
    const gramsPerMl = densityFor(standing(8), dip('a', 0, 3), 0.4)!
    expect(gramsPerMl).toBeLessThan(1.45)
    const thinned = dip('a', 0, 3, { kind: 'full' }, { ...SLIP, gramsPerMl })
    expect(bodyMm({ ...standing(8), events: [thinned] })).toBeCloseTo(0.4, 2)
    expect(densityFor(standing(8), dip('a', 0, 3), 5)).toBeUndefined()
  })

  test('refuses a thickness that is none', () => {
    expect(() => secondsFor(standing(8), dip('a', 0, 3), 0)).toThrow(RangeError)
  })
})

describe('grades', () => {
  const zone = (likelyMm: number, upperMm: number): ZoneForecast => ({
    name: 'collar',
    face: 'outside',
    fromMm: 70,
    toMm: 100,
    coats: [{ dipId: 'a', glazeId: 'Heather', likelyMm, lowerMm: 0, upperMm }],
    likelyMm,
    lowerMm: 0,
    upperMm,
    filled: 0.5,
  })
  const limits = { stackMm: 1.25, glazeMm: { Heather: 0.8 } }

  test.each([
    [0.5, 0.7, 'fine', 'Heather'],
    [0.7, 0.9, 'close', 'Heather'],
    [0.9, 1.1, 'over', 'Heather'],
  ])('%d mm, at most %d, is %s', (likelyMm, upperMm, grade, of) => {
    expect(gradeZone(zone(likelyMm, upperMm), limits)).toMatchObject({ grade, of, limitMm: 0.8 })
  })

  test('the stack counts where no glaze has a limit', () => {
    expect(gradeZone(zone(1.3, 1.5), { stackMm: 1.25, glazeMm: {} })).toMatchObject({
      grade: 'over',
      of: 'stack',
    })
  })

  test('the worst of several is told', () => {
    expect(worstZone([zone(0.5, 0.7), zone(0.9, 1.1), zone(0.7, 0.9)], limits).likelyMm).toBe(0.9)
    expect(() => worstZone([], limits)).toThrow(RangeError)
  })
})

describe('after a slip', () => {
  const limits = { stackMm: 1.2, glazeMm: {} }
  const cylinder = BOARD.find(({ number }) => number === 38)!
  const pot = potOf(cylinder.shape, { ...DEFAULT_BODY, absorption: 0.12 })
  const plan = stackDips(pot, 'Tideline').map((coat, k) => ({ ...coat, atMin: 20 * k }))
  const room = air(21, 0.32)

  test('held 9 s instead of 4: shorter coats keep every zone inside its limit', () => {
    const slipped = { ...plan[0]!, holdS: 9 }
    const asPlanned = forecastPot(pot, [slipped, ...plan.slice(1)], room, UNLEARNED)
    const repair = repairRest({ pot, events: [slipped], air0: room }, plan, plan.slice(1), limits)
    expect(repair.inside).toBe(true)
    const off = (zones: readonly ZoneForecast[]): number =>
      zones.reduce((sum, zone, k) => sum + Math.abs(zone.likelyMm - repair.plannedZones[k]!.likelyMm), 0)
    expect(off(repair.zones)).toBeLessThan(off(asPlanned.zones))
    expect(repair.rest[0]!.holdS ?? 0).toBeLessThan(3)
  })

  test('where nothing fits, coats are skipped', () => {
    const flooded = { ...plan[0]!, holdS: 9 }
    const already = forecastPot(pot, [flooded], room, UNLEARNED).zones.map((zone) => zone.likelyMm)
    // No room for more than a breath of glaze anywhere.
    const tight = { stackMm: Math.max(...already) + 0.02, glazeMm: {} }
    const { rest, inside } = repairRest({ pot, events: [flooded], air0: room }, plan, plan.slice(1), tight)
    expect(rest.some(({ holdS }) => holdS === undefined)).toBe(true)
    expect(inside).toBe(true)
  })

  test('as planned needs no change', () => {
    const { rest } = repairRest({ pot, events: plan.slice(0, 1), air0: room }, plan, plan.slice(1), {
      stackMm: 2,
      glazeMm: {},
    })
    expect(rest.map(({ holdS }) => holdS)).toEqual([3, 3])
  })
})

describe('jar and lid', () => {
  const jar = { form: 'jar' as const, heightMm: 120, rimMm: 90, wallMm: 6, footLineMm: 8, galleryMm: 9 }

  test('the gallery stays bare and lends its half of the wall', () => {
    const { zones } = forecastPot(potOf(jar), [dip('a', 0, 3)], ROOM, UNLEARNED)
    const top = zones.filter(({ fromMm }) => fromMm >= 111)
    expect(top.map(({ face, coats }) => [face, coats.length])).toEqual([
      ['outside', 1],
      ['inside', 0],
    ])
    const below = zones.find(({ name, face }) => name === 'body' && face === 'outside')!
    expect(top[0]!.filled).toBeLessThan(below.filled)
  })

  test('go into the kiln when the slower of the two is dry', () => {
    const slow = { lower: 60, likely: 90, upper: 150 }
    expect(latestOf([{ lower: 30, likely: 95, upper: 120 }, slow])).toEqual({ ...slow, likely: 95 })
    expect(() => latestOf([])).toThrow(RangeError)
  })
})

describe('half and half', () => {
  test('where two side dips overlap the plate carries both', () => {
    const shape = { form: 'plate' as const, heightMm: 28, rimMm: 230, wallMm: 7, footLineMm: 7 }
    const events = [dip('a', 0, 3), dip('b', 10, 3), dip('c', 30, 2, { kind: 'collar', depthMm: 8 })]
    const at: PotHistory = { pot: potOf(shape), events, air0: ROOM }
    const halfOf = (id: string) => ({ a: 0, b: 1 })[id] as 0 | 1 | undefined
    const { first, second, overlap, overlapPart } = halfAndHalf(at, halfOf, 15, UNLEARNED)
    const body = (zones: typeof first) => zones.find(({ name }) => name === 'body')!
    const rim = (zones: typeof first) =>
      zones.find(({ name, face }) => name === 'collar' && face === 'outside')!.coats.map(({ dipId }) => dipId)
    const mm = (zones: typeof first) => body(zones).likelyMm
    expect(overlapPart).toBeCloseTo(1 / 12, 12)
    expect(mm(overlap.zones)).toBeGreaterThan(1.4 * mm(first))
    expect(mm(overlap.zones)).toBeLessThan(mm(first) + mm(second))
    expect([first, second, overlap.zones].map(rim)).toEqual([
      ['a', 'c'],
      ['b', 'c'],
      ['a', 'b', 'c'],
    ])
    expect(() => halfAndHalf(at, halfOf, 200, UNLEARNED)).toThrow(RangeError)
  })
})

describe('the stack that fits this wall', () => {
  const plan = [dip('a', 0, 4), dip('b', 0, 3), dip('c', 0, 3, { kind: 'collar', depthMm: 25 })]

  test('a thick wall takes it as planned', () => {
    expect(stackThatFits(standing(12), plan)).toMatchObject({ fits: true, seconds: [4, 3, 3] })
  })

  test('a thin wall fills early; shorter seconds are solved and keep it open', () => {
    const fit = stackThatFits(standing(5), plan)
    expect(fit.fits).toBe(false)
    expect(fit.fullAtCoat).toBe(2)
    const shorter = plan.map((coat, k) => ({ ...coat, holdS: fit.seconds![k]! }))
    expect(shorter.every(({ holdS }, k) => holdS <= plan[k]!.holdS)).toBe(true)
    expect(stackThatFits(standing(5), shorter).fits).toBe(true)
  })

  test('inside tonight and outside tomorrow rescues one long dip', () => {
    const once = [dip('a', 0, 5)]
    expect(stackThatFits(standing(2.2), once)).toMatchObject({
      fits: false,
      split: { insideS: [5], outsideS: [5] },
    })
  })

  test('and where even that fills the wall, its seconds are solved too', () => {
    const twice = [dip('a', 0, 6), dip('b', 0, 6)]
    const { seconds, split } = stackThatFits(standing(1.8), twice)
    expect(split!.insideS).toHaveLength(2)
    expect(split!.outsideS.every((s, k) => s < 6 && s > (seconds?.[k] ?? 0))).toBe(true)
    // A stack that never wets the inside has nothing to split.
    const collars = [
      dip('c', 0, 9, { kind: 'collar', depthMm: 30 }),
      dip('d', 0, 9, { kind: 'collar', depthMm: 30 }),
    ]
    expect(stackThatFits(standing(1.5), collars)).toMatchObject({ fits: false, split: undefined })
  })

  test('no coats fit any wall', () => {
    expect(stackThatFits(standing(5), []).fits).toBe(true)
  })
})
