/** The load's worker without a worker: what is answered when. */
import { expect, test } from 'vitest'
import { type LoadReply, makeLoadDesk } from '../../../../src/engine/kiln/messages.ts'
import { firstLoad, proposeLoad } from '../../../../src/engine/kiln/propose.ts'
import { loadOf, mixedPots, ROUND } from '../../../fixtures/kiln/loads.ts'

/** A desk whose passes run when the test says so. */
function openDesk() {
  const replies: LoadReply[] = []
  const queue: (() => void)[] = []
  const ask = makeLoadDesk(
    (reply) => replies.push(reply),
    (run) => queue.push(run),
  )
  const run = () => {
    for (let next = queue.shift(); next; next = queue.shift()) next()
  }
  return { replies, ask, queue, run }
}
const stages = (replies: readonly LoadReply[]) => replies.map(({ id, stage }) => `${id} ${stage}`)
const LOAD = loadOf(ROUND, mixedPots(14, 3))

test('a question is answered at once, then better, then for good', () => {
  const { replies, ask, run } = openDesk()
  ask({ id: 1, input: LOAD })
  expect(replies).toEqual([{ id: 1, stage: 'first', plan: firstLoad(LOAD) }])
  run()
  expect(
    stages(replies)
      .slice(1, -1)
      .every((stage) => stage === '1 better'),
  ).toBe(true)
  expect(stages(replies).at(-1)).toBe('1 final')
})

test('a newer question drops an older one', () => {
  const { replies, ask, queue, run } = openDesk()
  ask({ id: 1, input: LOAD })
  queue.shift()?.()
  ask({ id: 2, input: LOAD })
  const before = replies.filter(({ id }) => id === 1).length
  run()
  expect(replies.filter(({ id }) => id === 1)).toHaveLength(before)
  expect(stages(replies).at(-1)).toBe('2 final')
})

test('bad input is refused with field, value and range, and the next question answered', () => {
  const { replies, ask } = openDesk()
  const [pot] = LOAD.pots
  ask({ id: 1, input: { ...LOAD, pots: [{ ...pot!, heightMm: Number.NaN }] } })
  expect(replies).toEqual([{ id: 1, stage: 'refused', message: '1.heightMm is NaN: must be from 1 to 5000' }])
  ask({ id: 2, input: LOAD })
  expect(stages(replies).at(-1)).toBe('2 first')
})

test('one that is waited for ends with the load that is proposed without a worker', () => {
  const { replies, ask, run } = openDesk()
  ask({ id: 1, input: LOAD, soon: true })
  run()
  expect(replies.at(-1)).toEqual({ id: 1, stage: 'final', plan: proposeLoad(LOAD) })
})
