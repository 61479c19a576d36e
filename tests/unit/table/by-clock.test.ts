import { describe, expect, it } from 'vitest'
import { outputsOf } from '../../../src/table/card/outputs.ts'
import { lessonsUsed } from '../../../src/table/forecast/learning.ts'
import { callsAhead } from '../../../src/table/steps/calls-ahead.ts'
import { dueWhat, stepOf } from '../../../src/table/steps/steps.ts'
import { potId } from '../../fixtures/twelve.ts'
import { begun } from './planned.ts'
import { Play } from './play.ts'

const MIN_S = 60

describe('a room that goes by its own minutes', () => {
  /** One pot of two coats, the first on since 2 min. */
  const coated = () => {
    const play = begun(['GB'], 1)
    play.act({ do: 'logged', potId: potId(1), agoMin: 2 })
    return play
  }
  const pot = (play: Play) => play.table.pots[potId(1)]!

  it('waits for its next dip: nothing is to be touched', () => {
    const play = coated()
    expect(dueWhat(play.table, pot(play), stepOf(play.table, pot(play), play.nowMs))).toBe('dip')
    expect(play.card).toMatchObject({ kind: 'wait' })
    const card = play.card as Extract<typeof play.card, { kind: 'wait' }>
    expect([card.next, ...card.after].map((due) => due?.what)).not.toContain('touch')
  })

  it('starts the next coat with no touch in the record, and learns nothing of it', () => {
    const play = coated()
      .wait(12 * MIN_S)
      .act({ do: 'stirred', bucketId: 'B' })
    play.act({ do: 'start', potId: potId(1), again: false, unstirred: false })
    expect(pot(play).dips).toHaveLength(2)
    expect(pot(play).touches).toEqual([])
    expect(lessonsUsed(play.table)).toEqual([])
  })

  it('asks for no touch where no order is told either, but for one of a coat that was NOT YET dry', () => {
    const play = new Play()
    for (const event of coated().events) play.append([event.event], event.hit)
    play.nowMs = coated().nowMs + 12 * MIN_S * 1000
    expect(play.card).toMatchObject({ kind: 'stir', bucketId: 'B' })
    play.act({ do: 'touched', potIds: [potId(1)], dry: false })
    expect(play.card.kind).toBe('wait')
    expect(play.wait(15 * MIN_S).card).toMatchObject({ kind: 'ready', potIds: [potId(1)] })
  })

  it('is called when its minutes are over, until it is dipped', () => {
    const play = coated()
    expect(callsAhead(play.table, play.nowMs).map(({ pots }) => pots.length)).toEqual([1])
    play.wait(12 * MIN_S)
    expect(outputsOf(play.table, play.nowMs, play.card).calls).toMatchObject([{ potIds: [potId(1)] }])
    play.act({ do: 'stirred', bucketId: 'B' })
    play.act({ do: 'start', potId: potId(1), again: false, unstirred: false }).wait(MIN_S)
    expect(outputsOf(play.table, play.nowMs, play.card).calls).toEqual([])
  })

  it('moves a dip to another pot with no touch of the coat there', () => {
    const play = begun(['GB'], 2)
    for (const number of [1, 2]) play.act({ do: 'logged', potId: potId(number), agoMin: 2 })
    play.wait(12 * MIN_S).act({ do: 'stirred', bucketId: 'B' })
    play.act({ do: 'start', potId: potId(1), again: false, unstirred: false }).wait(MIN_S)
    play.act({ do: 'was-other-pot', dipId: pot(play).dips[1]!.dipId, potId: potId(2) })
    expect(play.table.pots[potId(2)]!.dips).toHaveLength(2)
    expect(play.table.pots[potId(2)]!.touches).toEqual([])
  })
})
