import { describe, expect, test } from 'vitest'
import type { CoatFacts, ShapeFacts } from '../../../shared/nouns.ts'
import { mended, type Remedy, remediesFor } from '../../../src/table/advice/remedies.ts'
import { warningsFor } from '../../../src/table/advice/warnings.ts'
import { footOf } from '../../../src/table/fired/foot.ts'
import { forecastOf } from '../../../src/table/forecast/forecast.ts'
import { dipNow, zonesWith } from '../../../src/table/forecast/hypothetical-dip.ts'
import { planOf } from '../../../src/table/model/plan.ts'
import { Play } from './play.ts'

const GATEPOST = 'demo.gatepost'
const BRACKWATER = 'demo.brackwater'

/** Demo pot `number` with the coats before `coat` on it, each as soon as the one below takes a touch. */
function upTo(number: number, coat: number, plan?: readonly CoatFacts[], shape?: Partial<ShapeFacts>): Play {
  const play = new Play().act({ do: 'lay-demo' })
  const potId = `demo.${number}`
  const { facts } = play.table.pots[potId]!
  if (shape) play.act({ do: 'set-pot', pot: { ...facts, shape: { ...facts.shape, ...shape } } })
  if (plan) play.act({ do: 'set-plan', potId, coats: plan })
  for (let i = 0; i < coat; i++) {
    play.act({ do: 'logged', potId, agoMin: 0 })
    play.nowMs = forecastOf(play.table, play.table.pots[potId]!)!.touch.likely
    play.act({ do: 'touched', potIds: [potId], dry: true })
  }
  return play
}

function at(play: Play, number: number) {
  const pot = play.table.pots[`demo.${number}`]!
  const bucketId = planOf(play.table, pot)[pot.dips.length]!.bucketId
  const dip = dipNow(play.table, pot, bucketId, play.nowMs)!
  const verdict = footOf(play.table, pot, zonesWith(play.table, pot, dip)!).room.verdict
  const run = warningsFor(play.table, pot, bucketId, play.nowMs).find(({ kind }) => kind === 'run')
  return { pot, verdict, run, remedies: remediesFor(play.table, pot, dip) }
}

const of = <K extends Remedy['is']>(remedies: readonly Remedy[], is: K) =>
  remedies.find((one): one is Extract<Remedy, { is: K }> => one.is === is)

const coat = (bucketId: string, cover: CoatFacts['cover'], holdS: number): CoatFacts => ({
  bucketId,
  cover,
  holdS,
})
const FULL = [
  coat(GATEPOST, { kind: 'inside' }, 3),
  coat(GATEPOST, { kind: 'full' }, 4),
  coat(BRACKWATER, { kind: 'full' }, 3),
]

describe('short foot room (scenario 7)', () => {
  test('Brackwater to full depth on 35, 4 mm bare, is warned of before dipping', () => {
    const { verdict, run } = at(upTo(35, 2, FULL), 35)
    expect(verdict).toBe('over')
    expect(run).toMatchObject({ grade: 'over', carried: false })
    expect(run && 'roomMm' in run ? run.roomMm : 0).toBeCloseTo(4, -0.5)
    expect(run && 'edgeUpMm' in run ? run.edgeUpMm : 0).toBeGreaterThan(4)
  })

  test('a higher edge, another stack, a slab: each is offered, and does what it says', () => {
    const play = upTo(35, 2, FULL)
    const { pot, run, remedies } = at(play, 35)
    const edge = of(remedies, 'edge')!
    expect(run && 'edgeUpMm' in run ? run.edgeUpMm : undefined).toBe(edge.edgeUpMm)
    const coats = mended(planOf(play.table, pot), edge)
    expect(coats[2]).toEqual(coat(BRACKWATER, { kind: 'downTo', edgeUpMm: edge.edgeUpMm }, 3))
    play.act({ do: 'set-plan', potId: 'demo.35', coats })
    expect(at(play, 35).verdict).toBe(edge.reaches)
    expect(of(remedies, 'stack')).toMatchObject({ stackId: 'demo.doorstep' })
    expect(of(remedies, 'slab')!.ml).toBeGreaterThan(0.05)
    expect(of(remedies, 'skip')).toBeDefined()
  })

  test('fewer seconds are offered where the wall still drinks', () => {
    const play = upTo(31, 0, [coat(BRACKWATER, { kind: 'full' }, 10)], { wallMm: 8 })
    const { pot, verdict, remedies } = at(play, 31)
    expect(verdict).toBe('over')
    const seconds = of(remedies, 'seconds')!
    expect(seconds.coat.holdS).toBeGreaterThan(0)
    expect(seconds.coat.holdS).toBeLessThan(10)
    play.act({ do: 'set-plan', potId: 'demo.31', coats: mended(planOf(play.table, pot), seconds) })
    expect(at(play, 31).verdict).toBe(seconds.reaches)
  })

  test('on its slab it is said to run, and nothing more is asked', () => {
    const play = upTo(35, 2, FULL).act({ do: 'set-slab', potId: 'demo.35', slab: true })
    const { run, remedies } = at(play, 35)
    expect(run).toMatchObject({ grade: 'near', slab: true })
    expect(of(remedies, 'slab')).toBeUndefined()
    play.act({ do: 'take-back' })
    expect(at(play, 35).run).toMatchObject({ grade: 'over' })
  })

  test('an edge is not offered where it would leave the inside bare', () => {
    const play = upTo(31, 0, [coat(BRACKWATER, { kind: 'full' }, 10)], { wallMm: 8 })
    const { verdict, remedies } = at(play, 31)
    expect(verdict).not.toBe('clear')
    expect(of(remedies, 'edge')).toBeUndefined()
  })

  test('without a flow tile nothing is promised', () => {
    const play = upTo(35, 2, FULL)
    for (const tileId of Object.keys(play.table.tiles)) play.act({ do: 'remove-tile', tileId })
    const { run, remedies } = at(play, 35)
    expect(run).toMatchObject({ grade: 'unknown' })
    expect(remedies).toEqual([])
  })
})

/** Computed by us with the demo's invented tiles: a record of what the demo tells, not a check of the physics. */
describe('what the demo tells of the foot', () => {
  test.each([
    [31, 'near'],
    [32, 'near'],
    [33, 'clear'],
    [34, 'clear'],
    [35, 'over'],
    [36, 'clear'],
    [37, 'clear'],
    [38, 'clear'],
  ])('pot %d before its second glaze: %s', (number, verdict) => {
    expect(at(upTo(number, number === 35 ? 2 : 1), number).verdict).toBe(verdict)
  })

  test('without the tiles of the pair the larger dose holds, and every one of them is over', () => {
    const play = upTo(31, 1)
    for (const { tileId, underId } of Object.values(play.table.tiles))
      if (underId !== undefined) play.act({ do: 'remove-tile', tileId })
    expect(at(play, 31).verdict).toBe('over')
  })
})
