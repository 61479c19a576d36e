import { describe, expect, it } from 'vitest'
import { type Bucket, bucketMl, fitOf, levelMm, roundOf, takenBy } from '../../../src/engine/bucket/bucket.ts'
import { type CollarDip, collarPour } from '../../../src/engine/bucket/collar.ts'
import { clayMl, outlineOf, sizeSteps } from '../../../src/engine/shape/geometry.ts'

const bucket: Bucket = { heightMm: 300, floorWideMm: 290, mouthWideMm: 290 }
const _tapered: Bucket = { heightMm: 300, floorWideMm: 240, mouthWideMm: 300 }
const cup = outlineOf(sizeSteps('cup').medium)
const bottle = outlineOf({ form: 'bottle', heightMm: 180, rimMm: 45, bellyMm: 100, wallMm: 5, footLineMm: 4 })
const plate = outlineOf(sizeSteps('plate').large)
const full = { way: 'filled', depthMm: 180 } as const

describe('does it fit', () => {
  it('a bottle of 180 needs 200 mm of glaze: enough in a fresh fill, short after a few pots', () => {
    const fresh = fitOf(bucket, 13.25, bottle, full)
    expect(fresh.neededMm).toBe(200)
    expect(fresh.misfit).toBe('none')
    const later = fitOf(bucket, 11.3, bottle, full)
    expect(later.levelBeforeMm).toBeCloseTo(171, 0)
    expect(later.misfit).toBe('shallow')
    expect(later.spareMm).toBeLessThan(-20)
  })
  it('a plate wider than the mouth is turned away, and one without room for tongs as well', () => {
    expect(fitOf(bucket, 13, plate, { way: 'filled', depthMm: 34 }).misfit).toBe('mouth')
    const snug: Bucket = { ...bucket, floorWideMm: 310, mouthWideMm: 310 }
    expect(fitOf(snug, 13, plate, { way: 'filled', depthMm: 34 }).misfit).toBe('tongs')
  })
  it('the same plate goes in sideways as far as its chord leaves room', () => {
    const side = (depthMm: number) => fitOf(bucket, 13, plate, { way: 'tilted', depthMm, tiltDeg: 90 }).misfit
    expect(side(60)).toBe('none')
    // Chord of 270 mm, half of it 135 from the middle of a mouth of 145.
    expect(side(92)).toBe('tongs')
  })
  it('a taper that closes round the pot on its way down leaves no room for tongs', () => {
    const cone: Bucket = { heightMm: 300, floorWideMm: 60, mouthWideMm: 300 }
    expect(
      fitOf(cone, 2.5, outlineOf(sizeSteps('bowl').medium), { way: 'filled', depthMm: 130 }).misfit,
    ).toBe('tongs')
  })
  it('near the brim it says so, and over it the level stops at the brim', () => {
    expect(fitOf(bucket, 18.6, bottle, full).misfit).toBe('overflow')
    const over = fitOf(bucket, 19.7, bottle, full)
    expect(over.levelAtMm).toBe(300)
    expect(over.misfit).toBe('overflow')
  })
  it('an upturned pot lifts the glaze more than a full one', () => {
    const down = fitOf(bucket, 13, cup, {
      way: 'rimFirst',
      depthMm: 80,
      gramsPerMl: 1.45,
      pressurePa: 101_325,
    })
    expect(down.levelAtMm).toBeGreaterThan(
      fitOf(bucket, 13, cup, { way: 'filled', depthMm: 80 }).levelAtMm + 3,
    )
  })
  it.each([
    ['litres', () => fitOf(bucket, 25, cup, full)],
    ['litres', () => fitOf(bucket, Number.NaN, cup, full)],
    ['bucket.heightMm', () => bucketMl({ ...bucket, heightMm: 0 }, 0)],
    ['bucket.mouthWideMm', () => levelMm({ ...bucket, mouthWideMm: -1 }, 1)],
    ['levelMm', () => bucketMl(bucket, 301)],
    ['ml', () => levelMm(bucket, 20_000)],
    ['depthMm', () => fitOf(bucket, 10, cup, { way: 'filled', depthMm: -4 })],
    ['coatMm', () => takenBy(100, -1, { gramsPerMl: 1.45, solidsGravity: 2.6, cakeSolids: 0.48 })],
    ['gramsPerMl', () => takenBy(100, 1, { gramsPerMl: 1, solidsGravity: 2.6, cakeSolids: 0.48 })],
    ['takesMl', () => roundOf(bucket, 10, [{ profile: cup, how: full, takesMl: -1 }])],
  ])('%s is named when wrong', (field, use) => {
    expect(use).toThrow(RangeError)
    expect(use).toThrow(new RegExp(`^${field} is `))
  })
})

describe('a round of pots', () => {
  it('finds what the ones before left', () => {
    const dips = [150, 200, 250].map((takesMl) => ({ profile: bottle, how: full, takesMl }))
    const round = roundOf(bucket, 13.25, dips)
    expect(round.map((r) => Number(r.litresAfter.toFixed(2)))).toEqual([13.1, 12.9, 12.65])
    expect(round.map((r) => r.misfit)).toEqual(['none', 'none', 'shallow'])
    expect(round[1]?.levelBeforeMm).toBeCloseTo(round[0]?.levelAfterMm ?? 0, 9)
  })
  it('empties a bucket to nothing, never below', () =>
    expect(roundOf(bucket, 0.1, [{ profile: cup, how: full, takesMl: 500 }])[0]?.litresAfter).toBe(0))
})

describe('the collar', () => {
  const dip: CollarDip = {
    vessel: { heightMm: 80, floorWideMm: 200, mouthWideMm: 200 },
    profile: outlineOf({ form: 'cylinder', heightMm: 100, rimMm: 150, wallMm: 5, footLineMm: 5 }),
    collarMm: 25,
    floorGapMm: 10,
    gramsPerMl: 1.48,
    pressurePa: 101_325,
    takesMl: 0,
  }
  it('pours more for the pots that take some before the last', () => {
    const more = collarPour({ ...dip, takesMl: 60 })
    expect(more.pourMl - collarPour(dip).pourMl).toBeCloseTo(60, 9)
    expect(more.levelAtMm).toBeGreaterThan(35)
  })
  it('wets only a thread inside', () => expect(collarPour(dip).insideMm).toBeLessThan(1))
  it('says when the vessel is too narrow or would run over', () => {
    expect(collarPour({ ...dip, vessel: { ...dip.vessel, floorWideMm: 155, mouthWideMm: 155 } }).misfit).toBe(
      'narrow',
    )
    expect(collarPour({ ...dip, vessel: { ...dip.vessel, heightMm: 38 } }).misfit).toBe('overflow')
    const brim = collarPour({ ...dip, vessel: { ...dip.vessel, heightMm: 38 }, takesMl: 5000 })
    expect(brim.levelAtMm).toBe(38)
    expect(brim.lineMm).toBeCloseTo(38, 9)
  })
  it.each([
    ['collarMm', { collarMm: 0 }],
    ['collarMm', { collarMm: 101 }],
    ['floorGapMm', { floorGapMm: -1 }],
    ['collarMm with the gap below', { collarMm: 75 }],
    ['gramsPerMl', { gramsPerMl: Number.NaN }],
    ['takesMl', { takesMl: -1 }],
  ])('%s is named when wrong', (field, wrong) =>
    expect(() => collarPour({ ...dip, ...wrong })).toThrow(new RegExp(`^${field} is `)),
  )
})

describe('what a coat takes', () => {
  it('twice the coat, or twice the face, takes twice the slop; denser slop less of it and the same dry', () => {
    const slop = { gramsPerMl: 1.45, solidsGravity: 2.6, cakeSolids: 0.48 }
    const once = takenBy(300, 0.5, slop)
    expect(takenBy(300, 1, slop).slopMl).toBeCloseTo(2 * once.slopMl, 9)
    expect(takenBy(600, 0.5, slop).dryG).toBeCloseTo(2 * once.dryG, 9)
    const dense = takenBy(300, 0.5, { ...slop, gramsPerMl: 1.55 })
    expect(dense.slopMl).toBeLessThan(once.slopMl)
    expect(dense.dryG).toBeCloseTo(once.dryG, 9)
  })
  it('a filled pot pushes aside its clay', () =>
    expect(
      fitOf(bucket, 13, bottle, full).levelAtMm - fitOf(bucket, 13, bottle, full).levelBeforeMm,
    ).toBeCloseTo((clayMl(bottle, 0, 180) * 1000) / (Math.PI * 145 ** 2), 6))
})
