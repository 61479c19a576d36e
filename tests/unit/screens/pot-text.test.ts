import { expect, test } from 'vitest'
import { hitText, wetGloves } from '../../../src/screens/text/pot-text.ts'
import { lastHit } from '../../../src/table/model/potters.ts'
import { WORDS } from '../../../src/words/bench.ts'
import { cards } from '../../../src/words/es/cards.ts'
import { Play } from '../table/play.ts'

test('a harmful glaze that is still wet on the pot in hand asks for gloves on a card of a harmless bucket', () => {
  const play = new Play().act({ do: 'lay-demo' }).wait(1200)
  play.act({ do: 'pick', potId: 'demo.33', bucketId: 'demo.heather' })
  play.act({ do: 'stirred', bucketId: 'demo.heather' })
  play.act({ do: 'start', potId: 'demo.33', again: true, unstirred: false }).wait(20)
  const pot = play.table.pots['demo.33']
  const said = (bucketId: string) => wetGloves(WORDS.en, play.table, pot, bucketId)
  expect(said('demo.gatepost')).toBe('33 has manganese on it: wear gloves.')
  expect(said('demo.heather'), 'that card says it of its own glaze').toBeUndefined()
  expect(wetGloves(WORDS.en, play.table, undefined, 'demo.gatepost')).toBeUndefined()
})

test('a result that is left out, and one that is taken in, are called so', () => {
  const play = new Play().act({ do: 'lay-demo' })
  const said = (dropped: boolean) => {
    play.act({ do: 'drop-lesson', potId: 'demo.35', lessonId: 'x', dropped })
    const last = lastHit(play.table) ?? {}
    return [WORDS.en, { ...WORDS.en, hits: cards.hits }].map((words) => hitText(words, play.table, last))
  }
  expect(said(true)).toEqual(['35 left out', '35 sin contar'])
  expect(said(false)).toEqual(['35 taken in', '35 vuelve a contar'])
})
