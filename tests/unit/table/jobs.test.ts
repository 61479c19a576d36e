import { describe, expect, it, vi } from 'vitest'
import type { TableEvent } from '../../../shared/events.ts'
import { checkInput } from '../../../src/planner/problem/check.ts'
import { type BandMs, forecastOf } from '../../../src/table/forecast/forecast.ts'
import { waitsAhead } from '../../../src/table/forecast/waits-ahead.ts'
import { isStale } from '../../../src/table/model/fresh.ts'
import { jobsOf, scheduleFrom } from '../../../src/table/order/jobs.ts'
import { variantsOf } from '../../../src/table/order/schedule-options.ts'
import { toldDip } from '../../fixtures/told-dip.ts'
import { potId, twelve } from '../../fixtures/twelve.ts'
import { plan } from '../../planner/plan.ts'
import { Play } from './play.ts'

const MIN_S = 60
const MIN_MS = 60_000

function laid(...of: Parameters<typeof twelve>): Play {
  const play = new Play()
  twelve(...of).forEach((events, i) => {
    play.append(events, `laid-${i}`)
  })
  return play.wait(3600)
}

const inputOf = (play: Play) => jobsOf(play.table, play.nowMs).input

describe('the table as a question to the planner', () => {
  it('gives coats, steps and waits in whole seconds', () => {
    const input = inputOf(laid(['GBH'], 1))
    expect(input.pots[0]).toMatchObject({ id: potId(1), prep: [], kilnDryS: 240 * MIN_S + 52 })
    expect(input.pots[0]!.coats).toEqual([
      { bucketId: 'G', dipS: 60, outAtS: 8, waitAfterS: 772, collar: false, longestWaitS: 86_400 },
      { bucketId: 'B', dipS: 60, outAtS: 8, waitAfterS: 1132, collar: false, longestWaitS: 86_400 },
      { bucketId: 'H', dipS: 60, outAtS: 8, waitAfterS: 1132, collar: false, longestWaitS: 86_400 },
    ])
    expect(input.buckets).toContainEqual({ id: 'G', openS: 180, restirS: 60, freshS: 300, decantS: 60 })
    expect(input.hands).toEqual([{ freeAtS: input.nowS, open: null }])
  })

  it('plans with a wait’s likely end, tells how late it may be, and takes a touch at its word', () => {
    const play = new Play().act({ do: 'lay-demo' })
    play.act({ do: 'logged', potId: 'demo.33', agoMin: 0 })
    const { likely, upper } = forecastOf(play.table, play.table.pots['demo.33']!)!.ready
    const ready = () => inputOf(play).pots.find((pot) => pot.id === 'demo.33')!
    expect(ready().readyAtS).toBeGreaterThanOrEqual(Math.ceil(likely / 1000))
    expect(ready().readyAtS).toBeLessThan(Math.ceil(upper / 1000))
    const { odds, input } = jobsOf(play.table, play.nowMs)
    expect(odds.pots['demo.33']!.readyLateS).toBe(Math.ceil(upper / 1000 - input.nowS))
    expect(odds.pots['demo.33']!.kilnLateS).toBeGreaterThan(ready().kilnDryS)
    expect(ready().coats.map((coat) => coat.bucketId)).toEqual(['demo.brackwater', 'demo.heather'])
    expect(ready().coats.map((coat) => coat.collar)).toEqual([false, true])
    play.wait(240).act({ do: 'touched', potIds: ['demo.33'], dry: false })
    expect(ready().readyAtS).toBeGreaterThanOrEqual(Math.ceil(play.nowMs / 1000) + 120)
    play.wait(60).act({ do: 'touched', potIds: ['demo.33'], dry: true })
    expect(ready().readyAtS).toBe(Math.ceil(play.nowMs / 1000))
  })

  it('tells after a touch the waits that a phone tells which has just been opened', async () => {
    const play = new Play().act({ do: 'lay-demo' })
    const waits = () => waitsAhead(play.table, play.table.pots['demo.33']!, play.nowMs)
    const before = waits()
    play.act({ do: 'logged', potId: 'demo.34', agoMin: 0 })
    play.wait(120).act({ do: 'touched', potIds: ['demo.34'], dry: true })
    const after = waits()
    vi.resetModules()
    const opened = await import('../../../src/table/forecast/waits-ahead.ts')
    expect(after.kiln[0]!.likely).toBeLessThan(before.kiln[0]!.likely)
    expect(after).toEqual(opened.waitsAhead(play.table, play.table.pots['demo.33']!, play.nowMs))
  })

  it.each([1, 7, 83, 20_000])(
    'is one the planner takes where a record says OUT, or a kiln is set, %d days on',
    (days) => {
      const play = new Play().act({ do: 'lay-demo' })
      const outAt = play.nowMs + days * 86_400_000
      play.append([{ kind: 'settings-set', settings: { kilnOnAt: outAt } }], 'kiln')
      expect(() => checkInput(inputOf(play))).not.toThrow()
      play.append(
        [{ ...toldDip({ dipId: 'ahead', potId: 'demo.33', outAt }), told: false, holdS: 4 } as TableEvent],
        'ahead',
      )
      for (const laterS of [0, 60]) expect(() => checkInput(inputOf(play.wait(laterS)))).not.toThrow()
    },
  )

  it('plans a coat to come with nearly the waits that it is forecast with once it is on', () => {
    const play = new Play().act({ do: 'lay-demo' })
    for (const potId of Object.keys(play.table.pots)) {
      const potOf = () => play.table.pots[potId]!
      const waits = waitsAhead(play.table, potOf(), play.nowMs)
      play.act({ do: 'logged', potId, agoMin: 0 })
      const forecast = forecastOf(play.table, potOf())!
      const parts = (of: 'next' | 'kiln', ends: BandMs) =>
        (['likely', 'upper'] as const).map(
          (end) => ((waits[of][0]?.[end] ?? 0) * MIN_MS) / (ends[end] - play.nowMs),
        )
      // One run stands in for a whole forecast: sooner by a quarter at most, later for the kiln by an eighth.
      const [next, kiln] = [parts('next', forecast.ready), parts('kiln', forecast.kiln)]
      expect(Math.min(...next, ...kiln), potId).toBeGreaterThan(0.75)
      expect(Math.max(...next), potId).toBeLessThan(1)
      expect(Math.max(...kiln), potId).toBeLessThan(1.12)
    }
  })

  it('plans a pot that was washed off as wet as it is, until it has long dried', () => {
    const ofFirst = (dryH: number) => {
      const play = new Play().act({ do: 'lay-demo' })
      const pot = () => play.table.pots['demo.33']!
      const dry = waitsAhead(play.table, pot(), play.nowMs)
      play.act({ do: 'logged', potId: 'demo.33', agoMin: 0 }).wait(MIN_S)
      play.act({ do: 'wash-off', potId: 'demo.33' })
      const drinksAt = forecastOf(play.table, pot())!.thirsty.likely
      play.nowMs = Math.ceil(drinksAt) + dryH * 60 * MIN_MS
      const told = waitsAhead(play.table, pot(), play.nowMs)
      play.act({ do: 'logged', potId: 'demo.33', agoMin: 0 })
      const on = forecastOf(play.table, pot())!
      const met = { next: on.ready.likely - play.nowMs, kiln: on.kiln.likely - play.nowMs }
      const min = (of: 'next' | 'kiln') => ({
        told: told[of][0]!.likely,
        met: met[of] / MIN_MS,
        dry: dry[of][0]!.likely,
      })
      return [min('next'), min('kiln')] as const
    }
    for (const { told, met, dry } of ofFirst(0)) {
      expect(told / met).toBeGreaterThan(0.75)
      expect(told / met).toBeLessThan(1.2)
      expect(told / dry).toBeGreaterThan(1.2)
    }
    for (const { told, dry } of ofFirst(72)) expect(told / dry).toBeCloseTo(1, 1)
  })

  it('takes no pot before the pan is warm: switched on now, or when it was', () => {
    const play = new Play().act({ do: 'lay-demo' })
    const feet = Object.values(play.table.pots).filter(({ waxedAt }) => waxedAt === undefined)
    const free = () => {
      const { nowS, hands } = inputOf(play)
      return hands[0]!.freeAtS - nowS
    }
    const waxS = feet.length * MIN_S
    const soonest = () => Math.min(...inputOf(play).pots.map(({ readyAtS }) => readyAtS - inputOf(play).nowS))
    expect(play.table.settings.wax).toBe('hot')
    expect(free()).toBe(15 * MIN_S + waxS)
    expect(soonest()).toBeGreaterThanOrEqual(15 * MIN_S)
    play.act({ do: 'set-settings', settings: { wax: 'water' } })
    expect(free()).toBe(waxS)
    play.act({ do: 'set-settings', settings: { wax: 'hot' } })
    play.act({ do: 'wax-pan', is: 'on' }).wait(5 * MIN_S)
    expect(free()).toBe(10 * MIN_S + waxS)
    // A foot that was waxed shows that it is warm.
    play.act({ do: 'waxed', potId: feet[0]!.facts.potId })
    expect(free()).toBe(waxS - MIN_S)
  })

  it('waxes as a block, then wipes, and knows how long both take to settle', () => {
    const play = new Play()
      .act({ do: 'lay-demo' })
      .act({ do: 'wax-pan', is: 'on' })
      .wait(15 * MIN_S)
    const input = inputOf(play)
    expect(input.hands[0].freeAtS - input.nowS).toBe(8 * MIN_S)
    expect(input.pots).toHaveLength(8)
    for (const pot of input.pots) expect(pot.prep.map((step) => step.kind)).toEqual(['wipe'])
    const sets = input.pots.map((pot) => pot.readyAtS - input.nowS)
    expect(Math.min(...sets)).toBeGreaterThan(2 * MIN_S)
    expect(Math.max(...sets) - Math.min(...sets)).toBe(7 * MIN_S)
    play.act({ do: 'set-settings', settings: { waxFirst: false } })
    const other = inputOf(play)
    expect(other.hands[0].freeAtS).toBe(other.nowS)
    for (const pot of other.pots) expect(pot.prep.map((step) => step.kind)).toEqual(['wipe', 'wax'])
  })

  it('knows the open bucket, its stir and what is poured off, and that hands are busy with a dip', () => {
    const play = new Play().act({ do: 'lay-demo' })
    play.act({ do: 'stirred', bucketId: 'demo.heather', decantLitres: 0.6 })
    const stirEndS = Math.floor(play.nowMs / 1000)
    expect(inputOf(play).hands[0].open).toEqual({ bucketId: 'demo.heather', stirEndS, decanted: true })
    const dipping = laid(['GB'], 1).act({ do: 'stirred', bucketId: 'G' })
    dipping.act({ do: 'start', potId: potId(1), again: false, unstirred: false })
    const { hands, nowS, pots } = inputOf(dipping)
    expect(hands[0].freeAtS - nowS).toBe(60)
    // The wait to come is known while the count still runs.
    expect(pots[0]!.readyAtS - nowS).toBe(8 + 772)
  })

  it('counts a stir no younger than it is while a pot drips, whether another could go or not', () => {
    const play = laid(['GG'], 4)
    for (const nth of [1, 2, 3, 4]) {
      play.act({ do: 'stirred', bucketId: 'G' }).wait(100)
      play.act({ do: 'start', potId: potId(nth), again: false, unstirred: false })
      const { hands, nowS, buckets, pots } = inputOf(play)
      if (nth === 4) {
        // These hands are known to be late by now, and nothing can go at once.
        expect(buckets[0]!.freshS).toBeLessThan(260)
        expect(Math.min(...pots.map((pot) => pot.readyAtS))).toBeGreaterThan(nowS)
      }
      expect(nowS - hands[0].open!.stirEndS).toBe(100)
      play.wait(130)
    }
  })

  it('says ready now of what can go now, and fresh of what the table calls fresh, at any millisecond', () => {
    for (const oddMs of [0, 1, 137, 500, 999]) {
      const play = laid(['GB'], 2)
      play.nowMs += 1000 - oddMs
      play.act({ do: 'stirred', bucketId: 'G' })
      const stirredAt = play.nowMs
      for (const agoMs of [0, 299_999, 300_000, 300_001]) {
        play.nowMs = stirredAt + agoMs
        const { nowS, hands, pots } = inputOf(play)
        expect(pots.map((pot) => pot.readyAtS - nowS)).toEqual([0, 0])
        const fresh = hands[0].freeAtS - hands[0].open!.stirEndS <= 300
        expect([oddMs, agoMs, fresh]).toEqual([oddMs, agoMs, !isStale(play.table, 'G', play.nowMs)])
      }
    }
  })

  it('meets the kiln’s hour less loading, forgets an hour long past, and puts off what is put off', () => {
    const play = laid(['GB'], 2)
    const on = play.nowMs + 5 * 60 * MIN_MS
    play.act({ do: 'set-settings', settings: { kilnOnAt: on, loadMin: 30 } })
    expect(inputOf(play).deadline).toEqual({ loadStartS: Math.floor((on - 30 * MIN_MS) / 1000) })
    play.act({ do: 'put-off', potIds: [potId(2)], later: true })
    expect(inputOf(play).pots.map((pot) => pot.id)).toEqual([potId(1)])
    play.act({ do: 'put-off', potIds: [potId(2)], later: false })
    expect(inputOf(play).pots).toHaveLength(2)
    play.wait(30 * 3600)
    expect(inputOf(play).deadline).toBeNull()
  })

  it('a moved clock moves the kiln’s hour with it', () => {
    const play = laid(['GB'], 1)
    play.act({ do: 'set-settings', settings: { kilnOnAt: play.nowMs + 5 * 60 * MIN_MS } })
    const before = jobsOf(play.table, play.nowMs - play.table.skewMs).input
    play.nowMs += 60 * MIN_MS
    play.act({ do: 'clock-moved', byMs: 60 * MIN_MS })
    const after = jobsOf(play.table, play.nowMs - play.table.skewMs).input
    expect(after.nowS).toBe(before.nowS)
    expect(after.deadline!.loadStartS - before.deadline!.loadStartS).toBe(-3600)
  })
})

describe('late for the kiln (scenario 15)', () => {
  /** 130 min to the last OUT by the clock, 240 more to kiln-dry, loading six hours from the start. */
  const late = () => {
    const play = laid(['GB'], 1)
    play.act({
      do: 'set-settings',
      settings: {
        firstWaitMin: 130 - 3 - 16 / 60,
        kilnWaitMin: 240,
        loadMin: 30,
        kilnOnAt: play.nowMs + 390 * MIN_MS,
      },
    })
    const jobs = jobsOf(play.table, play.nowMs)
    return { play, told: scheduleFrom(jobs, plan(jobs.input), play.nowMs) }
  }

  it('is late by 10 min, and has ways out of it that are worth their name', () => {
    const { play, told } = late()
    expect(told.plan.latenessS).toBe(10 * MIN_S)
    const found = variantsOf(play.table, told, play.nowMs)
    expect(found.map(({ cut }) => cut)).toEqual(['candling', 'fewerCoats', 'nextFiring'])
    for (const { cut, table, action } of found) {
      const { input } = jobsOf(table, play.nowMs)
      if (cut === 'nextFiring') expect(input.pots).toEqual([])
      else expect(plan(input).latenessS).toBe(0)
      // Taken at the bench it is the table that was promised.
      const taken = late().play.act(action)
      expect(jobsOf(taken.table, taken.nowMs).input.pots).toEqual(input.pots)
    }
  })

  it('knows the fan where waits are computed, and the collars where there are any', () => {
    const play = new Play().act({ do: 'lay-demo' })
    play.act({ do: 'set-settings', settings: { kilnOnAt: play.nowMs + 3 * 60 * MIN_MS } })
    const jobs = jobsOf(play.table, play.nowMs)
    const told = scheduleFrom(jobs, plan(jobs.input, 5000), play.nowMs)
    const found = variantsOf(play.table, told, play.nowMs)
    const cuts = ['fan', 'otherBoard', 'candling', 'skipCollar', 'fewerCoats', 'nextFiring']
    expect(found.map(({ cut }) => cut)).toEqual(cuts)
    const dryS = (of: typeof play.table) => jobsOf(of, play.nowMs).input.pots.map((pot) => pot.kilnDryS)
    const [fan, window, still] = [dryS(found[0]!.table), dryS(found[1]!.table), dryS(play.table)]
    still.forEach((s, i) => {
      expect(fan[i]).toBeLessThan(window[i]!)
      expect(window[i]).toBeLessThan(s)
    })
    expect(found[3]!.potIds).toHaveLength(8)
  })
})
