/** A proposed load: every pot once, on its shelf, clear of the others. */
import { describe, expect, test } from 'vitest'
import { build } from '../../../../src/engine/kiln/build.ts'
import type { LoadPlan, PlacedItem, PotToLoad } from '../../../../src/engine/kiln/contract.ts'
import { gapMm, troublesAt } from '../../../../src/engine/kiln/gaps.ts'
import { byOrder, itemOf, slabRadiusMm } from '../../../../src/engine/kiln/items.ts'
import { inOrder } from '../../../../src/engine/kiln/places.ts'
import { NO_HINTS } from '../../../../src/engine/kiln/problem.ts'
import { firstLoad, proposeLoad } from '../../../../src/engine/kiln/propose.ts'
import { randomFrom } from '../../../../src/engine/numeric/random.ts'
import { BOX, HALVES, loadOf, mixedPots, RIDERS, ROUND, withHoles } from '../../../fixtures/kiln/loads.ts'

const reach = (one: PlacedItem) => Math.max(one.bellyRadiusMm, one.footRadiusMm)

/** Smallest gap between two items of one level, mm. */
const nearestMm = (plan: LoadPlan) =>
  Math.min(
    ...plan.levels.flatMap(({ items }) =>
      items.flatMap((a, i) =>
        items.slice(i + 1).map((b) => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm) - reach(a) - reach(b)),
      ),
    ),
  )

describe.each([ROUND, BOX, HALVES])('in the kiln $id', (kiln) => {
  test.each([1, 20, 40])('%d pots stand once each, six millimetres apart', (count) => {
    const pots = mixedPots(count, 5)
    const plan = firstLoad(loadOf(kiln, pots))
    const ids = [...plan.levels.flatMap(({ items }) => items), ...plan.leftOut].map(({ id }) => id)
    expect(ids.sort()).toEqual(pots.map(({ id }) => id).sort())
    expect(nearestMm(plan)).toBeGreaterThan(5.95)
    for (const { items, freeMm } of plan.levels)
      for (const item of items) expect(item.heightMm).toBeLessThanOrEqual(freeMm)
  })

  test('each level of a column stands on the posts below', () => {
    const plan = firstLoad(loadOf(kiln, mixedPots(40, 5)))
    for (const level of plan.levels) {
      const above = plan.levels.find((one) => one.column === level.column && one.storey === level.storey + 1)
      const thick = kiln.shelves[0]!.thickMm
      if (above) expect(above.upMm).toBeCloseTo(level.upMm + level.postMm.reduce((a, b) => a + b, 0) + thick)
      else expect(level.postMm).toEqual([])
    }
  })
})

test('a slab is 15 mm wider than its foot, more where its ledge has to hold more', () => {
  expect(slabRadiusMm(30)).toBe(45)
  expect(slabRadiusMm(30, 1.4)).toBe(45)
  expect(slabRadiusMm(30, 10)).toBeCloseTo(Math.sqrt(900 + 5000 / Math.PI), 9)
})

test('what may not be proposed is left out and says why', () => {
  const [a, b, c] = mixedPots(3, 5)
  const plan = proposeLoad(
    loadOf(ROUND, [
      { ...a!, risk: 'over', onSlab: false },
      { ...b!, notYet: 'foot' },
      { ...c!, notYet: 'wet' },
    ]),
  )
  expect(new Map(plan.leftOut.map(({ id, why, would }) => [id, [why, would]]))).toEqual(
    new Map([
      ['1', ['noSlab', [{ kind: 'slab' }]]],
      ['2', ['foot', []]],
      ['3', ['wet', []]],
    ]),
  )
  expect(plan.levels).toEqual([])
})

const pot = (id: string, heightMm: number, bellyRadiusMm = 50, more: Partial<PotToLoad> = {}): PotToLoad => ({
  id,
  heightMm,
  bellyRadiusMm,
  footRadiusMm: 0.6 * bellyRadiusMm,
  risk: 'clear',
  onSlab: false,
  ...more,
})
const placedIn = (plan: LoadPlan, id: string) => {
  for (const level of plan.levels) {
    const item = level.items.find((one) => one.id === id)
    if (item) return { level, item }
  }
  throw new Error(`${id} is in no place`)
}

describe('what goes where', () => {
  test('too tall and too wide say how much there is room for', () => {
    const plan = firstLoad(loadOf(ROUND, [pot('tall', 650), pot('wide', 100, 280)]))
    // 690 less the lid's 25, the stilts' 25 and a shelf of 16.
    expect(plan.leftOut.find(({ id }) => id === 'tall')).toMatchObject({ why: 'tooTall', mostMm: 624 })
    // 590 less 25 from the elements on both sides.
    const wide = plan.leftOut.find(({ id }) => id === 'wide')!
    expect(wide.why).toBe('tooWide')
    expect(wide.mostMm).toBeCloseTo(540, 3)
  })

  test('runny pots stand lowest, on their slabs; the top carries nothing and is the tallest that is clear', () => {
    const plan = firstLoad(loadOf(ROUND, mixedPots(36, 4)))
    const risky = mixedPots(36, 4).filter(({ risk }) => risk !== 'clear')
    const top = plan.levels.at(-1)!
    expect(plan.levels.length).toBeGreaterThan(1)
    for (const { id } of risky.filter((one) => plan.leftOut.every((left) => left.id !== one.id)))
      expect(placedIn(plan, id).level).not.toBe(top)
    expect(top.postMm).toEqual([])
    const runny = plan.levels.map(({ items }) => items.some(({ id }) => risky.some((one) => one.id === id)))
    expect(runny.lastIndexOf(true)).toBe(runny.filter((is) => is).length - 1)
    expect(placedIn(plan, '1').item).toMatchObject({ onSlab: true })
  })

  test('posts are the shortest that reach; two on end only where something would else stay out', () => {
    const kiln = {
      ...ROUND,
      posts: [
        { lengthMm: 75, count: 6 },
        { lengthMm: 125, count: 3 },
      ],
    }
    const wide = (id: string, heightMm: number) => pot(id, heightMm, 200)
    const two = proposeLoad(loadOf(kiln, [wide('a', 110), wide('b', 60)]), 4)
    expect(two.levels.map(({ postMm }) => postMm)).toEqual([[75], []])
    const three = proposeLoad(loadOf(kiln, [wide('a', 130), wide('b', 130), wide('c', 100)]), 6)
    expect(three.leftOut).toEqual([])
    expect(three.levels.map(({ postMm }) => postMm).sort()).toEqual([[], [125], [75, 75]])
  })

  test('three posts hold one shelf, and no other', () => {
    const kiln = { ...ROUND, posts: [{ lengthMm: 125, count: 3 }] }
    const plan = proposeLoad(
      loadOf(
        kiln,
        ['a', 'b', 'c'].map((id) => pot(id, 100, 200)),
      ),
    )
    expect(plan.levels.map(({ postMm }) => postMm)).toEqual([[125], []])
    expect(plan.leftOut.map(({ why }) => why)).toEqual(['noPosts'])
  })

  test('what stays out names the posts, the shelf and the firing that would take it', () => {
    const kiln = {
      ...ROUND,
      posts: [{ lengthMm: 75, count: 3 }],
      shelves: [{ ...ROUND.shelves[0]!, count: 3 }],
    }
    const plan = proposeLoad(loadOf(kiln, [pot('a', 150, 150), pot('b', 150, 150)]), 4)
    expect(plan.leftOut).toHaveLength(1)
    expect(plan.leftOut[0]!.would).toContainEqual({ kind: 'posts', lengthMm: 175 })
    expect(plan.leftOut[0]!.would).toContainEqual({ kind: 'nextFiring', firing: 1 })
    const one = { ...ROUND, shelves: [{ ...ROUND.shelves[0]!, count: 1 }] }
    const lacks = proposeLoad(loadOf(one, [pot('a', 100, 150), pot('b', 100, 150), pot('c', 100, 150)]), 4)
    expect(lacks.leftOut.map(({ would }) => would.find(({ kind }) => kind === 'shelf'))).toContainEqual({
      kind: 'shelf',
    })
    const firings = lacks.leftOut.flatMap(({ would }) => would.filter(({ kind }) => kind === 'nextFiring'))
    expect(firings).toEqual([
      { kind: 'nextFiring', firing: 1 },
      { kind: 'nextFiring', firing: 2 },
    ])
  })

  test('room in the next firing is told beside the cones that stand in it too', () => {
    const kiln = { ...ROUND, shelves: [{ ...ROUND.shelves[0]!, count: 1 }] }
    const specials = RIDERS.filter(({ kind }) => kind === 'cones')
    const [wide, small] = [pot('wide', 100, 262), pot('small', 100, 60)]
    const { leftOut } = proposeLoad(loadOf(kiln, [wide, small], { specials }), 4)
    expect(leftOut.map(({ id }) => id)).toEqual(['wide'])
    const next = proposeLoad(loadOf(kiln, [wide], { specials }), 4)
    expect(next.leftOut.map(({ id }) => id)).toEqual(['wide'])
    expect(leftOut[0]!.would.filter(({ kind: way }) => way === 'nextFiring')).toEqual([])
  })

  test('the tallest aside is offered where others go in for it', () => {
    const low = Array.from({ length: 3 }, (_, k) => pot(`low${k}`, 170, 150))
    const plan = proposeLoad(loadOf(ROUND, [pot('tower', 560, 150), ...low]), 4)
    expect(plan.leftOut.length).toBeLessThanOrEqual(1)
    const forced = { column: 'whole', storey: 1, id: 'tower', xMm: 0, yMm: 0 } as const
    expect(
      proposeLoad(loadOf(ROUND, [pot('tower', 560, 150), ...low], { pinned: [forced] }), 4).leftOut,
    ).toHaveLength(3)
  })
})

test('what is put by hand stays to the hair while others are pressed in beside it', () => {
  for (let seed = 1; seed <= 6; seed++) {
    const pin = { id: '4', column: 'whole', storey: 1, xMm: 37, yMm: -21 } as const
    const { item } = placedIn(firstLoad(loadOf(ROUND, mixedPots(26, seed), { pinned: [pin] })), '4')
    expect([item.xMm, item.yMm]).toEqual([37, -21])
  }
})

test('a top level filled before its height is known keeps clear of the thermocouple all the same', () => {
  const kiln = withHoles(ROUND)
  for (let seed = 1; seed <= 6; seed++) {
    const order = mixedPots(24, seed).map(itemOf).sort(byOrder)
    const items = new Map(order.map((item) => [item.id, item]))
    const way = {
      order,
      wholes: Infinity,
      topFirst: true,
      sight: false,
      onEnd: false,
      roll: randomFrom(seed),
    }
    const { trays } = build({ kiln, items, pinned: [], loaded: [] }, way, NO_HINTS)
    for (const { probe, stood } of trays)
      for (const { disc, item } of stood)
        if (probe && item.heightMm > probe.overMm)
          expect(Math.hypot(disc.x - probe.disc.x, disc.y - probe.disc.y)).toBeGreaterThan(
            disc.r + probe.disc.r - 0.06,
          )
  }
})

describe('cones and tile', () => {
  test.each([ROUND, BOX, HALVES])(
    'stand in sight of a spy hole and beside each other in the kiln $id',
    (kiln) => {
      const holed = withHoles(kiln)
      const plan = proposeLoad(loadOf(holed, mixedPots(24, 2), { specials: RIDERS }), 4)
      const { level, item } = placedIn(plan, 'cones')
      expect(plan.unseen).toEqual([])
      const tipsMm = level.upMm + (item.raisedMm ?? 0) + item.heightMm
      const hole = holed.spyHoles.find(({ upMm }) => upMm >= level.upMm && upMm <= level.upMm + level.freeMm)
      expect(hole!.upMm - tipsMm).toBeLessThanOrEqual(50)
      // In front, nothing between them and the hole.
      expect(item.yMm).toBeGreaterThan(0)
      const before = level.items.filter(
        (one) => one.yMm > item.yMm && Math.abs(one.xMm - item.xMm) < reach(one) - 1,
      )
      expect(before).toEqual([])
      const tile = level.items.find(({ id }) => id === 'tile')!
      expect(Math.hypot(tile.xMm - item.xMm, tile.yMm - item.yMm)).toBeLessThan(3 * (35 + 30))
      expect(item.place).toBeNull()
      expect(tile.place).toMatch(/^\d+\.\d+$/)
    },
  )

  test('are seen whatever draws the search, at the cost of other posts', () => {
    const chamber = { kind: 'round', diameterMm: 460, heightMm: 560 } as const
    const shelves = [{ ...ROUND.shelves[0]!, widthMm: 400, depthMm: 400, count: 5 }]
    const posts = [50, 75, 100, 125, 150, 200].map((lengthMm) => ({ lengthMm, count: 6 }))
    for (const upMm of [196, 240, 300])
      for (let seed = 1; seed <= 6; seed++) {
        const kiln = { ...ROUND, chamber, shelves, posts, spyHoles: [{ upMm, angleDeg: 0 }] }
        const load = loadOf(kiln, mixedPots(20, seed), { specials: RIDERS, loadId: `load-${seed}` })
        const plan = firstLoad(load)
        expect(plan.unseen, `${upMm} ${seed}`).toEqual([])
        const { upMm: from, freeMm } = placedIn(plan, 'cones').level
        expect(from).toBeLessThanOrEqual(upMm)
        expect(from + freeMm).toBeGreaterThanOrEqual(upMm)
      }
  })

  test('cones that no hole sees are placed and told', () => {
    const plan = proposeLoad(loadOf(ROUND, mixedPots(24, 2), { specials: RIDERS }), 2)
    expect(plan.unseen).toEqual(['cones'])
    expect(placedIn(plan, 'tile').level).toBe(placedIn(plan, 'cones').level)
  })
})

describe('shelf places', () => {
  const at = (id: string, xMm: number, yMm: number) => ({ id, xMm, yMm, bellyRadiusMm: 40, footRadiusMm: 30 })
  const orderOn = (kind: 'round' | 'box', items: readonly ReturnType<typeof at>[]) =>
    inOrder({ ...ROUND.shelves[0]!, kind }, items)
      .map(({ id }) => id)
      .join('')

  test('run clockwise from the front on a round shelf, the outer ring first', () => {
    const ring = [at('e', 10, 5), at('a', -30, 180), at('c', 20, -180), at('b', -180, 0), at('d', 180, 0)]
    expect(orderOn('round', ring)).toBe('abcde')
  })

  test('run in rows from the front left on a square one', () => {
    expect(orderOn('box', [at('d', 0, -90), at('b', 95, 150), at('a', -100, 140), at('c', -100, 20)])).toBe(
      'abcd',
    )
  })

  test('that were told stay; the next takes the next free one', () => {
    const pots = [pot('a', 100), pot('b', 100), pot('c', 100)]
    const spots = [
      { id: 'a', xMm: -100, yMm: 100, place: '1.3' },
      { id: 'b', xMm: 100, yMm: 100, place: '1.1' },
      { id: 'c', xMm: 0, yMm: -100 },
    ]
    const level = {
      column: 'whole',
      storey: 1,
      number: 1,
      shelfId: 'r',
      postMm: [125],
      items: spots,
    } as const
    const plan = firstLoad(loadOf(ROUND, pots, { loaded: [level] }))
    expect(plan.levels[0]!.items.map(({ id, place }) => `${id} ${place}`).sort()).toEqual([
      'a 1.3',
      'b 1.1',
      'c 1.2',
    ])
  })
})

describe('by hand', () => {
  const plan = firstLoad(loadOf(withHoles(ROUND), [pot('a', 100)]))
  const level = plan.levels[0]!
  const [a] = level.items as [PlacedItem]
  const put = (xMm: number, yMm: number, more: Partial<PlacedItem> = {}) => ({ ...a, xMm, yMm, ...more })
  const troubles = (item: PlacedItem) => troublesAt(withHoles(ROUND), level, item)

  test('gaps are told in mm', () => {
    expect(gapMm(put(0, 0), put(103, 0))).toBeCloseTo(3)
    expect(gapMm(put(0, 0), put(0, 98))).toBeCloseTo(-2)
  })

  test('what is against a place is told, and by how much', () => {
    expect(troubles(put(150, 0))).toEqual([])
    // 265 less 5 and a foot of 30; 295 less 25 and a belly of 50.
    const [edge, wall] = troubles(put(0, 235))
    expect([edge, wall]).toMatchObject([{ kind: 'edge' }, { kind: 'wall' }])
    expect(edge!.mm).toBeCloseTo(5)
    expect(wall!.mm).toBeCloseTo(15)
    expect(troubles(put(150, 0, { heightMm: 700 })).map(({ kind }) => kind)).toContain('tall')
    const turn = (120 * Math.PI) / 180
    const tip = put(-200 * Math.sin(turn), 200 * Math.cos(turn), { heightMm: 400 })
    expect(troubles(tip).map(({ kind }) => kind)).toContain('thermocouple')
    expect(troubles({ ...tip, heightMm: 100 })).toEqual([])
  })
})
