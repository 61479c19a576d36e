/** Laws of a proposed load, whatever kiln and pots: checked by plain geometry of their own. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Kiln, LoadInput, LoadLevel, LoadPlan, PlacedItem } from '../../src/engine/kiln/contract.ts'
import { CLEARANCES } from '../../src/engine/kiln/contract.ts'
import { firstLoad, proposeLoad } from '../../src/engine/kiln/propose.ts'
import { BOX, HALVES, loadOf, mixedPots, RIDERS, ROUND, withHoles } from '../fixtures/kiln/loads.ts'

/** A proposal is a search: PROVE_RUNS of other laws would take days. */
const FULL = process.env.PROVE === '1'
const RUNS = { numRuns: FULL ? 1500 : 15 }
const HAIR_MM = 0.05 + 1e-6

const reach = (one: PlacedItem) => Math.max(one.bellyRadiusMm, one.footRadiusMm)

const roundKiln = fc
  .record({
    diameterMm: fc.integer({ min: 260, max: 900 }),
    heightMm: fc.integer({ min: 250, max: 1100 }),
    lessMm: fc.integer({ min: 0, max: 80 }),
    count: fc.integer({ min: 1, max: 8 }),
    half: fc.constantFrom('none', 'half', 'both'),
    each: fc.constantFrom(3, 6, 12),
  })
  .map(({ diameterMm, heightMm, lessMm, count, half, each }): Kiln => {
    const size = { widthMm: diameterMm - lessMm, depthMm: diameterMm - lessMm, thickMm: 16, count }
    const whole = { id: 'whole', kind: 'round' as const, ...size }
    const cut = { id: 'half', kind: 'halfRound' as const, ...size, count: 2 * count }
    return {
      ...ROUND,
      chamber: { kind: 'round', diameterMm, heightMm },
      shelves: half === 'none' ? [whole] : half === 'half' ? [cut] : [whole, cut],
      posts: [75, 100, 150, 200, 250].map((lengthMm) => ({ lengthMm, count: each })),
    }
  })

const boxKiln = fc
  .record({
    widthMm: fc.integer({ min: 260, max: 800 }),
    depthMm: fc.integer({ min: 260, max: 800 }),
    heightMm: fc.integer({ min: 250, max: 1000 }),
    lessMm: fc.integer({ min: 0, max: 80 }),
    half: fc.boolean(),
  })
  .map(({ widthMm, depthMm, heightMm, lessMm, half }): Kiln => {
    const size = { widthMm: widthMm - lessMm, depthMm: depthMm - lessMm, thickMm: 18, count: 6 }
    return {
      ...BOX,
      chamber: { kind: 'box', widthMm, depthMm, heightMm, elements: ['left', 'right'] },
      shelves: [{ id: 'b', kind: half ? 'halfBox' : 'box', ...size }],
    }
  })

const input = fc
  .record({
    kiln: fc.oneof(roundKiln, boxKiln),
    holes: fc.boolean(),
    count: fc.integer({ min: 0, max: 26 }),
    seed: fc.integer({ min: 1, max: 1e6 }),
  })
  .map(({ kiln, holes, count, seed }) => {
    const pots = mixedPots(count, seed)
    // Pots that only their names tell apart.
    const twins = pots.slice(0, 3).map((pot) => ({ ...pot, id: `${pot.id} again` }))
    return loadOf(holes ? withHoles(kiln) : kiln, [...pots, ...twins], {
      loadId: `load-${seed}`,
      specials: holes ? RIDERS : [],
    })
  })

/** Everything that is wrong with how one item stands on a level, in words. */
function wrongs(kiln: Kiln, level: LoadLevel, item: PlacedItem): string[] {
  const { chamber } = kiln
  const shelf = kiln.shelves.find(({ id }) => id === level.shelfId)!
  const wrong: string[] = []
  const say = (what: string, lackMm: number) => {
    if (lackMm > HAIR_MM) wrong.push(`${item.id} ${what} by ${lackMm}`)
  }
  const out = Math.hypot(item.xMm, item.yMm)
  const foot = item.footRadiusMm + CLEARANCES.edgeMm
  if (shelf.kind.endsWith('ound')) say('over the rim', out + foot - shelf.widthMm / 2)
  else {
    say('over the side', Math.abs(item.xMm) + foot - shelf.widthMm / 2)
    say('over the front or back', Math.abs(item.yMm) + foot - shelf.depthMm / 2)
  }
  if (level.column !== 'whole') {
    const inside = level.column === 'left' ? -item.xMm : item.xMm
    say('over the cut', foot - inside)
    say('in the other column', reach(item) + CLEARANCES.gapMm / 2 - inside)
  }
  if (chamber.kind === 'round')
    say('at the wall', out + reach(item) + CLEARANCES.elementMm - chamber.diameterMm / 2)
  else {
    say('at an element', Math.abs(item.xMm) + reach(item) + CLEARANCES.elementMm - chamber.widthMm / 2)
    say('at a wall', Math.abs(item.yMm) + reach(item) + CLEARANCES.gapMm - chamber.depthMm / 2)
  }
  for (const post of level.posts)
    say(
      'at a post',
      27 + reach(item) + CLEARANCES.gapMm - Math.hypot(post.xMm - item.xMm, post.yMm - item.yMm),
    )
  for (const other of level.items)
    if (other.id !== item.id)
      say(
        `too near to ${other.id}`,
        reach(item) +
          reach(other) +
          CLEARANCES.gapMm -
          Math.hypot(other.xMm - item.xMm, other.yMm - item.yMm),
      )
  say('too tall', item.heightMm + (level.postMm.length > 0 ? CLEARANCES.headspaceMm : 0) - level.freeMm)
  say('at the lid', level.upMm + item.heightMm + CLEARANCES.lidMm - chamber.heightMm)
  const tip = kiln.thermocouple
  const high = tip && level.upMm < tip.upMm + CLEARANCES.thermocoupleMm
  if (tip && high && level.upMm + item.heightMm > tip.upMm - CLEARANCES.thermocoupleMm + HAIR_MM) {
    const turn = (tip.angleDeg * Math.PI) / 180
    const [ux, uy] = [-Math.sin(turn), Math.cos(turn)]
    const wallMm =
      chamber.kind === 'round'
        ? chamber.diameterMm / 2
        : Math.min(Math.abs(chamber.widthMm / 2 / ux), Math.abs(chamber.depthMm / 2 / uy))
    const far = wallMm - tip.reachMm
    const nearMm = Math.hypot(item.xMm - far * ux, item.yMm - far * uy)
    say('at the thermocouple', CLEARANCES.thermocoupleMm + reach(item) - nearMm)
  }
  return wrong
}

const allWrongs = (kiln: Kiln, plan: LoadPlan) =>
  plan.levels.flatMap((level) => level.items.flatMap((item) => wrongs(kiln, level, item)))
const idsOf = ({ levels, leftOut }: LoadPlan) =>
  [...levels.flatMap(({ items }) => items), ...leftOut].map(({ id }) => id).sort()
const spotsOf = ({ levels }: LoadPlan) =>
  levels.map(({ upMm, items }) =>
    items.map(({ xMm, yMm, heightMm, bellyRadiusMm, place }) => [
      upMm,
      xMm,
      yMm,
      heightMm,
      bellyRadiusMm,
      place,
    ]),
  )

describe('whatever kiln and pots', () => {
  test('nothing overlaps, stands over an edge or meets wall, post, lid or thermocouple; every item is there once', () => {
    fc.assert(
      fc.property(input, (load) => {
        const plan = firstLoad(load)
        expect(allWrongs(load.kiln, plan)).toEqual([])
        expect(idsOf(plan)).toEqual([...load.pots, ...load.specials].map(({ id }) => id).sort())
      }),
      RUNS,
    )
  })

  test('no shelf or post is used that is not there, levels stand on each other and are numbered from below', () => {
    fc.assert(
      fc.property(input, (load) => {
        const { levels } = firstLoad(load)
        const [shelves, posts] = [new Map<string, number>(), new Map<number, number>()]
        for (const { shelfId, postMm } of levels) {
          shelves.set(shelfId, (shelves.get(shelfId) ?? 0) + 1)
          for (const piece of postMm) posts.set(piece, (posts.get(piece) ?? 0) + 3)
        }
        for (const shelf of load.kiln.shelves)
          expect(shelves.get(shelf.id) ?? 0).toBeLessThanOrEqual(shelf.count)
        for (const { lengthMm, count } of load.kiln.posts)
          expect(posts.get(lengthMm) ?? 0).toBeLessThanOrEqual(count)
        expect(levels.map(({ number }) => number)).toEqual(levels.map((_, k) => k + 1))
        expect(levels.map(({ upMm }) => upMm)).toEqual(levels.map(({ upMm }) => upMm).sort((a, b) => a - b))
        for (const { number, items } of levels)
          for (const [k, { place }] of items.filter((item) => item.kind !== 'cones').entries())
            expect(place).toBe(`${number}.${k + 1}`)
        for (const level of levels) {
          const above = levels.find((one) => one.column === level.column && one.storey === level.storey + 1)
          const thick = load.kiln.shelves[0]!.thickMm
          if (above && level.column === above.column)
            expect(above.upMm).toBeCloseTo(level.upMm + level.postMm.reduce((a, b) => a + b, 0) + thick, 6)
        }
      }),
      RUNS,
    )
  })

  test('in another order it is the same load, with other names the same places', () => {
    fc.assert(
      fc.property(input, (load) => {
        const plan = firstLoad(load)
        const turned = { ...load, pots: [...load.pots].reverse(), specials: [...load.specials].reverse() }
        expect(firstLoad(turned)).toEqual(plan)
        const renamed = { ...load, pots: load.pots.map((pot) => ({ ...pot, id: `z${pot.id}` })) }
        expect(spotsOf(firstLoad(renamed))).toEqual(spotsOf(plan))
      }),
      RUNS,
    )
  })

  test('a spy hole sees the cones wherever one looks in over the lowest shelf', () => {
    fc.assert(
      fc.property(input, fc.double({ min: 0, max: 1, noNaN: true }), (load, up) => {
        const { chamber, clearances, shelves } = load.kiln
        const leastMm = clearances.firstShelfMm + shelves[0]!.thickMm
        const mostMm = chamber.heightMm - clearances.lidMm - 120
        const kiln = {
          ...load.kiln,
          spyHoles: [{ upMm: leastMm + up * Math.max(0, mostMm - leastMm), angleDeg: 0 }],
        }
        const plan = proposeLoad({ ...load, kiln, specials: RIDERS })
        if (plan.levels.length === 0) return
        expect(plan.unseen).toEqual([])
        expect(plan.leftOut.map(({ id }) => id)).not.toContain('cones')
      }),
      { numRuns: FULL ? 300 : 15 },
    )
  })

  test('it is no better than its bounds', () => {
    fc.assert(
      fc.property(input, (load) => {
        const { levels, leftOut, heightMm, bound } = firstLoad(load)
        if (leftOut.length > 0 || levels.length === 0) return
        const counted = levels.reduce((sum, { column }) => sum + (column === 'whole' ? 1 : 0.5), 0)
        expect(counted).toBeGreaterThanOrEqual(bound.levels)
        expect(heightMm).toBeGreaterThanOrEqual(bound.heightMm - 1e-6)
      }),
      RUNS,
    )
  })

  test('what is pinned stays, whatever one of them is moved to, and loaded levels stay as they are', () => {
    fc.assert(
      fc.property(input, fc.double({ min: -150, max: 150, noNaN: true }), (load, xMm) => {
        const plan = firstLoad(load)
        const first = plan.levels[0]
        const second = plan.levels.find(({ number }) => number === 2)
        if (!first || !second?.items[0]) return
        const loaded = [
          {
            ...first,
            items: first.items.map(({ id, xMm, yMm, place }) => ({
              id,
              xMm,
              yMm,
              ...(place === null ? {} : { place }),
            })),
          },
        ]
        const { column, storey } = second
        const pinned = second.items.slice(0, 3).map(({ id, xMm, yMm }) => ({ id, column, storey, xMm, yMm }))
        const moved = [{ ...pinned[0]!, xMm }, ...pinned.slice(1)]
        const again = firstLoad({ ...load, loaded, pinned: moved })
        const level = again.levels.find(({ number }) => number === first.number)!
        const told = (items: readonly PlacedItem[]) =>
          items.map(({ id, xMm, yMm, place }) => [id, xMm, yMm, place])
        expect(level.loaded).toBe(true)
        expect(told(level.items)).toEqual(told(first.items))
        for (const pin of moved) {
          const at = again.levels.find((one) => one.column === column && one.storey === storey)
          const item = at?.items.find(({ id }) => id === pin.id)
          expect([item?.xMm, item?.yMm, item?.pinned]).toEqual([pin.xMm, pin.yMm, true])
        }
        expect(idsOf(again)).toEqual(idsOf(plan))
      }),
      RUNS,
    )
  })
})

describe('what cannot be', () => {
  const sound = loadOf(withHoles(ROUND), mixedPots(3, 1), { specials: RIDERS })
  const wrong = fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, -1, 1e9)
  const places: readonly (readonly [string, (value: number) => LoadInput])[] = [
    ['heightMm', (value) => ({ ...sound, pots: [{ ...sound.pots[0]!, heightMm: value }] })],
    ['bellyRadiusMm', (value) => ({ ...sound, pots: [{ ...sound.pots[0]!, bellyRadiusMm: value }] })],
    ['footRadiusMm', (value) => ({ ...sound, pots: [{ ...sound.pots[0]!, footRadiusMm: value }] })],
    ['marginShelfMl', (value) => ({ ...sound, pots: [{ ...sound.pots[0]!, marginShelfMl: value }] })],
    ['radiusMm', (value) => ({ ...sound, specials: [{ ...RIDERS[0]!, radiusMm: value }] })],
    ['lengthMm', (value) => ({ ...sound, kiln: { ...ROUND, posts: [{ lengthMm: value, count: 3 }] } })],
    ['count', (value) => ({ ...sound, kiln: { ...ROUND, posts: [{ lengthMm: 100, count: value }] } })],
    [
      'widthMm',
      (value) => ({ ...sound, kiln: { ...ROUND, shelves: [{ ...ROUND.shelves[0]!, widthMm: value }] } }),
    ],
    [
      'chamber.heightMm',
      (value) => ({ ...sound, kiln: { ...ROUND, chamber: { ...ROUND.chamber, heightMm: value } } }),
    ],
    [
      'thermocouple.upMm',
      (value) => ({ ...sound, kiln: { ...ROUND, thermocouple: { upMm: value, angleDeg: 0, reachMm: 30 } } }),
    ],
    [
      'clearances.gapMm',
      (value) => ({ ...sound, kiln: { ...ROUND, clearances: { ...CLEARANCES, gapMm: value } } }),
    ],
  ]

  test.each(places)('%s is refused with its value and range', (field, made) => {
    fc.assert(
      fc.property(wrong, (value) => {
        expect(() => proposeLoad(made(value))).toThrow(RangeError)
        expect(() => proposeLoad(made(value))).toThrow(
          new RegExp(`${field} is ${value}.*: must be from`.replace('+', '\\+')),
        )
      }),
    )
  })

  test('a loaded level on posts of no length, on a shelf that is not there', () => {
    const level = {
      column: 'whole',
      storey: 1,
      number: 1,
      shelfId: 'r',
      postMm: [Number.NaN],
      items: [],
    } as const
    expect(() => proposeLoad({ ...sound, loaded: [level] })).toThrow('postMm is NaN: must be from 5 to 5000')
    expect(() => proposeLoad({ ...sound, loaded: [{ ...level, shelfId: 'x', postMm: [] }] })).toThrow(
      'shelfId is x: must be one of r',
    )
  })

  test('a pot twice, two posts, a shelf larger than the chamber, a pin of nothing', () => {
    const [pot] = sound.pots
    const pin = { id: 'nobody', column: 'whole', storey: 1, xMm: 0, yMm: 0 } as const
    expect(() => proposeLoad({ ...sound, pots: [pot!, pot!] })).toThrow('pots and specials holds 1 twice')
    expect(() => proposeLoad({ ...sound, kiln: { ...ROUND, posts: [{ lengthMm: 100, count: 2 }] } })).toThrow(
      'posts.0.count is 2: must be from 3 to 1000',
    )
    expect(() =>
      proposeLoad({
        ...sound,
        kiln: { ...ROUND, shelves: [{ ...ROUND.shelves[0]!, widthMm: 600, depthMm: 600 }] },
      }),
    ).toThrow('shelves.0.widthMm is 600: must be from 50 to 590')
    expect(() => proposeLoad({ ...sound, pinned: [pin] })).toThrow('nobody')
    expect(() =>
      proposeLoad({
        ...sound,
        pinned: [
          { ...pin, id: '1' },
          { ...pin, id: '1' },
        ],
      }),
    ).toThrow('holds 1 twice')
  })
})

test('four hundred pots are answered within a second of work', () => {
  for (const kiln of FULL ? [ROUND, BOX, HALVES] : [ROUND]) {
    const load = loadOf(withHoles(kiln), mixedPots(400, 3), { specials: RIDERS })
    const before = process.cpuUsage().user
    const plan = firstLoad(load)
    expect((process.cpuUsage().user - before) / 1000).toBeLessThan(1000)
    expect(idsOf(plan)).toHaveLength(402)
    expect(allWrongs(load.kiln, plan)).toEqual([])
  }
})
