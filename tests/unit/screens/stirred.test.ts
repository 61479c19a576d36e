import { expect, test } from 'vitest'
import { stirredText } from '../../../src/screens/opening/stirred.tsx'
import { WORDS } from '../../../src/words/bench.ts'
import { formats } from '../../../src/words/format.ts'
import { OPENING_WORDS } from '../../../src/words/opening.ts'
import { Play } from '../table/play.ts'

test('a coat that went in though its glaze had settled keeps the minutes since its stir, and judging says them', () => {
  const play = new Play().act({ do: 'lay-demo' }).wait(1200)
  const dipped = (potId: string, bucketId: string) => {
    play.act({ do: 'pick', potId, bucketId }).act({ do: 'start', potId, again: false, unstirred: true })
    return play.wait(20).table.pots[potId]!.dips.at(-1)!
  }
  const said = (dip: ReturnType<typeof dipped>) =>
    stirredText({ opening: OPENING_WORDS.en }, formats(WORDS.en, 'metric', 'en'), dip)
  const never = dipped('demo.31', 'demo.gatepost')
  expect(never.stirredAgoMs).toBeUndefined()
  expect(said(never)).toBe('never stirred')
  play
    .wait(120)
    .act({ do: 'stirred', bucketId: 'demo.gatepost' })
    .wait(25 * 60)
  const stale = dipped('demo.32', 'demo.gatepost')
  expect(stale.stirredAgoMs).toBe(25 * 60_000)
  expect(said(stale)).toBe('stirred 25 min before')
  play.act({ do: 'stirred', bucketId: 'demo.gatepost' })
  const fresh = dipped('demo.33', 'demo.gatepost')
  expect(fresh.unstirred).toBe(false)
  expect(said(fresh)).toBeUndefined()
})
