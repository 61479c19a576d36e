import { describe, expect, it } from 'vitest'
import { forecastOf } from '../../../src/table/forecast/forecast.ts'
import { waterNowG } from '../../../src/table/forecast/saturation.ts'
import { Play } from './play.ts'

const potId = 'demo.33'
const weighed = (grams?: number): Play => {
  const play = new Play().act({ do: 'lay-demo' }).act({ do: 'weigh', potId, grams: 420, as: 'bisque' })
  play.act({ do: 'logged', potId, agoMin: 0 }).wait(60)
  return grams === undefined ? play : play.act({ do: 'weigh', potId, grams, as: 'now' })
}
const water = (play: Play) => waterNowG(play.table, play.table.pots[potId]!, play.nowMs)
const ready = (play: Play) => forecastOf(play.table, play.table.pots[potId]!)!

describe('weighing a pot', () => {
  it('waits longer for more water, less for less, and says how much is in it', () => {
    const [light, heavy] = [weighed(465), weighed(520)]
    expect(ready(heavy).touch.likely).toBeGreaterThan(ready(light).touch.likely)
    expect(ready(heavy).kiln.likely).toBeGreaterThan(ready(light).kiln.likely)
    expect(water(heavy)).toBeGreaterThan(water(light))
  })

  it('taken back is as if it had never been', () => {
    const play = weighed(520)
    play.act({ do: 'take-back' })
    expect(ready(play).touch).toEqual(ready(weighed()).touch)
  })

  it('asks about a weight that no filling gives, and keeps it when it is meant', () => {
    for (const grams of [427, 760]) {
      const play = weighed()
      const wait = () => ready(play).touch.likely - play.nowMs
      const before = wait()
      const odd = play.try({ do: 'weigh', potId, grams, as: 'now' })
      expect(odd).toMatchObject({ code: 'odd-weight', facts: { value: grams } })
      const { least, most } = odd!.facts as { least: number; most: number }
      expect([least, most].filter((edge) => edge > 430 && edge < 700)).toHaveLength(2)
      for (const edge of [least, most])
        expect(weighed().try({ do: 'weigh', potId, grams: edge, as: 'now' })).toBeUndefined()
      play.act({ do: 'weigh', potId, grams, as: 'now', sure: true })
      expect(Math.abs(Math.log(wait() / before))).toBeLessThan(0.1)
    }
  })

  it('teaches nothing of a pot whose bisque came damp: its first weight held some of that water', () => {
    const wait = (grams?: number) => {
      const play = new Play().act({ do: 'lay-demo' })
      play.act({ do: 'set-pot', pot: { ...play.table.pots[potId]!.facts, bisqueWater: 'damp' } })
      play
        .act({ do: 'weigh', potId, grams: 420, as: 'bisque' })
        .act({ do: 'logged', potId, agoMin: 0 })
        .wait(60)
      if (grams !== undefined) play.act({ do: 'weigh', potId, grams, as: 'now' })
      return ready(play).touch
    }
    expect(wait(450)).toEqual(wait())
  })

  it('refuses what a scale cannot show: less than the bisque, no bisque, no weight', () => {
    const play = weighed()
    expect(play.try({ do: 'weigh', potId, grams: 400, as: 'now' })).toMatchObject({
      code: 'out-of-range',
      facts: { value: 400, least: 420 },
    })
    expect(play.try({ do: 'weigh', potId, grams: 0, as: 'bisque' })).toMatchObject({ code: 'out-of-range' })
    expect(play.try({ do: 'weigh', potId: 'demo.34', grams: 500, as: 'now' })).toMatchObject({
      code: 'missing',
      field: 'bisque',
    })
  })
})

describe('learning from touches', () => {
  it('makes every other wait longer after NOT YET long past the likely time, and forgets it when taken back', () => {
    const play = new Play().act({ do: 'lay-demo' })
    for (const id of ['demo.31', 'demo.32']) play.act({ do: 'logged', potId: id, agoMin: 0 })
    const other = () => forecastOf(play.table, play.table.pots['demo.32']!)!.touch.likely
    const before = other()
    play.nowMs = before + 30 * 60_000
    play.act({ do: 'touched', potIds: ['demo.31'], dry: false })
    const after = other()
    expect(after).toBeGreaterThan(before)
    play.act({ do: 'take-back' })
    expect(other()).toBe(before)
  })
})
