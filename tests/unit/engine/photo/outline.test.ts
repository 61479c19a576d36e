import { describe, expect, it } from 'vitest'
import { KNOWN } from '../../../../src/engine/photo/contract.ts'
import { outlineFrom, traceFault } from '../../../../src/engine/photo/read.ts'
import { smooth } from '../../../../src/engine/shape/curve.ts'
import { faceAreaCm2, outlineOf, widestRadiusMm } from '../../../../src/engine/shape/geometry.ts'
import { type Shot, shotOf } from '../../../fixtures/photo/shots.ts'

const FULL = process.env.PROVE === '1'
/** Longer side of what is cut out of a photo, px. */
const CUT_PX = 360
/** Photos that were not looked at while the search was tuned; `npm test` takes the first few of them. */
const FIRST_SEED = 1000
const PHOTOS = FULL ? 210 : 6
/**
 * Not reached: all that are read within the bar, and few refused. Of 210 photos 161 are read, 153 of them within it;
 * refused are all 30 low bowls and 19 of the 180 others.
 */
const MOST_FAR = 0.06
const LEAST_READ = 0.7

interface Read {
  readonly name: string
  readonly refused?: string
  /** Part that height, widest and area of the outside are off. */
  readonly off: readonly [number, number, number]
}

function readOf(shot: Shot, n: number): Read {
  const { profile, cut, trace, name } = shot
  const { heightMm, rimMm } = profile.shape
  const bellyMm = 2 * widestRadiusMm(profile, 0, heightMm)
  const area = faceAreaCm2(profile, 'outside', 0.001, heightMm)
  const known = KNOWN[n % KNOWN.length] ?? 'heightMm'
  const got = outlineFrom(cut, trace, known, { heightMm, rimMm, bellyMm }[known])
  if (!got.ok) return { name, refused: got.field, off: [0, 0, 0] }
  const line = smooth(
    got.outsideMm.map(([r, z]) => ({ rMm: r, zMm: z })),
    4,
  )
  const high = got.outsideMm[got.outsideMm.length - 1]?.[1] ?? 0
  const outer = [{ rMm: 0, zMm: 0 }, ...line]
  const areaGot = faceAreaCm2({ shape: profile.shape, outer, inner: outer }, 'outside', 0.001, high)
  return { name, off: [high / heightMm - 1, got.widestMm / bellyMm - 1, areaGot / area - 1] }
}

const isNear = ({ off: [height, widest, area] }: Read): boolean =>
  Math.abs(height) <= 0.02 && Math.abs(widest) <= 0.02 && Math.abs(area) <= 0.04

describe('the outline of a rendered pot', () => {
  it('has height and widest within 2 %, its area within 4 %, nearly always where it is read', () => {
    const reads = Array.from({ length: PHOTOS }, (_, i) => readOf(shotOf(FIRST_SEED + i, CUT_PX), i >> 1))
    const told = reads.filter(({ refused }) => refused === undefined)
    const far = told.filter((read) => !isNear(read)).map(({ name, off }) => `${name} ${off}`)
    if (FULL)
      console.log(`outlines: ${told.length} of ${reads.length} read, beyond the bar ${far.length}`, far)
    expect(far.length, far.join('\n')).toBeLessThanOrEqual(MOST_FAR * told.length)
    expect(told.length / reads.length).toBeGreaterThan(LEAST_READ)
  })
})

describe('what makes no pot', () => {
  const { cut, trace } = shotOf(2, 60)
  it('is refused with field, value and range before a picture is looked at', () => {
    const [foot, rim] = [trace.side[0], trace.side.at(-1)]
    if (!foot || !rim) throw new Error('no trace')
    expect(traceFault(cut, { ...trace, side: [foot] })).toMatchObject({ field: 'points', value: 1, least: 2 })
    expect(
      traceFault(cut, { ...trace, side: [rim, foot], rimLeft: trace.footLeft, footLeft: trace.rimLeft }),
    ).toMatchObject({
      field: 'height',
      least: 0.08,
    })
    expect(traceFault(cut, { ...trace, footLeft: foot, rimLeft: rim })).toMatchObject({
      field: 'across',
      value: 0,
    })
    expect(traceFault(cut, trace)).toBeUndefined()
  })
  it('a picture without any edge is refused', () => {
    const grey = { ...cut, data: new Uint8ClampedArray(cut.data.length).fill(128) }
    expect(outlineFrom(grey, trace, 'heightMm', 150)).toMatchObject({ ok: false, field: 'edge', least: 0.93 })
  })
  it('a length that is none is an error', () => {
    expect(() => outlineFrom(cut, trace, 'heightMm', 0)).toThrow('mm is 0')
  })
})

describe('a shape with an outline that was read', () => {
  const line = [
    [30, 0],
    [42, 40],
    [36, 90],
  ] as const
  const shape = { form: 'cup', heightMm: 90, rimMm: 72, wallMm: 4, footLineMm: 6, outsideMm: line } as const
  it('has it for its outside, and an inside within it', () => {
    const { outer, inner } = outlineOf(shape)
    expect(outer.find(({ zMm }) => zMm === 40)?.rMm).toBe(42)
    expect(Math.max(...inner.map(({ rMm }) => rMm))).toBeLessThan(39)
  })
  it('is refused where its heights fall', () => {
    expect(() =>
      outlineOf({
        ...shape,
        outsideMm: [
          [30, 0],
          [42, 40],
          [36, 30],
        ],
      }),
    ).toThrow('outsideMm')
  })
})
