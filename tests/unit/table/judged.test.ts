import { describe, expect, it } from 'vitest'
import type { Card } from '../../../src/table/card/card.ts'
import { cardOf } from '../../../src/table/card/card-now.ts'
import { judged } from '../../../src/table/card/judged.ts'
import { Play } from './play.ts'

const potId = 'demo.31'

/** The demo evening with one pot waxed, wiped and in the hands. */
const picked = (): Play =>
  new Play()
    .act({ do: 'lay-demo' })
    .act({ do: 'waxed', potId })
    .wait(300)
    .act({ do: 'wiped', potId })
    .wait(61)
    .act({ do: 'pick', potId })

function unjudged(play: Play): Card {
  const now = play.nowMs - play.table.skewMs
  return judged(play.table, cardOf(play.table, now), now, undefined)
}

describe('before the code of warnings is here', () => {
  it('a bucket is stirred, but no dip starts', () => {
    const play = picked()
    expect(unjudged(play)).toMatchObject({ kind: 'stir', big: { do: 'stirred' } })
    play.bar()
    expect(play.card.kind).toBe('armed')
    expect(unjudged(play)).toMatchObject({ kind: 'armed', big: undefined, heldBar: undefined })
  })

  it('nothing is decanted for a collar', () => {
    const collar = { bucketId: 'demo.heather', holdS: 3, cover: { kind: 'collar', depthMm: 25 } } as const
    const play = picked().act({ do: 'set-plan', potId, coats: [collar] })
    expect(unjudged(play)).toMatchObject({ kind: 'stir', big: undefined, heldBar: undefined })
    const { big } = play.card
    expect(big?.do === 'stirred' && big.decantLitres).toBeGreaterThan(0.1)
  })
})
