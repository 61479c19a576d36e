import { describe, expect, it } from 'vitest'
import { paceOf } from '../../../src/table/order/pace.ts'
import { potId, twelve } from '../../fixtures/twelve.ts'
import { Play } from './play.ts'

const MIN_S = 60

/** Dips of one bucket, one after another, each so much later than the hands were free, s. */
function dipped(laterS: readonly number[]): Play {
  const play = new Play()
  for (const [i, events] of twelve(['GB'], laterS.length).entries()) play.append(events, `laid-${i}`)
  play.wait(3600)
  laterS.forEach((later, i) => {
    if (i % 3 === 0) play.act({ do: 'stirred', bucketId: 'G' })
    play
      .wait(later)
      .act({ do: 'start', potId: potId(i + 1), again: false, unstirred: true })
      .wait(MIN_S)
  })
  return play
}

describe('the pace of the hands', () => {
  it('is the bare work before any hit, and of punctual hands', () => {
    expect(paceOf(new Play().table)).toMatchObject({ dipS: 0, stirS: 0 })
    expect(paceOf(dipped([0, 0, 0, 0]).table)).toMatchObject({ dipS: 0 })
  })

  it('comes near to what the hits show, the more of them the nearer', () => {
    const [few, many] = [2, 9].map((n) => paceOf(dipped(Array.from({ length: n }, () => 40)).table).dipS)
    expect(few).toBeCloseTo((2 * 40) / 5)
    expect(many).toBeCloseTo((9 * 40) / 12)
    expect(paceOf(dipped([40, 40, 40]).table, 1).dipS).toBe(0)
  })

  it('takes no interruption for a pace', () => {
    const steady = dipped([30, 30, 30, 30, 30])
    const called = dipped([30, 30, 30, 600, 30, 30])
    expect(paceOf(called.table).dipS).toBeCloseTo(paceOf(steady.table).dipS)
    expect(Math.max(...paceOf(called.table).seenS)).toBeLessThan(300)
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
    expect(paceOf(play.table).stirS).toBe(paceOf(play.table).dipS)
  })
})
