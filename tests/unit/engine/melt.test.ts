import { describe, expect, test } from 'vitest'
import { layCoats } from '../../../src/engine/melt/coats.ts'
import { frontMm } from '../../../src/engine/melt/flow.ts'
import { type FootRoomInput, footRoom } from '../../../src/engine/melt/melt.ts'
import { downwards, pathAlong } from '../../../src/engine/melt/path.ts'
import { outlineOf } from '../../../src/engine/shape/geometry.ts'
import { coat, full, input, mug, straightPot } from '../../fixtures/melt.ts'

describe('foot room of a straight mug', () => {
  // Volumes on the shelf that a separate second-order program gave for this wall, mL (regression, not a reference).
  test.each([
    [2, 4.2, 3, 0.31],
    [1, 16.9, 3, 0.15],
    [1.5, 16.9, 3, 1.23],
    [1.5, 16.9, 6, 0.66],
    [2, 16.9, 3, 3.49],
    [2, 16.9, 6, 2.74],
    [2, 16.9, 10, 1.73],
    [1, 67.2, 3, 1.74],
    [1, 67.2, 6, 1.36],
    [1, 67.2, 10, 0.86],
    [1.5, 67.2, 3, 6.3],
    [1.5, 67.2, 10, 5],
    [2, 67.2, 6, 11],
  ])('%d mm dry at dose %d over %d mm bare: %d mL on the shelf', (mm, dose, bare, ml) => {
    const room = footRoom(input([coat('a', bare, 90, mm, dose)], { footLineMm: bare }))
    expect(room.verdict).toBe('over')
    expect(Math.abs(room.onShelfMl - ml)).toBeLessThan(0.05 + 0.03 * ml)
  })

  test.each([
    [0.5, 4.2, 'clear'],
    [1, 16.9, 'over'],
    [0.8, 10, 'near'],
    [0.5, 16.9, 'clear'],
    [0.7, 16.9, 'near'],
    [0.5, 2, 'clear'],
  ] as const)('%d mm dry at dose %d with 6 mm bare is %s', (mm, dose, verdict) => {
    expect(footRoom(input([full('a', mm, dose)])).verdict).toBe(verdict)
  })

  test('the run of a lone coat is dose times melt squared, and the margin doubles it', () => {
    const room = footRoom(input([full('a', 0.6, 20)]))
    expect(room.runMm).toBeCloseTo(20 * 0.3 ** 2, 3)
    expect(room.marginRunMm).toBeCloseTo(2 * 20 * 0.3 ** 2, 2)
    expect(room.roomMm).toBeCloseTo(6, 9)
    expect(room.pastFootMl).toBeCloseTo((2 * Math.PI * 40 * 1.8 * 0.3) / 1000, 5)
    expect(room.onShelfMl).toBe(0)
  })

  test('the upper estimate alone can bring it near', () => {
    const wide = { ...full('a', 0.4, 20), upperMm: 0.8, dose: { likelyPerMm: 20, highPerMm: 40 } }
    expect(footRoom(input([full('a', 0.3, 20)])).verdict).toBe('clear')
    expect(footRoom(input([{ ...wide, likelyMm: 0.3 }])).verdict).toBe('near')
  })

  test('no glaze outside: clear with all the wall as room', () => {
    const room = footRoom(input([{ ...full('a', 1, 60), face: 'inside' }]))
    expect(room).toMatchObject({ verdict: 'clear', runMm: 0, marginRunMm: 0, doubts: [], onShelfMl: 0 })
    expect(room.roomMm).toBeCloseTo(90, 9)
  })

  test('glazed to the very shelf is over at any run', () => {
    expect(footRoom(input([coat('a', 0, 90, 0.3, 3)], { footLineMm: 0 })).verdict).toBe('over')
  })

  test('glaze below the foot line is never clear', () => {
    expect(footRoom(input([coat('a', 3, 90, 0.2, 1)])).verdict).toBe('near')
  })

  test('a coat of no thickness is no coat', () => {
    expect(footRoom(input([full('a', 0, 60)])).verdict).toBe('clear')
  })

  test("the tile's own drip factor moves the verdict", () => {
    const coats = [full('a', 0.8, 14)]
    expect(footRoom(input(coats, { marginFactor: 1.5 })).verdict).toBe('near')
    expect(footRoom(input(coats, { marginFactor: 3 })).verdict).toBe('over')
  })

  test('a narrow thick band keeps the margin it has alone when a thin coat is laid below it', () => {
    const band = coat('a', 40, 50, 2, 50)
    const below = coat('b', 8, 40, 0.1, 50)
    const at = (coats: FootRoomInput['coats']) =>
      footRoom(input(coats, { profile: straightPot(50, 40, 8), footLineMm: 8 }))
    expect(at([band]).verdict).toBe('over')
    expect(at([band]).onShelfMl).toBe(0)
    expect(at([band, below]).verdict).toBe('over')
  })

  test('the margin also runs on to what a slab must hold', () => {
    const room = footRoom(input([full('a', 0.9, 26)]))
    expect(room.onShelfMl).toBeLessThan(1e-3)
    expect(room.marginShelfMl).toBeCloseTo((2 * Math.PI * 40 * (2 * 26 * 0.45 ** 2 - 6) * 0.45) / 1000, 2)
  })

  test('a thick collar slides over the base, thins the rim and can reach the shelf alone', () => {
    const base = full('a', 0.5, 67.2)
    const collar = (mm: number) => footRoom(input([base, coat('b', 60, 90, mm, 67.2)]))
    expect(collar(0.5).overlapSlideMm).toBeGreaterThan(20)
    expect(collar(1).overlapSlideMm).toBeGreaterThan(collar(0.5).overlapSlideMm)
    expect(collar(1).rimMeltMm).toBeLessThan(0.16)
    expect(collar(1.5).onShelfMl).toBeCloseTo(0.85, 0)
  })

  test('where two glazes overlap the larger dose holds', () => {
    const fluidBelow = footRoom(input([full('a', 0.4, 60), full('b', 0.4, 2)])).runMm
    const fluidAbove = footRoom(input([full('b', 0.4, 2), full('a', 0.4, 60)])).runMm
    expect(fluidBelow).toBeCloseTo(60 * 0.4 ** 2, 1)
    expect(fluidAbove).toBeCloseTo(fluidBelow, 9)
  })

  test('a fluid coat that stops high does not make the stiff one below it run', () => {
    const room = footRoom(input([full('a', 0.4, 4), coat('b', 70, 90, 0.3, 30)]))
    expect(room.runMm).toBeCloseTo(4 * 0.2 ** 2, 2)
    expect(room.overlapSlideMm).toBeGreaterThan(2)
  })

  test('melt hanging under a belly is reported, none on an upright wall', () => {
    const bottle = outlineOf({
      form: 'bottle',
      heightMm: 180,
      rimMm: 45,
      bellyMm: 120,
      wallMm: 5,
      footLineMm: 8,
    })
    const coats = [coat('a', 8, 180, 0.8, 40)]
    expect(footRoom(input(coats, { profile: bottle, footLineMm: 8 })).hangingMm).toBeGreaterThan(0.3)
    expect(footRoom(input([full('a', 0.8, 40)])).hangingMm).toBe(0)
  })
})

describe('no grounds, no green', () => {
  test('an untested glaze is unknown however thin', () => {
    const room = footRoom(input([full('a', 0.05, null)]))
    expect(room).toMatchObject({ verdict: 'unknown', doubts: ['noTest'], untestedGlazes: ['a'] })
  })
  test('what is known to run over stays over beside an untested glaze', () => {
    const room = footRoom(input([full('a', 1.5, 60), coat('b', 60, 90, 0.3, null)]))
    expect(room.verdict).toBe('over')
    expect(room.doubts).toContain('noTest')
  })
  test('a pair never fired takes the green away, and is named in its order', () => {
    const coats = [full('a', 0.3, 4), full('b', 0.2, 4)]
    expect(footRoom(input(coats)).verdict).toBe('clear')
    const reversed = footRoom(input(coats, { provedPairs: [{ under: 'b', over: 'a' }] }))
    expect(reversed.verdict).toBe('unknown')
    expect(reversed.untried).toEqual([{ under: 'a', over: 'b' }])
  })
  test('a flat is not judged', () => {
    const plate = outlineOf({ form: 'plate', heightMm: 28, rimMm: 240, wallMm: 6, footLineMm: 6 })
    const room = footRoom(input([coat('a', 6, 28, 1.5, 60)], { profile: plate }))
    expect(room).toMatchObject({ verdict: 'unknown', doubts: ['flat'] })
  })
  test('a bowl is', () => {
    const bowl = outlineOf({ form: 'bowl', heightMm: 70, rimMm: 150, wallMm: 5.5, footLineMm: 7 })
    expect(footRoom(input([coat('a', 7, 70, 0.5, 6)], { profile: bowl, footLineMm: 7 })).verdict).toBe(
      'clear',
    )
  })
})

test('an overlap line that comes right behind the front never hides the run', () => {
  for (let dose = 30; dose <= 70; dose += 0.5) {
    const stack = [coat('a', 6, 90, 0.59, 5.6), coat('b', 26, 90, 0.06, dose)]
    const room = footRoom(input(stack))
    expect(room.runMm, `${dose}`).toBeGreaterThan(0.45)
    expect(room.marginRunMm).toBeGreaterThanOrEqual(2 * room.runMm - 1e-9)
    if (room.marginShelfMl > 0.05) expect(room.verdict).toBe('over')
  }
})

test('a smear too thin to be a film is no front', () => {
  const melt = layCoats(
    pathAlong(downwards(mug, 'outside'), 84, 0.2),
    downwards(mug, 'outside'),
    [full('a', 0.5, 0.1)],
    false,
  )
  const front = frontMm(melt)
  melt.thickMm[melt.path.cells - 2] = 1e-323
  melt.thickMm[melt.path.cells - 1] = 5e-324
  expect(frontMm(melt)).toBe(front)
})
