import { describe, expect, it } from 'vitest'
import {
  clayMl,
  displacedMl,
  enclosedMl,
  FORMS,
  faceAreaCm2,
  holdsMl,
  outlineOf,
  radiusAtMm,
  SIZES,
  sizeSteps,
  trappedRiseMm,
} from '../../src/engine/shape/geometry.ts'
import { near } from './near.ts'
import { cup, cylinder, hemisphere, mug, turned } from './solids.ts'

// Solids of Euclid and Archimedes, as in any table of mensuration (CRC Standard Mathematical Tables).
describe('textbook solids', () => {
  it('cylinder 50 by 100: 314.1593 cm2 around, 78.5398 cm2 base, 785.3982 mL', () => {
    const c = cylinder(50, 100)
    near(faceAreaCm2(c, 'outside', 0, 100) - faceAreaCm2(c, 'outside', 0, 0.0001), 314.1593, { by: 1e-3 })
    near(faceAreaCm2(c, 'outside', 0, 0.0001), 78.5398, { by: 1e-3 })
    near(enclosedMl(c, 'outside', 0, 100), 785.3982, { by: 1e-4 })
  })
  it('frustum 40/60 by 100: 320.38084 cm2, 795.87014 mL', () => {
    const f = turned([
      [40, 0],
      [60, 100],
    ])
    near(faceAreaCm2(f, 'outside', 0, 100), 320.38084, { by: 1e-5 })
    near(enclosedMl(f, 'outside', 0, 100), 795.87014, { by: 1e-5 })
  })
  it('cone 50 by 120: 204.20352 cm2, 314.15927 mL', () => {
    const cone = turned([
      [0, 0],
      [50, 120],
    ])
    near(faceAreaCm2(cone, 'outside', 0, 120), 204.20352, { by: 1e-5 })
    near(enclosedMl(cone, 'outside', 0, 120), 314.15927, { by: 1e-5 })
  })
  it('hemisphere 50: 157.07963 cm2 and 261.79939 mL to 0.01 % and 0.02 % in 64 pieces', () => {
    const h = hemisphere(50, 64)
    near(faceAreaCm2(h, 'outside', 0, 50), 157.07963, { part: 1e-4 })
    near(enclosedMl(h, 'outside', 0, 50), 261.79939, { part: 2e-4 })
  })
  it('Archimedes: a zone of a sphere has the area of its cylinder, wherever it is cut', () => {
    const h = hemisphere(50, 64)
    for (const from of [5, 15, 25, 35])
      near(faceAreaCm2(h, 'outside', from, from + 10), (2 * Math.PI * 50 * 10) / 100, { part: 5e-4 })
  })
  it('cap of height 40 on a sphere of 60: 234.57225 mL, rim 56.56854', () => {
    const h = hemisphere(60, 256)
    near(enclosedMl(h, 'outside', 0, 40), 234.57225, { part: 1e-4 })
    near(radiusAtMm(h, 'outside', 40), 56.56854, { by: 5e-3 })
  })
})

describe('lying and leaning', () => {
  // Perry's Chemical Engineers' Handbook, volume of partially filled horizontal cylinders, H/D against V/total.
  it.each([
    [0.1, 0.052],
    [0.2, 0.1424],
    [0.25, 0.1955],
    [0.3, 0.2523],
    [0.4, 0.3735],
    [0.5, 0.5],
    [0.7, 0.7477],
    [0.9, 0.948],
  ])('a lying cylinder %d deep is filled %d (Perry, from memory)', (depth, part) =>
    near(
      displacedMl(cylinder(50, 120), { way: 'tilted', tiltDeg: 90, depthMm: depth * 100 }) /
        (0.12 * Math.PI * 2500),
      part,
      { by: 6e-5 },
    ),
  )
  it('the hoof cut from a cylinder by a plane through a diameter of its base is 2/3 R2 h', () => {
    // Leaning 45 degrees, the plane through the middle of the base cuts a hoof as high as the radius.
    const c = cylinder(50, 200)
    const depth = 50 * Math.SQRT1_2
    near(displacedMl(c, { way: 'tilted', tiltDeg: 45, depthMm: depth }), (2 / 3) * 50 ** 3 * 1e-3, {
      part: 1e-3,
    })
  })
  it('a slanted cut clear of both ends leaves the cylinder of the mean height', () => {
    const c = cylinder(30, 200)
    // At 30 degrees the surface crosses the axis 100 up when it is 100 cos 30 above the foot's middle.
    const depthMm = 100 * Math.cos(Math.PI / 6) + 30 * Math.sin(Math.PI / 6)
    near(displacedMl(c, { way: 'tilted', tiltDeg: 30, depthMm }), Math.PI * 900 * 100 * 1e-3, { part: 1e-3 })
  })
})

describe('trapped air', () => {
  // Boyle in a straight bell: x = h (1 - p0/(p0 + rho g (D - x))), a quadratic in x.
  const bell = (h: number, depth: number, density: number, pa: number): number => {
    const k = density * 9.80665
    const b = pa + k * depth + k * h
    return (b - Math.sqrt(b * b - 4 * k * k * depth * h)) / (2 * k)
  }
  it.each([
    [88, 100, 1.45, 101_325],
    [114, 25, 1.48, 101_325],
    [200, 180, 1.43, 85_000],
  ])('an inside %d deep, rim %d under, slop %d, %d Pa rises as Boyle has it', (h, depth, density, pa) =>
    near(trappedRiseMm(cup(50, h + 6, 5, 6), depth, density, pa), bell(h, depth, density, pa), { by: 1e-6 }),
  )
  it('100 mm under, 88 mm deep, slop 1.45: 1.20 mm', () =>
    near(trappedRiseMm(cup(50, 94, 5, 6), 100, 1.45, 101_325), 1.204, { by: 1e-3 }))
})

describe('pots', () => {
  // By hand, frustum by frustum.
  it('a drawn mug: 265.1189 cm2 outside, 257.8026 inside, 627.1907 / 442.0032 / 185.1875 mL', () => {
    near(faceAreaCm2(mug, 'outside', 8, 100), 265.1189, { by: 1e-4 })
    near(faceAreaCm2(mug, 'inside', 0, 100), 257.8026, { by: 1e-4 })
    near(enclosedMl(mug, 'outside', 0, 100), 627.1907, { by: 1e-4 })
    near(holdsMl(mug), 442.0032, { by: 1e-4 })
    near(clayMl(mug, 0, 100), 185.1875, { by: 1e-4 })
  })
  it('Pappus: area and volume of every usual pot are those of its centroids (CRC concise encyclopedia)', () => {
    for (const form of FORMS)
      for (const size of SIZES) {
        const pot = outlineOf(sizeSteps(form)[size])
        // Middle of the turning line by 50 points a piece, middle of the turned area by slices.
        let [lengthR, turnedArea] = [0, 0]
        pot.outer.slice(1).forEach((b, i) => {
          const a = pot.outer[i] ?? b
          for (let k = 0; k < 50; k++) {
            const r = a.rMm + ((k + 0.5) / 50) * (b.rMm - a.rMm)
            lengthR += (r * Math.hypot(b.rMm - a.rMm, b.zMm - a.zMm)) / 50
            turnedArea += ((r * r) / 2) * ((b.zMm - a.zMm) / 50)
          }
        })
        const h = pot.shape.heightMm
        near(faceAreaCm2(pot, 'outside', 0, h), (2 * Math.PI * lengthR) / 100, { part: 1e-4 })
        near(enclosedMl(pot, 'outside', 0, h), (2 * Math.PI * turnedArea) / 1000, { part: 1e-3 })
      }
  })
  // Low-form laboratory beakers, outside diameter by height for a nominal volume; brimful at least a tenth more
  // (ISO 3819, from memory).
  it.each([
    [100, 50, 70],
    [250, 70, 95],
    [400, 80, 110],
    [600, 90, 125],
    [1000, 105, 145],
  ])('a %d mL beaker of %d by %d mm holds 1.1 to 1.4 times that', (nominal, d, h) => {
    const beaker = outlineOf({
      form: 'cylinder',
      heightMm: h,
      rimMm: d,
      wallMm: 1.7,
      floorMm: 2,
      footLineMm: 0,
    })
    const part = holdsMl(beaker) / nominal
    expect(part).toBeGreaterThan(1.1)
    expect(part).toBeLessThan(1.4)
  })
  it('a medium cup holds 250 to 450 mL and weighs 180 to 400 g bisque-fired (common practice, no source)', () => {
    const pot = outlineOf(sizeSteps('cup').medium)
    expect(holdsMl(pot)).toBeGreaterThan(250)
    expect(holdsMl(pot)).toBeLessThan(450)
    const grams = clayMl(pot, 0, 200) * 1.85
    expect(grams).toBeGreaterThan(180)
    expect(grams).toBeLessThan(400)
  })
})
