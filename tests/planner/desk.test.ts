import { describe, expect, it } from 'vitest'
import type { Odds } from '../../src/planner/index.ts'
import { makeDesk, type Reply } from '../../src/planner/messages.ts'
import { board, bucket, exampleFour, MIN, pot } from './boards.ts'
import { generate } from './generate.ts'
import { faults } from './verify.ts'

/** A board of 40 pots that the first search leaves far from the best. */
const BOARD = 60_002

const odds: Odds = { betweenS: [0, 60], unseen: 0, slackS: 0, meanBetweenS: 0, pauses: 0, pots: {} }

/** A desk whose slices run when the test says so. */
function openDesk() {
  const replies: Reply[] = []
  const queue: (() => void)[] = []
  const resting: (() => void)[] = []
  const ask = makeDesk(
    (reply) => replies.push(reply),
    (run) => queue.push(run),
    (run) => resting.push(run),
  )
  return { replies, ask, step: () => queue.shift()?.(), queue, rest: () => resting.shift()?.() }
}

const run = (desk: ReturnType<typeof openDesk>) => {
  while (desk.queue.length > 0) desk.step()
}

const stages = ({ replies }: ReturnType<typeof openDesk>) => replies.map(({ id, stage }) => `${id} ${stage}`)

describe('the desk of the worker', () => {
  it('answers at once and after the search; a proven order is not searched on', () => {
    const desk = openDesk()
    const input = board([bucket('X')], [pot('A', ['X'], []), pot('B', ['X'], [])])
    desk.ask({ id: 1, input, previous: null, odds, long: true })
    expect(stages(desk)).toEqual(['1 first'])
    run(desk)
    expect(stages(desk)).toEqual(['1 first', '1 final'])
  })

  it('drops an older question for a newer one', () => {
    const desk = openDesk()
    desk.ask({ id: 1, input: exampleFour(), previous: null, odds, long: true })
    desk.step()
    desk.ask({ id: 2, input: exampleFour(), previous: null, odds, long: false })
    run(desk)
    expect(stages(desk)).toEqual(['1 first', '2 first', '2 final'])
  })

  it('begins no long search that a newer question overtook while the table rested', () => {
    const input = generate(BOARD, { pots: [40, 40], coats: [3, 3], gridS: 1 })
    const desk = openDesk()
    desk.ask({ id: 1, input, previous: null, odds, long: true })
    run(desk)
    desk.ask({ id: 2, input: exampleFour(), previous: null, odds, long: false })
    run(desk)
    desk.rest()
    run(desk)
    expect(stages(desk)).toEqual(['1 first', '1 final', '2 first', '2 final'])
  })

  it('refuses by name what it can not plan', () => {
    const desk = openDesk()
    const input = board([bucket('X')], [pot('A', ['Z'], [])])
    desk.ask({ id: 1, input, previous: null, odds, long: false })
    expect(desk.replies).toEqual([{ id: 1, stage: 'refused', message: expect.stringContaining('Z') }])
  })

  it('tells what a long search gains while the hands work, if it is a minute', () => {
    const input = generate(BOARD, { pots: [40, 40], coats: [3, 3], gridS: 1 })
    const desk = openDesk()
    desk.ask({ id: 1, input, previous: null, odds, long: true })
    run(desk)
    expect(stages(desk)).toEqual(['1 first', '1 final'])
    desk.rest()
    run(desk)
    const [, final, better] = desk.replies
    if (final?.stage !== 'final' || better?.stage !== 'better') throw new Error(stages(desk).join())
    expect(faults(input, better.plan)).toEqual([])
    expect(final.plan.finishS - better.plan.finishS).toBeGreaterThanOrEqual(MIN)
    // The card in hand stays.
    const [card, same] = [final.plan.actions[0], better.plan.actions[0]]
    expect([same?.kind, same]).toEqual([
      'open',
      expect.objectContaining({ bucketId: card?.kind === 'open' && card.bucketId }),
    ])
  })
})
