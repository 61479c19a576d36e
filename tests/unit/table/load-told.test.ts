import { describe, expect, test } from 'vitest'
import { firstLoad, proposeLoad } from '../../../src/engine/kiln/propose.ts'
import { candlingSteps } from '../../../src/table/load/candle.ts'
import { KILN_SIZES } from '../../../src/table/load/kiln-sizes.ts'
import { conesSeen } from '../../../src/table/load/kiln-space.ts'
import { levelView } from '../../../src/table/load/level-view.ts'
import { clearSince, isCandled, levelsOf, potsIn } from '../../../src/table/load/loads.ts'
import { laidOut } from '../../../src/table/load/plan-events.ts'
import { leftOutInput, loadInput } from '../../../src/table/load/proposal.ts'
import { potsLeftOut } from '../../../src/table/load/to-load.ts'
import type { LevelState } from '../../../src/table/model/load-state.ts'
import { begun, loadOf, planOf, proposed } from './kiln-play.ts'
import type { Play } from './play.ts'

const highOf = ({ postMm }: LevelState): number => postMm.reduce((sum, one) => sum + one, 0)

/** What stands in the way of 35 at a place on the first shelf, as it is told. */
function against(play: Play, xMm: number, yMm: number) {
  const { loadId } = loadOf(play)
  play.act({ do: 'stand', loadId, key: 'demo.35', at: { column: 'whole', storey: 1, xMm, yMm } })
  const [level] = levelsOf(loadOf(play))
  if (!level) throw new Error('no level')
  return levelView(play.table, loadOf(play), level)?.against.filter(({ one }) => one.key === 'demo.35')
}

describe('what is against a place that a hand chose is said', () => {
  test('the wall, the thermocouple, the shelf above', () => {
    const play = proposed(3)
    for (const level of levelsOf(loadOf(play)))
      expect(levelView(play.table, loadOf(play), level)?.against).toEqual([])
    const facts = play.table.pots['demo.35']?.facts
    if (!facts) throw new Error('no 35')
    const sized = (shape: Partial<typeof facts.shape>, hit: string) =>
      play.append([{ kind: 'pot-set', pot: { ...facts, shape: { ...facts.shape, ...shape } } }], hit)
    sized({ rimMm: 240, footMm: 80 }, 'wide')
    // 460 across less 25 on either side: a rim of 240 stands at most 85 from the middle.
    expect(against(play, 0, 100)).toMatchObject([{ kind: 'wall' }])
    expect(against(play, 0, 100)?.[0]?.mm).toBeCloseTo(15, 1)
    sized({ heightMm: 400 }, 'tall')
    const [level] = levelsOf(loadOf(play))
    const postMm = level ? highOf(level) : 0
    expect(postMm).toBeGreaterThan(0)
    const [tall] = against(play, 0, 0) ?? []
    expect(tall).toMatchObject({ kind: 'tall' })
    // Its slab, and headspace of half an inch.
    expect(tall?.mm).toBeCloseTo(400 + 10 + 12.7 - postMm, 1)
    sized({ heightMm: 280 }, 'at the tip')
    play.append(
      [
        {
          kind: 'shelf-set',
          loadId: loadOf(play).loadId,
          column: 'whole',
          storey: 1,
          number: 1,
          shelfId: 's1',
          postMm: [],
          posts: [],
        },
      ],
      'top',
    )
    expect(against(play, 0, -110)?.map(({ kind }) => kind)).toContain('thermocouple')
  })

  test('cones that no spy hole sees', () => {
    const play = proposed(3)
    expect(conesSeen(loadOf(play))).toBe(true)
    const { loadId, levels } = loadOf(play)
    const top = Math.max(...Object.values(levels).map(({ storey }) => storey))
    expect(top).toBeGreaterThan(1)
    for (let storey = 1; storey <= top; storey++) {
      play.act({ do: 'stand', loadId, key: '~cones', at: { column: 'whole', storey, xMm: 0, yMm: 0 } })
      const { things } = loadOf(play)
      const [hole] = KILN_SIZES.round.spyHoles
      const below = levelsOf(loadOf(play)).slice(0, storey - 1)
      const upMm = below.reduce((sum, level) => sum + 16 + highOf(level), 25 + 16)
      const level = levelsOf(loadOf(play))[storey - 1]
      const freeMm = level?.postMm.length ? highOf(level) : 560 - 25 - upMm
      const sees = hole !== undefined && hole.upMm >= upMm && hole.upMm <= upMm + freeMm
      expect(things['~cones']).toMatchObject({ storey })
      expect(conesSeen(loadOf(play)), `${storey}`).toBe(sees)
    }
  })
})

describe('why pots are in no place is told of the load alone', () => {
  const why = (play: Play) => {
    const plan = proposeLoad(leftOutInput(play.table, loadOf(play), play.nowMs))
    const whys = new Map(plan.leftOut.map((one) => [one.id, one.why]))
    return potsLeftOut(play.table, loadOf(play)).map(({ facts }) => [facts.number, whys.get(facts.potId)])
  }

  test('by pots that stand as they were laid out', () => {
    const play = begun(5, 'small')
    play.act({ do: 'set-slab', potId: 'demo.31', slab: false })
    const plan = planOf(play)
    play.act({ do: 'lay-out', loadId: loadOf(play).loadId, plan })
    const told = new Map(plan.leftOut.map((one) => [one.id, one.why]))
    const pots = potsLeftOut(play.table, loadOf(play))
    expect(pots.length).toBeGreaterThan(3)
    expect(pots.map(({ facts }) => facts.potId).sort()).toEqual(
      [...told.keys()].filter((id) => !id.startsWith('~')).sort(),
    )
    const again = why(play)
    expect(again).toContainEqual([31, 'noSlab'])
    expect(again.every(([, code]) => code !== undefined)).toBe(true)
    play.act({ do: 'set-slab', potId: 'demo.31', slab: true })
    expect(why(play)).not.toContainEqual([31, 'noSlab'])
  })
})

test('the first answer is drawn as it would be laid out, pinned pots and loaded shelves as they are', () => {
  const play = proposed(5, 'wide')
  const { loadId } = loadOf(play)
  play.act({ do: 'load-shelf', loadId, column: 'whole', storey: 1 })
  const [key = ''] = Object.entries(loadOf(play).things).find(([, { storey }]) => storey === 2) ?? []
  play.act({ do: 'stand', loadId, key, at: { column: 'whole', storey: 2, xMm: 10, yMm: 20 } })
  const load = loadOf(play)
  const input = loadInput(play.table, load, play.nowMs)
  const drawn = laidOut(play.table, load, firstLoad(input))
  play.act({ do: 'lay-out', loadId, plan: proposeLoad(input) })
  for (const { things } of [drawn, loadOf(play)]) {
    expect(things[key]).toMatchObject({ storey: 2, xMm: 10, yMm: 20, pinned: true })
    for (const [id, thing] of Object.entries(load.things)) if (thing.place) expect(things[id]).toEqual(thing)
  }
  expect(Object.keys(drawn.things).length).toBeGreaterThan(30)
  expect(laidOut(play.table, load, firstLoad(input))).toEqual(drawn)
  expect(load.things[key]).toBeDefined()
})

describe('candling', () => {
  const candled = (play: Play, potIds?: readonly string[]) => {
    const pots = potsIn(play.table, loadOf(play)).filter(({ facts }) => potIds?.includes(facts.potId) ?? true)
    const steps = candlingSteps(play.table, pots, play.nowMs - play.table.skewMs)
    let count = 0
    for (;;) {
      const step = steps.next()
      if (step.done) return { ...step.value, steps: count }
      count++
    }
  }
  const wet = () => {
    const play = begun(1, 'wide', 1)
    play.act({ do: 'set-candling', loadId: loadOf(play).loadId, candle: true })
    return play.act({ do: 'lay-out', loadId: loadOf(play).loadId, plan: planOf(play) })
  }

  test('takes as long as the slowest pot, and drives out the water of all', () => {
    const play = wet()
    const ids = potsIn(play.table, loadOf(play)).map(({ facts }) => facts.potId)
    expect(ids.length).toBeGreaterThan(4)
    const all = candled(play)
    const each = ids.map((id) => candled(play, [id]))
    expect(all.lateMin).toBe(Math.max(...each.map(({ lateMin }) => lateMin ?? 0)))
    expect(each.find(({ potId }) => potId === all.potId)?.lateMin).toBe(all.lateMin)
    expect(all.waterG).toBeCloseTo(
      each.reduce((sum, { waterG }) => sum + (waterG ?? 0), 0),
      6,
    )
    expect(all.steps).toBeGreaterThanOrEqual(ids.length)
    expect(all.lateMin).toBeGreaterThan(all.likelyMin ?? Infinity)
    expect(candled(play, [])).toEqual({ steps: 0 })
  })

  test('has less left the longer the pots stood', () => {
    const play = wet()
    const now = candled(play)
    const later = candled(play.wait(4 * 3600))
    expect(later.waterG).toBeLessThan(now.waterG ?? 0)
  })

  test('is over by the glass: clear from its first clear look after a fogged one', () => {
    const play = wet()
    const { loadId } = loadOf(play)
    play.act({ do: 'light', loadId }).wait(3600)
    const glass = (fogged: boolean) => play.act({ do: 'hold-glass', loadId, fogged })
    glass(false).wait(600)
    expect(clearSince(loadOf(play))).toBe(play.nowMs - 600_000 - play.table.skewMs)
    glass(true)
    expect(clearSince(loadOf(play))).toBeUndefined()
    glass(false).wait(1200)
    glass(false)
    expect(isCandled(loadOf(play))).toBe(true)
  })
})
