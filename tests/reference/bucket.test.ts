import { describe, expect, it } from 'vitest'
import { type Bucket, bucketMl, fitOf, levelMm, takenBy } from '../../src/engine/bucket/bucket.ts'
import { type CollarDip, collarPour } from '../../src/engine/bucket/collar.ts'
import { faceAreaCm2 } from '../../src/engine/shape/geometry.ts'
import { near } from './near.ts'
import { cup, cylinder, mug, turned } from './solids.ts'

const straight = (wide: number, height: number): Bucket => ({
  heightMm: height,
  floorWideMm: wide,
  mouthWideMm: wide,
})
const SEA_PA = 101_325

describe('level', () => {
  // Closed forms: level = V / (pi R2), frustum V = pi h (a2 + ab + b2) / 3 (tables of mensuration).
  it('10 L in a bucket of 280 mm stand 162.4030 mm', () =>
    near(levelMm(straight(280, 300), 10_000), 162.403, { by: 1e-4 }))
  it('a pail of 80 to 120 mm, 100 high, holds 795.87014 mL', () =>
    near(bucketMl({ heightMm: 100, floorWideMm: 80, mouthWideMm: 120 }, 100), 795.87014, { by: 1e-4 }))
  it('a cone of slope one filled to level h holds pi h3/3: doubling the depth is eight times the slop', () => {
    const cone: Bucket = { heightMm: 400, floorWideMm: 20, mouthWideMm: 820 }
    // Measured from the cone's tip, 10 mm below the floor.
    near(bucketMl(cone, 190) + (Math.PI * 1000) / 3000, (Math.PI * 200 ** 3) / 3000, { part: 1e-12 })
    near(levelMm(cone, (Math.PI * (200 ** 3 - 1000)) / 3000), 190, { by: 1e-6 })
  })
})

describe('a pot in the bucket', () => {
  const bucket = straight(280, 300)
  it('Archimedes: an upturned cylinder of 50 by 120 raises it 15.3061 mm', () => {
    const pot = cylinder(50, 120)
    const fit = fitOf(bucket, 10, pot, { way: 'footFirst', depthMm: 119.999 })
    near(fit.levelAtMm - fit.levelBeforeMm, 15.3061, { by: 1e-3 })
  })
  it('the least liquid for it, 20 mm off the floor, is 7.67805 L', () =>
    near(fitOf(bucket, 7.67805, cylinder(50, 120), { way: 'footFirst', depthMm: 119.9999 }).spareMm, 0, {
      by: 2e-3,
    }))
  it('a full cup pushes aside its clay, an upturned one its outside less the strip let in by Boyle', () => {
    const pot = cup(50, 120, 5, 6)
    const filled = fitOf(bucket, 10, pot, { way: 'filled', depthMm: 120 })
    const clay = Math.PI * (2500 * 120 - 2025 * 114) * 1e-3
    near(filled.levelAtMm - filled.levelBeforeMm, (clay * 1000) / (Math.PI * 140 ** 2), { by: 1e-6 })
    const down = fitOf(bucket, 10, pot, {
      way: 'rimFirst',
      depthMm: 100,
      gramsPerMl: 1.45,
      pressurePa: SEA_PA,
    })
    const strip = 114 * (1 - SEA_PA / (SEA_PA + 1.45 * 9.80665 * (100 - 1.55)))
    const aside = Math.PI * (2500 * 100 - 2025 * strip) * 1e-3
    near(down.levelAtMm - down.levelBeforeMm, (aside * 1000) / (Math.PI * 140 ** 2), { part: 1e-4 })
  })
  it('0.546 mm over the drawn mug takes 49.7 mL of slop and 36.3 g dry; twelve take 0.596 L (by mass balance)', () => {
    // The flat of the rim is 10.3044 cm2.
    const area = faceAreaCm2(mug, 'outside', 8, 100) + faceAreaCm2(mug, 'inside', 0, 100) + 10.3044
    const { slopMl, dryG } = takenBy(area, 0.5459, { gramsPerMl: 1.45, solidsGravity: 2.6, cakeSolids: 0.48 })
    near(slopMl, 49.7, { by: 0.05 })
    near(dryG, 36.3, { by: 0.05 })
    near((12 * slopMl) / 1000, 0.596, { by: 1e-3 })
  })
  it('wet and dry take-up agree with the weights of the same mug: 72.0 g wet', () => {
    const { slopMl, dryG } = takenBy(533.2, 0.546, { gramsPerMl: 1.45, solidsGravity: 2.6, cakeSolids: 0.48 })
    near(slopMl * 1.45, 72, { by: 0.1 })
    near(dryG / slopMl, 0.73125, { by: 1e-6 })
  })
})

describe('collar', () => {
  const vessel = straight(200, 90)
  const dip: CollarDip = {
    vessel,
    profile: cup(75, 100, 5, 6),
    collarMm: 25,
    floorGapMm: 10,
    gramsPerMl: 1.48,
    pressurePa: SEA_PA,
    takesMl: 0,
  }
  // Difference of two cylinders, pi (100^2 x 35 - 75^2 x 25), and with a cone's frustum in its place.
  it('a straight rim of 150 in a vessel of 200, 25 deep, 10 off the floor: 0.66 L to a line at 21 mm', () => {
    const { pourMl, lineMm, levelAtMm, misfit } = collarPour(dip)
    near(pourMl, 660, { part: 0.02 })
    near(lineMm, 21, { by: 0.25 })
    near(levelAtMm, 35, { by: 1e-6 })
    expect(misfit).toBe('none')
  })
  it('a bowl narrowing to 140 mm at 25 mm needs 0.69 L', () => {
    const bowl = turned(
      [
        [0, 0],
        [60, 0],
        [70, 75],
        [75, 100],
      ],
      [
        [0, 8],
        [54, 8],
        [64, 75],
        [69, 100],
      ],
    )
    near(collarPour({ ...dip, profile: bowl }).pourMl, 690, { part: 0.02 })
  })
})
