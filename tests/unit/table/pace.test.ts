import { describe, expect, it } from 'vitest'
import { demoEvents } from '../../../src/table/decide/demo.ts'
import { jobsOf } from '../../../src/table/order/jobs.ts'
import { paceOf } from '../../../src/table/order/pace.ts'
import { BARE_S } from '../../../src/table/order/steps-seen.ts'
import { potId, twelve } from '../../fixtures/twelve.ts'
import { Play } from './play.ts'

const MIN_S = 60
/** OUT at 8 s and a drip of 22 s; then bare work has half a minute for foot and set-down. */
const COUNTED_S = 30
const FOOT_S = 30

/** Dips of one bucket, one after another, each START so long after the drip of the one before, s. */
function dipped(betweenS: readonly number[], stirS = FOOT_S + MIN_S): Play {
  const play = new Play()
  for (const [i, events] of twelve(['GB'], betweenS.length).entries()) play.append(events, `laid-${i}`)
  play.wait(3600)
  betweenS.forEach((between, i) => {
    if (i % 3 === 0) play.wait(stirS).act({ do: 'stirred', bucketId: 'G' })
    play
      .wait(i % 3 === 0 ? between - FOOT_S : between)
      .act({ do: 'start', potId: potId(i + 1), again: false, unstirred: true })
      .wait(COUNTED_S)
  })
  return play
}

/** The demo evening, so many feet waxed with so long for each, s. */
function waxed(eachS: number, count: number): Play {
  const play = new Play()
  play.append(demoEvents(), 'demo')
  play.append([{ kind: 'wax-pan', is: 'on' }], 'pan')
  play.wait(20 * MIN_S)
  for (let k = 0; k < count; k++) play.wait(eachS).bar()
  return play
}

describe('the pace of the hands', () => {
  it('is the bare work before any hit, and of punctual hands', () => {
    expect(paceOf(new Play().table)).toMatchObject({
      laterS: 0,
      takesS: BARE_S,
      unseen: 1,
    })
    expect(paceOf(dipped([30, 30, 30, 30]).table).laterS).toBeCloseTo(0)
  })

  it('comes near to what the hits show, the more of them the nearer', () => {
    const [few, many] = [2, 9].map(
      (n) => paceOf(dipped(Array.from({ length: n }, () => FOOT_S + 40)).table).laterS,
    )
    expect(few).toBeCloseTo((2 * 40) / 5)
    expect(many).toBeCloseTo((9 * 40) / 12)
    expect(paceOf(dipped([70, 70, 70]).table, 1).laterS).toBe(0)
  })

  it('learns hands that are quicker than bare work, at dips and at what they do besides', () => {
    const quick = paceOf(
      dipped(
        Array.from({ length: 9 }, (_, i) => (i % 3 === 0 ? 35 : 8)),
        40,
      ).table,
    )
    expect(quick.laterS).toBeLessThan(-10)
    expect(quick.takesS.restir).toBeLessThan(45)
    // Not one bucket was opened that could be timed, but who is quick at the rest is so there.
    expect(quick.takesS.open).toBeLessThan(0.7 * 180)
    const waxing = waxed(20, 4)
    expect(paceOf(waxing.table).takesS.wax).toBeCloseTo(20, -1)
    expect(paceOf(waxing.table).takesS.open).toBeLessThan(0.8 * 180)
    expect(paceOf(waxed(60, 4).table).takesS).toEqual(BARE_S)
  })

  it('takes the order nearer to the truth within a few hits', () => {
    const waxing = waxed(20, 3)
    const { input } = jobsOf(waxing.table, waxing.nowMs)
    const [hands] = input.hands
    // Five feet are left.
    expect(hands.freeAtS - input.nowS).toBeLessThan(5 * 35)
    expect(input.pots[0]!.prep[0]!.activeS).toBeLessThan(50)
    expect(input.buckets[0]!.openS).toBeLessThan(150)
  })

  it('plans no hands quicker than a stir, a drip or a count can be', () => {
    const hasty = paceOf(
      dipped(
        Array.from({ length: 12 }, (_, i) => (i % 3 === 0 ? 30 : 0)),
        1,
      ).table,
    )
    expect(hasty.betweenS).toBeGreaterThanOrEqual(5)
    expect(hasty.takesS.open).toBeGreaterThanOrEqual(20)
    expect(hasty.takesS.restir).toBeGreaterThanOrEqual(10)
    const play = dipped(
      Array.from({ length: 12 }, (_, i) => (i % 3 === 0 ? 30 : 0)),
      1,
    )
    for (const { coats } of jobsOf(play.table, play.nowMs).input.pots)
      for (const { dipS, outAtS } of coats) {
        expect(outAtS).toBeGreaterThanOrEqual(8)
        expect(dipS).toBeGreaterThanOrEqual(COUNTED_S + 5)
      }
  })

  it('takes no interruption for a pace, nor work begun anew for an interruption', () => {
    const steady = dipped([60, 60, 60, 60, 60])
    const called = dipped([60, 60, 60, 60, 640, 60])
    expect(paceOf(called.table).laterS).toBeCloseTo(paceOf(steady.table).laterS)
    expect(Math.max(...paceOf(called.table).seenS)).toBeLessThan(330)
    expect(paceOf(called.table).pauses).toBeGreaterThan(paceOf(steady.table).pauses)
    const anew = dipped([60, 60, 60, 60, 3000, 60])
    expect(paceOf(anew.table).pauses).toBeLessThanOrEqual(0.03)
  })

  it('is still known in the next sitting, with other pots, and gives way to what that one shows', () => {
    const play = dipped(Array.from({ length: 12 }, () => 70))
    for (let k = 1; k <= 12; k++) play.append([{ kind: 'pot-gone', potId: potId(k) }], `gone-${k}`)
    play.wait(20 * 3600)
    const others = JSON.parse(JSON.stringify(twelve(['GB'], 12)).replaceAll('"t.', '"u.'))
    for (const [i, events] of (others as ReturnType<typeof twelve>).entries())
      play.append(events, `again-${i}`)
    const carried = paceOf(play.table)
    expect(carried.laterS).toBeGreaterThan(25)
    expect(carried.unseen).toBeLessThan(0.5)
    expect(carried.pauses).toBeLessThanOrEqual(0.03)
    play.act({ do: 'stirred', bucketId: 'G' })
    for (let k = 1; k <= 9; k++)
      play
        .wait(COUNTED_S + (k === 1 ? 0 : FOOT_S))
        .act({ do: 'start', potId: `u.${k}`, again: false, unstirred: true })
    expect(paceOf(play.table).laterS).toBeLessThan(0.7 * carried.laterS)
  })

  it('counts no wait for a pot as slowness of the hands', () => {
    const play = new Play()
    for (const [i, events] of twelve(['GB'], 1).entries()) play.append(events, `laid-${i}`)
    play.wait(3600).act({ do: 'stirred', bucketId: 'G' })
    play.act({ do: 'start', potId: potId(1), again: false, unstirred: false }).wait(MIN_S)
    play.act({ do: 'sponged', potId: potId(1) }).wait(9 * MIN_S)
    play.act({ do: 'stirred', bucketId: 'B' }).wait(4 * MIN_S)
    play.act({ do: 'touched', potIds: [potId(1)], dry: true })
    play.act({ do: 'start', potId: potId(1), again: false, unstirred: false })
    expect(paceOf(play.table).takesS.open).toBeCloseTo(180 + paceOf(play.table).laterS)
  })
})
