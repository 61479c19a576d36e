import { describe, expect, test } from 'vitest'
import { worthNow } from '../../../src/table/advice/worth.ts'
import { forecastOf } from '../../../src/table/forecast/forecast.ts'
import { Play } from './play.ts'

const demo = (): Play => new Play().act({ do: 'lay-demo' })
const now = (play: Play) => worthNow(play.table, play.nowMs)!

describe('before a sitting', () => {
  test('says how far waits are known, and offers a pot of the board that narrows them', () => {
    const play = demo()
    const { factor, untaught, checks, best } = now(play)
    expect(checks).toBe(0)
    expect(untaught).toBe(factor)
    expect(factor).toBeGreaterThan(3)
    expect(best!.factor).toBeLessThan(0.93 * factor)
    if (best!.kind !== 'clay') expect(play.table.pots[best!.potId]!.dips).toHaveLength(0)
  })

  test('after three touches, what they bought', () => {
    const play = demo()
    for (const potId of ['demo.31', 'demo.32', 'demo.33']) {
      play.act({ do: 'logged', potId, agoMin: 0 })
      play.nowMs = forecastOf(play.table, play.table.pots[potId]!)!.touch.likely
      play.act({ do: 'touched', potIds: [potId], dry: true })
    }
    const { factor, untaught, checks, best } = now(play)
    expect(checks).toBe(3)
    expect(factor).toBeLessThan(untaught)
    expect(best?.kind).not.toBe('clay')
  })

  test('by the clock, or with no bare pot, there is nothing to say', () => {
    const clocked = demo()
    clocked.act({ do: 'set-settings', settings: { ...clocked.table.settings, readyMeans: 'clock' } })
    expect(worthNow(clocked.table, clocked.nowMs)).toBeUndefined()
    const dipped = demo()
    for (const potId of Object.keys(dipped.table.pots)) dipped.act({ do: 'logged', potId, agoMin: 0 })
    expect(worthNow(dipped.table, dipped.nowMs)).toBeUndefined()
  })
})
