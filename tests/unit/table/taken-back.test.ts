import { expect, it } from 'vitest'
import { potsOnCard } from '../../../src/table/card/card.ts'
import { begun, PlannedPlay } from './planned.ts'

const onCard = ({ card }: PlannedPlay): string => `${card.kind} ${potsOnCard(card).join()}`

/** START of the pot on the card, until nothing drips any more. */
const dipped = (play: PlannedPlay): PlannedPlay => play.wait(10).bar().wait(30)

it('a dip that is taken back brings its pot back to the hands, until the next hit', () => {
  const play = dipped(begun(['GB'], 4))
  const second = onCard(play)
  expect(second).toMatch(/^armed/)
  dipped(play).wait(2)
  const third = onCard(play)
  expect(third).not.toBe(second)
  play.act({ do: 'take-back' })
  expect(onCard(play)).toBe(second)
  expect(onCard(play.wait(20).ask())).toBe(second)
  expect(onCard(play.act({ do: 'put-back' }))).toBe(third)
  play.act({ do: 'take-back' })
  expect(onCard(dipped(play))).toBe(third)
})

it('a dip that is taken back once its stir is too old is stirred for', () => {
  const play = dipped(dipped(begun(['GB'], 4)))
  play.act({ do: 'take-back' }).wait(300)
  expect(play.card).toMatchObject({ kind: 'stir', bucketId: 'G' })
})

it('a coat that was told is taken back without its pot in the tongs', () => {
  const play = dipped(begun(['GB'], 4))
  const before = onCard(play)
  play.act({ do: 'logged', potId: 't.4', agoMin: 2 })
  play.act({ do: 'take-back' })
  expect(onCard(play)).toBe(before)
})

it('a stir that is put back leads to what it had led to', () => {
  const play = new PlannedPlay().act({ do: 'lay-demo' })
  play.work = 3000
  play.ask()
  const isStir = () => play.card.kind === 'stir'
  while (!isStir()) {
    play.wait(10)
    if (play.card.big && !isStir()) play.bar()
  }
  play.bar()
  const then = onCard(play)
  play.wait(1).act({ do: 'take-back' })
  expect(isStir()).toBe(true)
  expect(onCard(play.wait(1).act({ do: 'put-back' }))).toBe(then)
})
