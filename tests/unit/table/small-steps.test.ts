import { describe, expect, test } from 'vitest'
import { panWarmAt } from '../../../src/table/steps/pan-warm.ts'
import { wasTonged } from '../../../src/table/steps/tongs.ts'
import { Play } from './play.ts'

const evening = () => new Play().act({ do: 'lay-demo' })
const MIN_MS = 60_000

describe('the warm-up of the wax pan', () => {
  test('its clock starts when the first card is told that it is on', () => {
    const play = evening()
    expect(play.card).toMatchObject({ kind: 'wax', small: { do: 'wax-pan', is: 'on' } })
    const onMs = play.nowMs
    play.act(play.card.small!)
    expect(play.card).toMatchObject({ kind: 'wax', small: undefined })
    expect(panWarmAt(play.table)).toBe(onMs + 15 * MIN_MS)
    expect(play.wait(600).table.pan!.onAt).toBe(onMs)
  })

  test('waxing asks for no other hit, and says that it is warm', () => {
    const play = evening().bar()
    expect(play.table.pan).toBeDefined()
    expect(play.card.small).toBeUndefined()
    expect(panWarmAt(play.table)).toBeUndefined()
  })

  test('water-based wax has no pan', () => {
    const play = evening().act({ do: 'set-settings', settings: { wax: 'water' } })
    expect(play.card).toMatchObject({ kind: 'wax', small: undefined })
  })
})

describe('a bucket that is opened', () => {
  test('other than the plan says, it is told before the stir and asked again at START', () => {
    const play = evening()
    const potId = 'demo.33'
    play.act({ do: 'waxed', potId }).wait(900).act({ do: 'wiped', potId }).wait(120)
    play.act({ do: 'pick', potId, bucketId: 'demo.heather' })
    expect(play.card).toMatchObject({ kind: 'stir', bucketId: 'demo.heather', insteadOf: 'demo.gatepost' })
    play.bar().act({ do: 'pick', potId, bucketId: 'demo.heather' })
    expect(play.card).toMatchObject({ kind: 'armed', heldBar: { again: true } })
    expect(play.try(play.card.big!)).toMatchObject({ code: 'other-bucket' })
    play.act({ do: 'pick', potId, bucketId: 'demo.gatepost' })
    expect(play.card.kind).toBe('stir')
    expect(play.card).not.toHaveProperty('insteadOf', expect.anything())
  })
})

test('tongs leave marks on what they held, not on what was poured or dipped by hand', () => {
  const play = evening()
  const pot = play.table.pots['demo.33']!
  const dip = { coat: 0, outAt: 1, dipId: 'd' }
  const dipped = (cover: object) => ({ ...pot, dips: [{ ...dip, cover }] }) as never
  expect(wasTonged(pot)).toBe(false)
  expect(wasTonged(dipped({ kind: 'full' }))).toBe(true)
  for (const kind of ['inside', 'collar', 'side']) expect(wasTonged(dipped({ kind }))).toBe(false)
})
