import { describe, expect, it } from 'vitest'
import type { Shape } from '../../../src/engine/contract.ts'
import {
  aroundMm,
  clayMl,
  displacedMl,
  enclosedMl,
  FORMS,
  faceAreaCm2,
  fillS,
  holdsMl,
  outlineOf,
  radiusAtMm,
  SIZES,
  sizeSteps,
  tiltedSpan,
  trappedRiseMm,
  widestRadiusMm,
} from '../../../src/engine/shape/geometry.ts'

const cup = sizeSteps('cup').medium
const every = FORMS.filter((form) => form !== 'lid').flatMap((form) =>
  SIZES.map((size) => sizeSteps(form)[size]),
)
const named = (shape: Shape): string => `${shape.form} ${shape.heightMm} x ${shape.rimMm}`

describe('outlines', () => {
  it.each(every.map((shape) => [named(shape), shape] as const))('%s is a pot', (_, shape) => {
    const pot = outlineOf(shape)
    const rim = pot.outer[pot.outer.length - 1]
    const lip = pot.inner[pot.inner.length - 1]
    expect(pot.outer[0]).toEqual({ rMm: 0, zMm: 0 })
    expect(rim).toEqual({ rMm: shape.rimMm / 2, zMm: shape.heightMm })
    expect(lip?.zMm).toBeCloseTo(shape.heightMm, 9)
    expect(pot.inner[0]?.rMm).toBe(0)
    expect(pot.outer.length - 2).toBeGreaterThanOrEqual(32)
    expect(pot.inner.length - 2).toBeGreaterThanOrEqual(32)
    for (const line of [pot.outer, pot.inner])
      line.slice(1).forEach((p, i) => {
        expect(p.zMm).toBeGreaterThanOrEqual(line[i]?.zMm ?? Infinity)
        expect(p.rMm).toBeGreaterThanOrEqual(0)
      })
  })
  it.each(every.map((shape) => [named(shape), shape] as const))(
    '%s keeps its wall, measured across',
    (_, shape) => {
      const pot = outlineOf(shape)
      const apart = pot.inner.slice(2).map((p) => {
        const from = pot.outer.slice(2).map((b, i) => {
          const a = pot.outer[i + 1] ?? b
          const [dr, dz] = [b.rMm - a.rMm, b.zMm - a.zMm]
          const u = Math.min(
            1,
            Math.max(0, ((p.rMm - a.rMm) * dr + (p.zMm - a.zMm) * dz) / (dr * dr + dz * dz)),
          )
          return Math.hypot(p.rMm - a.rMm - u * dr, p.zMm - a.zMm - u * dz)
        })
        return Math.min(...from)
      })
      expect(Math.min(...apart)).toBeGreaterThan(shape.wallMm * 0.99)
      expect(apart[Math.floor(apart.length / 2)] ?? 0).toBeLessThan(shape.wallMm * 1.02)
      expect(apart[apart.length - 1] ?? 0).toBeLessThan(shape.wallMm * 1.01)
    },
  )
  it('a bottle has a neck narrower than its lip and a belly wider than its foot', () => {
    const shape = sizeSteps('bottle').medium
    const pot = outlineOf(shape)
    expect(radiusAtMm(pot, 'outside', shape.heightMm * 0.87)).toBeLessThan(shape.rimMm / 2 - 2)
    expect(widestRadiusMm(pot, 0, shape.heightMm)).toBeCloseTo((shape.bellyMm ?? 0) / 2, 6)
  })
  it('a bowl stands on a ring, narrower just above the shelf than the wall springing from it', () => {
    const pot = outlineOf(sizeSteps('bowl').medium)
    expect(radiusAtMm(pot, 'outside', 5)).toBeLessThan(radiusAtMm(pot, 'outside', 0))
    expect(radiusAtMm(pot, 'outside', 12)).toBeGreaterThan(radiusAtMm(pot, 'outside', 0) + 8)
  })
  it('a cylinder is straight inside and out', () => {
    const pot = outlineOf(sizeSteps('cylinder').medium)
    expect(pot.outer.slice(1).every((p) => Math.abs(p.rMm - 45) < 1e-9)).toBe(true)
    expect(pot.inner.slice(1).every((p) => Math.abs(p.rMm - 39.5) < 1e-9)).toBe(true)
  })
  it.each(SIZES)('a %s lid stands on its edge over a hollow, under a knob', (size) => {
    const shape = sizeSteps('lid')[size]
    const lid = outlineOf(shape)
    const [wide, high] = [shape.rimMm / 2, shape.heightMm]
    expect(radiusAtMm(lid, 'outside', 0)).toBeCloseTo(wide, 9)
    expect(radiusAtMm(lid, 'inside', 0)).toBeCloseTo(wide - shape.wallMm, 6)
    expect(lid.inner.at(-1)).toMatchObject({ rMm: 0 })
    expect(lid.inner.at(-1)!.zMm).toBeLessThan(high * 0.6)
    expect(radiusAtMm(lid, 'outside', high * 0.86)).toBeGreaterThan(
      radiusAtMm(lid, 'outside', high * 0.7) + 1,
    )
    expect(holdsMl(lid) + clayMl(lid, 0, high)).toBeCloseTo(enclosedMl(lid, 'outside', 0, high), 6)
    expect(fillS(lid, 1.45)).toBeLessThan(1)
    expect(() => outlineOf({ ...shape, wallMm: high })).toThrow(/^wallMm is /)
  })
  it('left-out measures follow the medium size of the form', () => {
    const pot = outlineOf({ form: 'jar', heightMm: 150, rimMm: 96, wallMm: 6, footLineMm: 8 })
    expect(widestRadiusMm(pot, 0, 150)).toBeCloseTo(72, 6)
    expect(radiusAtMm(pot, 'outside', 0)).toBeCloseTo(42, 1)
  })
  it.each([
    ['form', { form: 'vase' as 'cup' }],
    ['heightMm', { heightMm: 5 }],
    ['rimMm', { rimMm: Number.NaN }],
    ['wallMm', { wallMm: 0.1 }],
    ['wallMm', { wallMm: 45 }],
    ['footLineMm', { footLineMm: 100 }],
    ['footMm', { footMm: 0 }],
    ['bellyMm', { bellyMm: -3 }],
    ['bellyUpMm', { bellyUpMm: 89 }],
    ['floorMm', { floorMm: 0 }],
    ['floorMm \\(with the foot ring\\)', { floorMm: 60, heightMm: 70, bellyUpMm: 30 }],
  ])('%s is named when wrong', (field, wrong) => {
    expect(() => outlineOf({ ...cup, ...wrong })).toThrow(RangeError)
    expect(() => outlineOf({ ...cup, ...wrong })).toThrow(new RegExp(`^${field} is `))
  })
})

describe('parts of a pot', () => {
  const pot = outlineOf(cup)
  it('the base belongs to the outside at 0 and to no span above it', () => {
    const base = Math.PI * ((cup.footMm ?? 0) / 20) ** 2
    expect(faceAreaCm2(pot, 'outside', 0, 1e-9)).toBeCloseTo(base, 3)
    expect(faceAreaCm2(pot, 'outside', 1e-9, 2e-9)).toBeLessThan(1e-3)
  })
  it('an empty span has no area and no volume', () => {
    expect(faceAreaCm2(pot, 'inside', 40, 40)).toBe(0)
    expect(enclosedMl(pot, 'outside', 40, 40)).toBe(0)
  })
  it('there is no hollow below the floor and no pot above the rim', () => {
    expect(faceAreaCm2(pot, 'inside', 0, 3)).toBe(0)
    expect(radiusAtMm(pot, 'inside', 3)).toBe(0)
    expect(radiusAtMm(pot, 'outside', 91)).toBe(0)
    expect(faceAreaCm2(pot, 'outside', 90, 500)).toBe(0)
  })
  it('clay and hollow make the whole', () =>
    expect(clayMl(pot, 0, 90) + holdsMl(pot)).toBeCloseTo(enclosedMl(pot, 'outside', 0, 90), 9))
  it('spans the wrong way round and heights off the wall are named', () => {
    expect(() => faceAreaCm2(pot, 'outside', 50, 40)).toThrow(/^toMm is 40/)
    expect(() => radiusAtMm(pot, 'outside', Number.NaN)).toThrow(/^zMm is NaN/)
  })
})

describe('displacement', () => {
  const pot = outlineOf(cup)
  it('nothing under, nothing aside', () => {
    for (const way of ['footFirst', 'filled'] as const) expect(displacedMl(pot, { way, depthMm: 0 })).toBe(0)
    expect(displacedMl(pot, { way: 'rimFirst', depthMm: 0, gramsPerMl: 1.45, pressurePa: 101_325 })).toBe(0)
    expect(displacedMl(pot, { way: 'tilted', depthMm: 0, tiltDeg: 40 })).toBeCloseTo(0, 9)
  })
  it('a pot that goes under floods and pushes aside its clay alone', () => {
    expect(displacedMl(pot, { way: 'footFirst', depthMm: 89.9 })).toBeGreaterThan(400)
    expect(displacedMl(pot, { way: 'footFirst', depthMm: 90 })).toBeCloseTo(clayMl(pot, 0, 90), 9)
  })
  it('leaning by nothing is upright, and by half a turn upside down without air', () => {
    const upright = displacedMl(pot, { way: 'filled', depthMm: 40 })
    expect(displacedMl(pot, { way: 'tilted', depthMm: 40, tiltDeg: 0 })).toBeCloseTo(upright, 9)
    expect(displacedMl(pot, { way: 'tilted', depthMm: 40, tiltDeg: 0.2 })).toBeCloseTo(upright, 0)
    expect(displacedMl(pot, { way: 'tilted', depthMm: 30, tiltDeg: 180 })).toBeCloseTo(clayMl(pot, 60, 90), 9)
  })
  it('thinner air lets in more', () => {
    const low = trappedRiseMm(pot, 60, 1.45, 101_325)
    expect(trappedRiseMm(pot, 60, 1.45, 75_000)).toBeGreaterThan(low * 1.2)
  })
  it('a lying pot is as wide as it is tall', () => {
    expect(tiltedSpan(pot, 90).highMm).toBeCloseTo(2 * widestRadiusMm(pot, 0, 90), 9)
    expect(aroundMm(pot, 90, 200)).toBeGreaterThan(45)
    expect(aroundMm(pot, 0, 200)).toBeCloseTo(widestRadiusMm(pot, 0, 90), 2)
  })
  it('the part of a lying plate that goes in is as wide as its chord', () => {
    const plate = outlineOf(sizeSteps('plate').large)
    const chord = 2 * Math.sqrt(145 ** 2 - (145 - 60) ** 2)
    expect(aroundMm(plate, 90, 60)).toBeGreaterThan(chord / 2 - 0.1)
    expect(aroundMm(plate, 90, 60)).toBeLessThan(chord / 2 + 3)
  })
  it.each([
    ['depthMm', () => displacedMl(pot, { way: 'filled', depthMm: -1 })],
    ['tiltDeg', () => displacedMl(pot, { way: 'tilted', depthMm: 1, tiltDeg: 181 })],
    ['gramsPerMl', () => trappedRiseMm(pot, 10, 0, 101_325)],
    ['pressurePa', () => trappedRiseMm(pot, 10, 1.4, 0)],
    ['gramsPerMl', () => fillS(pot, 3)],
  ])('%s is named when wrong', (field, use) => expect(use).toThrow(new RegExp(`^${field} is `)))
})

describe('a narrow neck', () => {
  it('takes seconds to fill where a cup takes none', () => {
    const bottle = outlineOf({
      form: 'bottle',
      heightMm: 180,
      rimMm: 45,
      bellyMm: 100,
      wallMm: 5,
      footLineMm: 4,
    })
    expect(fillS(bottle, 1.45)).toBeGreaterThan(3)
    expect(fillS(outlineOf(cup), 1.45)).toBeLessThan(0.5)
  })
  it('is the narrowest place of the upper inside, not the floor', () =>
    expect(fillS(outlineOf({ ...sizeSteps('plate').small, floorMm: 8 }), 1.45)).toBeLessThan(0.5))
})
