/** Rules that are one word or one figure in the code, each held by what a person would notice. */
import { describe, expect, test } from 'vitest'
import { forecastOf } from '../../../src/table/forecast/forecast.ts'
import { lessonsUsed } from '../../../src/table/forecast/learning.ts'
import { planOf } from '../../../src/table/model/plan.ts'
import { stepOf } from '../../../src/table/steps/steps.ts'
import { Play } from './play.ts'

const potOf = (play: Play, potId: string) => play.table.pots[potId]!
const forecast = (play: Play, potId: string) => forecastOf(play.table, potOf(play, potId))!

/** The next coat of a pot is on and takes a touch. */
function coated(play: Play, potId: string): Play {
  play.act({ do: 'logged', potId, agoMin: 0 })
  play.nowMs = forecast(play, potId).touch.likely
  return play.act({ do: 'touched', potIds: [potId], dry: true })
}

describe('what READY means', () => {
  test('touch-dry, or drinking again where the person says so: then the same pot is called later', () => {
    const play = coated(new Play().act({ do: 'lay-demo' }), 'demo.36').act({
      do: 'logged',
      potId: 'demo.36',
      agoMin: 0,
    })
    const byTouch = forecast(play, 'demo.36')
    expect(byTouch.ready).toEqual(byTouch.touch)
    play.act({ do: 'set-settings', settings: { readyMeans: 'thirsty' } })
    const byThirst = forecast(play, 'demo.36')
    expect(byThirst.ready).toEqual(byThirst.thirsty)
    expect(byThirst.ready.likely).toBeGreaterThan(byTouch.ready.likely + 60_000)
    const stepBy = (readyMeans: 'touch' | 'thirsty') => {
      play.act({ do: 'set-settings', settings: { readyMeans } })
      return stepOf(play.table, potOf(play, 'demo.36'), byTouch.ready.likely + 60_000).is
    }
    expect([stepBy('touch'), stepBy('thirsty')]).toEqual(['foot-check', 'wait'])
  })
})

describe('a coat that was held longer than planned', () => {
  test('came out later by as much, went in when it did, and waits from then', () => {
    const play = new Play().act({ do: 'lay-demo' }).act({ do: 'logged', potId: 'demo.34', agoMin: 0 })
    const [before] = potOf(play, 'demo.34').dips
    const ready = forecast(play, 'demo.34').ready.likely
    play.act({ do: 'held-longer', dipId: before!.dipId, byS: 3 })
    const [after] = potOf(play, 'demo.34').dips
    expect(after!.holdS).toBe(before!.holdS + 3)
    expect(after!.outAt).toBe(before!.outAt + 3000)
    expect(after!.underAt).toBe(before!.underAt)
    expect(forecast(play, 'demo.34').ready.likely).toBeGreaterThan(ready + 3000)
  })
})

describe('what teaches the room', () => {
  test('every touch of a sitting of twenty coats: without its first one the waits are told otherwise', () => {
    const play = new Play().act({ do: 'lay-demo' })
    let coats = 0
    for (const potId of Object.keys(play.table.pots))
      for (const _ of planOf(play.table, potOf(play, potId))) if (coats++ < 20) coated(play, potId)
    const used = lessonsUsed(play.table)
    expect(used).toHaveLength(20)
    play.act({ do: 'logged', potId: 'demo.38', agoMin: 0 })
    const waitMs = () => forecast(play, 'demo.38').touch.upper - play.nowMs
    const taught = waitMs()
    const { potId, lessonId } = used[0]!
    play.act({ do: 'drop-lesson', potId, lessonId, dropped: true })
    expect(waitMs()).not.toBe(taught)
  })
})
