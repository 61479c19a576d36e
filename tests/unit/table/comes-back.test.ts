import { describe, expect, it } from 'vitest'
import type { Card } from '../../../src/table/card/card.ts'
import { potsOnCard } from '../../../src/table/card/card.ts'
import type { Action } from '../../../src/table/model/action.ts'
import type { Potter } from '../../../src/table/model/potters.ts'
import { numbers } from '../../fixtures/numbers.ts'
import { twelve } from '../../fixtures/twelve.ts'
import { PlannedPlay } from './planned.ts'

const demo = () => new PlannedPlay().act({ do: 'lay-demo' })
const table = () => {
  const play = new PlannedPlay()
  for (const [i, events] of twelve().entries()) play.append(events, `laid-${i}`)
  return play.wait(3600)
}

/** What a potter reads on a card, but for what a clock counts. */
const read = (card: Card) => {
  const bucket = card.kind === 'armed' ? card.armed.bucketId : 'bucketId' in card ? card.bucketId : ''
  const dips = card.kind === 'stir' ? `${card.visit?.dips ?? card.waiting} dips ${card.heldBar?.do}` : ''
  return [card.kind, ...potsOnCard(card), bucket, dips].join(' ')
}

/** A sitting by the cards; `each` looks at every card, before the hands do what its bar says. */
function sit(play: PlannedPlay, seed: number, hits: number, each: (random: () => number) => void): void {
  const random = numbers(seed)
  play.work = 3000
  play.ask()
  for (let i = 0; i < hits; i++) {
    each(random)
    const { big, kind } = play.card
    if (kind === 'closed') return
    const done: Action | undefined = kind === 'count' || kind === 'out' ? undefined : big
    if (done) play.act(done)
    // The count's own time, or that of a step.
    play.wait(done ? 4 + 30 * random() : 10)
  }
}

const COUNTED_S = 2

describe.each([
  ['the demo evening', demo, 75],
  ['twelve pots', table, 60],
])('over %s', (_name, laid, hits) => {
  it('a START that is called off brings its own pot back, whatever order is told of the count', () => {
    const play = laid()
    const found: string[] = []
    let starts = 0
    sit(play, 3, hits, (random) => {
      const before = play.card
      if (before.kind !== 'armed' || !before.big) return
      starts++
      play.act(before.big).wait(COUNTED_S).ask()
      const off = play.card
      if (off.kind !== 'count' || !off.big) throw new Error(`${off.kind} after START`)
      play.act(random() < 0.5 ? off.big : { do: 'take-back' })
      const told = [read(play.card)]
      play.wait(1).ask()
      told.push(read(play.card))
      for (const card of told) if (card !== read(before)) found.push(`${read(before)}: then ${card}`)
    })
    expect(starts).toBeGreaterThan(3)
    expect(found).toEqual([])
  })

  it('a stir is not asked for in other words while nobody hits the bar', () => {
    const play = laid()
    const found: string[] = []
    sit(play, 4, hits, (random) => {
      const before = play.card
      if (before.kind !== 'stir') return
      play.wait(5 + 20 * random()).ask()
      const after = play.card
      if (after.kind === 'stir' && read(after) !== read(before)) found.push(`${read(before)}: ${read(after)}`)
    })
    expect(found).toEqual([])
  })

  it('of two potters each has a card of their own: turned over and back it is the same, and no pot is on both', () => {
    const play = laid().act({ do: 'set-settings', settings: { potters: 2 } })
    const found: string[] = []
    sit(play, 5, hits, (random) => {
      const { potter } = play
      const there: Potter = potter === 1 ? 0 : 1
      const own = play.cardOf(potter)
      const strip = play.elsewhere(potter)
      const other = play.cardOf(there)
      if (strip && read(strip) !== read(other)) found.push(`said ${read(strip)}, is ${read(other)}`)
      const back = play.cardOf(potter)
      if (read(back) !== read(own)) found.push(`${read(own)} turned into ${read(back)}`)
      const both = potsOnCard(own).filter((potId) => potsOnCard(other).includes(potId))
      if (both.length > 0 && own.kind !== 'count' && own.kind !== 'out')
        found.push(`${read(own)} and ${read(other)}`)
      if (random() < 0.4) play.potter = there
    })
    expect(found).toEqual([])
  })
})

it('asks again for a touch that is taken back, whatever came up by its answer', () => {
  const play = demo()
  const found: string[] = []
  let asked = 0
  sit(play, 6, 70, () => {
    const before = play.card
    if (before.kind !== 'ready' || !before.big) return
    asked++
    play.act(before.big).wait(2).act({ do: 'take-back' })
    // Another that is due by now may be asked for first.
    const { card } = play
    // The open bucket is stirred again all the same: a pot may be in the hand for it.
    const stirs = card.kind === 'stir' && !card.change
    if (card.kind !== 'ready' && !stirs) found.push(`${read(before)}: then ${read(play.card)}`)
  })
  expect(asked).toBeGreaterThan(1)
  expect(found).toEqual([])
})
