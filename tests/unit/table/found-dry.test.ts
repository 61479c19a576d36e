import { describe, expect, test } from 'vitest'
import '../../../src/table/forecast/walls.ts'
import { UNLEARNED } from '../../../src/engine/index.ts'
import { forecastPot } from '../../../src/engine/wait/forecast.ts'
import { forecastOf } from '../../../src/table/forecast/forecast.ts'
import { plannedDip, zonesWith } from '../../../src/table/forecast/hypothetical-dip.ts'
import { seenOn } from '../../../src/table/forecast/learning.ts'
import { historyOf, MIN_MS } from '../../../src/table/forecast/pot-history.ts'
import { planOf } from '../../../src/table/model/plan.ts'
import { Play } from './play.ts'

const potId = 'demo.33'
const pot = (play: Play) => play.table.pots[potId]!

/** A pot with its first coat, a tenth of the likely wait later, touched or not. */
function early(dry: boolean): Play {
  const play = new Play().act({ do: 'lay-demo' }).act({ do: 'logged', potId, agoMin: 0 })
  play.nowMs += (forecastOf(play.table, pot(play))!.touch.likely - play.nowMs) / 10
  if (dry) play.act({ do: 'touched', potIds: [potId], dry: true })
  return play.wait(20)
}

/** Minutes of the second coat's wait by wall and air alone. */
function secondWait(play: Play): number {
  play.act({ do: 'logged', potId, agoMin: 0 })
  const { pot: wall, events, air0 } = historyOf(play.table, pot(play))
  return forecastPot(wall, events, air0, UNLEARNED).touchDry.likely - pot(play).dips.at(-1)!.outAt / MIN_MS
}

describe('a coat that a finger found dry long before it was told', () => {
  test('is dry for the coat that follows: its wait is no longer than after a dry one', () => {
    const dried = new Play().act({ do: 'lay-demo' }).act({ do: 'logged', potId, agoMin: 0 })
    dried.nowMs = forecastOf(dried.table, pot(dried))!.touch.likely
    const asDry = secondWait(dried)
    expect(secondWait(early(true))).toBeLessThan(1.05 * asDry)
    // Not touched, its water is still on the wall.
    expect(secondWait(early(false))).toBeGreaterThan(1.3 * asDry)
  })

  test('and the coat about to come is told for a dry one', () => {
    const coming = (play: Play) => {
      const [, coat] = planOf(play.table, pot(play))
      const dip = plannedDip(1, coat!, 1.45, play.nowMs)
      const zones = zonesWith(play.table, pot(play), dip)!
      return Math.max(...zones.flatMap(({ coats }) => coats.slice(1).map(({ likelyMm }) => likelyMm)))
    }
    expect(coming(early(true))).toBeGreaterThan(1.01 * coming(early(false)))
  })

  test('teaches as before: its own wait is not told by its own answer', () => {
    const [seen] = seenOn(early(true).table, pot(early(true)))
    const { observation } = seen!
    expect(observation.events.map(({ kind }) => kind)).not.toContain('dry')
    expect(historyOf(early(true).table, pot(early(true))).events.map(({ kind }) => kind)).not.toContain('dry')
  })
})
