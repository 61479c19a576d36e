/** Discs pressed into a circle and a square, against the best that is known, and bounds on how many go in. */
import { describe, expect, test } from 'vitest'
import { densestPart, mostEqualDiscs } from '../../src/engine/kiln/bound.ts'
import { drawnIn, type Loose, squeeze } from '../../src/engine/kiln/squeeze.ts'
import { randomFrom } from '../../src/engine/numeric/random.ts'
import { near } from './near.ts'

const FULL = process.env.PROVE === '1'
/** Radius of the circle, half of the square's side, mm: the hair that is accepted is small beside it. */
const SIZE_MM = 250
const UNBOUND = { minX: -Infinity, maxX: Infinity, minY: -Infinity, maxY: Infinity, r: Infinity }
const inCircle = (r: number) => ({ ...UNBOUND, r: SIZE_MM - r })
const inSquare = (r: number) => ({
  minX: r - SIZE_MM,
  maxX: SIZE_MM - r,
  minY: r - SIZE_MM,
  maxY: SIZE_MM - r,
  r: Infinity,
})

/** Of so many seeds, those with which discs of these radii go in from places drawn at random. */
function successes(radii: readonly number[], edge: typeof inCircle, kicks: number, seeds: number): number {
  let found = 0
  for (let seed = 0; seed < seeds; seed++) {
    const roll = randomFrom(seed)
    const loose: Loose[] = radii.map((r) => {
      const region = edge(r)
      return { disc: { ...drawnIn(region, roll), r }, region, fixed: [] }
    })
    if (squeeze(loose, kicks, roll)) found++
  }
  return found
}

/** Largest radius of n equal circles in a unit circle; proven to 14 and for 19. */
const IN_CIRCLE = [
  [5, 0.370192],
  [7, 0.333333],
  [9, 0.276769],
  [10, 0.262259],
  [12, 0.248163],
  [13, 0.236068],
  [15, 0.221173],
  [16, 0.216665],
  [19, 0.205605],
  [20, 0.195224],
  [24, 0.176939],
  [25, 0.173828],
  [30, 0.161349],
  [37, 0.147956],
] as const

/** Largest radius of n equal circles in a unit square; proven to 30. */
const IN_SQUARE = [
  [5, 0.207107],
  [7, 0.174458],
  [10, 0.148204],
  [12, 0.139959],
  [13, 0.133994],
  [15, 0.127167],
  [18, 0.115521],
  [19, 0.112265],
  [20, 0.111382],
  [24, 0.101382],
  [25, 0.1],
  [30, 0.091671],
] as const

/** Least radius of a circle that holds circles of the radii 1 to n. */
const ONE_TO_N = [
  [6, 11.05704],
  [8, 16.22175],
  [10, 22.00019],
  [12, 28.37139],
  [14, 35.09565],
  [16, 42.45812],
  [18, 50.11976],
] as const

describe('at 0.98 of the best radius, 60 kicks', () => {
  const seeds = FULL ? 10 : 4
  test.each(IN_CIRCLE)('%d equal circles go into a circle', (n, best) => {
    const found = successes(new Array(n).fill(0.98 * best * SIZE_MM), inCircle, 60, seeds)
    expect(found).toBeGreaterThanOrEqual(0.8 * seeds)
  })

  test.each(IN_SQUARE)('%d equal circles go into a square', (n, best) => {
    const found = successes(new Array(n).fill(0.98 * best * 2 * SIZE_MM), inSquare, 60, seeds)
    expect(found).toBeGreaterThanOrEqual(0.75 * seeds)
  })
})

test.each(ONE_TO_N)(
  'circles of 1 to %d go into one of %d at 0.97, from 18 on at 0.95, 150 kicks',
  (n, least) => {
    const seeds = FULL ? 6 : 2
    const unit = ((n > 16 ? 0.95 : 0.97) * SIZE_MM) / least
    const radii = Array.from({ length: n }, (_, k) => (k + 1) * unit)
    expect(successes(radii, inCircle, 150, seeds)).toBeGreaterThanOrEqual((5 / 6) * seeds)
  },
)

test('two discs go nowhere where only one has room: an overlap is never taken for none', () => {
  expect(successes([0.51 * SIZE_MM, 0.51 * SIZE_MM], inCircle, 60, 5)).toBe(0)
  expect(successes(new Array(8).fill(0.303 * SIZE_MM), inCircle, 60, 3)).toBe(0)
})

const inDisc = (r: number) => [Math.PI * r * r, 2 * Math.PI * r] as const

test.each([
  ['a circle of 3', ...inDisc(3), 7.77],
  ['a circle of 4.8637', ...inDisc(4.8637), 20.61],
  ['a square of side 8', 64, 32, 17.57],
] as const)('no more unit discs than Groemer allows go into %s', (_, area, girth, most) => {
  near(mostEqualDiscs(area, girth), most, { by: 0.01 })
})

test('equal discs cover pi over the root of 12 of the plane at most', () => {
  near(densestPart(1), Math.PI / Math.sqrt(12), { by: 1e-12 })
})

test.each([
  [0.5, 0.915812],
  [0.3, 0.930979],
])('discs that differ by %d cover %d at most', (q, part) => {
  near(densestPart(q), part, { by: 1e-6 })
})
