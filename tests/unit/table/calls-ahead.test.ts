import { expect, it } from 'vitest'
import { outputsOf } from '../../../src/table/card/outputs.ts'
import { callsAhead, LONG_MS, longWaits } from '../../../src/table/steps/calls-ahead.ts'
import { Play } from './play.ts'

const only = (...numbers: number[]): Play => {
  const play = new Play().act({ do: 'lay-demo' })
  for (const { facts } of Object.values(play.table.pots))
    if (!numbers.includes(facts.number)) play.act({ do: 'gone', potId: facts.potId })
  return play
}
const numbers = (play: Play) =>
  callsAhead(play.table, play.nowMs).map(({ pots }) => pots.map(({ facts }) => facts.number))

it('knows the call of a pot from the moment its count starts, at the time it will be said', () => {
  const play = only(33)
  for (let i = 0; i < 500 && play.card.kind !== 'count'; i++) play.card.big ? play.bar() : play.wait(5)
  const [call] = callsAhead(play.table, play.nowMs)
  expect(call?.pots.map(({ facts }) => facts.number)).toEqual([33])
  expect(call?.bucketLetter).toBe('B')
  for (let i = 0; i < 9000 && outputsOf(play.table, play.nowMs, play.card).calls.length === 0; i++)
    play.wait(1)
  expect(play.nowMs - (call?.at ?? 0)).toBeGreaterThanOrEqual(0)
  expect(play.nowMs - (call?.at ?? 0)).toBeLessThan(1500)
})

it('calls together what is due within a minute, apart what is not, and buckets one by one', () => {
  const play = only(31, 32, 34)
  // The same bucket, forty seconds apart; another bucket at the same time.
  play.act({ do: 'logged', potId: 'demo.31', agoMin: 0 }).wait(10)
  play.act({ do: 'logged', potId: 'demo.32', agoMin: 0 })
  expect(numbers(play)).toEqual([[31, 32]])
  play.act({ do: 'logged', potId: 'demo.34', agoMin: 0 })
  expect(numbers(play).flat().sort()).toEqual([31, 32, 34])
  expect(numbers(play)).toContainEqual([34])
  play.wait(3600)
  const { calls } = outputsOf(play.table, play.nowMs, play.card)
  expect(calls.map(({ bucketLetter }) => bucketLetter).sort()).toEqual(['B', 'H'])
})

it('has the kiln in the calendar, and no wait under an hour', () => {
  const play = only(34)
  for (let i = 0; i < 6000 && play.card.kind !== 'closed'; i++)
    play.card.big && play.card.kind !== 'count' ? play.bar() : play.wait(10)
  expect(play.card.kind).toBe('closed')
  const card = play.card.kind === 'closed' ? play.card : undefined
  const waits = longWaits(play.table, play.nowMs)
  expect(waits.map(({ what }) => what)).toEqual(['kiln'])
  expect(waits[0]?.at).toBe(card?.dry[0]?.dry.likely)
  play.nowMs = (waits[0]?.at ?? 0) - LONG_MS + 1000
  expect(longWaits(play.table, play.nowMs)).toEqual([])
})
