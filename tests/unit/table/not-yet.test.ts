/** A coat that a finger found NOT YET dry: only another touch says that it is, and it is never told as past. */

import { describe, expect, it } from 'vitest'
import type { Settings } from '../../../shared/nouns.ts'
import { forecastOf } from '../../../src/table/forecast/forecast.ts'
import { lessonsUsed } from '../../../src/table/forecast/learning.ts'
import { wetnessAt } from '../../../src/table/forecast/wetness.ts'
import { planOf } from '../../../src/table/model/plan.ts'
import { mayBeDipped, stepOf } from '../../../src/table/steps/steps.ts'
import { PlannedPlay } from './planned.ts'
import { Play } from './play.ts'

const MIN_MS = 60_000

/** The demo's table with one pot alone, its first coat on now. */
function alone<P extends Play>(play: P, potId: string): P {
  play.act({ do: 'lay-demo' })
  for (const id of Object.keys(play.table.pots))
    if (id !== potId) play.append([{ kind: 'pot-gone', potId: id }], `gone-${id}`)
  return play.act({ do: 'logged', potId, agoMin: 0 })
}

const potOf = (play: Play, potId: string) => play.table.pots[potId]!
const nextBucketOf = (play: Play, potId: string) => planOf(play.table, potOf(play, potId))[1]!.bucketId
const stepNow = (play: Play, potId: string) => stepOf(play.table, potOf(play, potId), play.nowMs)
const notYet = (play: Play, potId: string) => play.act({ do: 'touched', potIds: [potId], dry: false })

/** To the next time that it is asked about. */
function untilAsked(play: Play, potId: string): void {
  const step = stepNow(play, potId)
  const askAt = 'askAt' in step ? step.askAt : forecastOf(play.table, potOf(play, potId))!.ready.likely
  play.nowMs = Math.max(play.nowMs, askAt) + 1000
}

const READY: readonly Settings['readyMeans'][] = ['touch', 'thirsty', 'clock']

describe.each(READY)('by %s', (readyMeans) => {
  it.each(['demo.33', 'demo.34', 'demo.36'])(
    '%s is asked about ever again and offers no dip, picked or not, until a touch says dry',
    (potId) => {
      const play = new Play()
      alone(play, potId).act({ do: 'set-settings', settings: { readyMeans } })
      untilAsked(play, potId)
      for (let i = 0; i < 12; i++) {
        notYet(play, potId)
        const before = play.nowMs
        untilAsked(play, potId)
        expect(play.nowMs).toBeGreaterThanOrEqual(before + 2 * MIN_MS)
        play.act({ do: 'stirred', bucketId: nextBucketOf(play, potId) }).act({ do: 'pick', potId })
        expect(stepNow(play, potId)).toMatchObject({ is: 'touch', notYet: true })
        expect(mayBeDipped(stepNow(play, potId), play.nowMs + 24 * 60 * MIN_MS)).toBe(false)
        expect(play.card.kind).toBe('ready')
      }
      play.act({ do: 'touched', potIds: [potId], dry: true })
      expect(stepNow(play, potId).is).toBe('dip')
    },
  )
})

it('the order of work arms no dip of a coat that was found NOT YET dry', () => {
  const play = alone(new PlannedPlay(), 'demo.33')
  for (let i = 0; i < 8; i++) {
    untilAsked(play, 'demo.33')
    play.ask()
    if (play.card.kind === 'stir') play.bar().ask()
    expect(play.card).toMatchObject({ kind: 'ready', potIds: ['demo.33'] })
    notYet(play, 'demo.33')
  }
})

it('START of such a coat, by hand, says nothing of it and teaches no dry', () => {
  const play = alone(new Play(), 'demo.33')
  untilAsked(play, 'demo.33')
  notYet(play, 'demo.33')
  untilAsked(play, 'demo.33')
  const bucketId = nextBucketOf(play, 'demo.33')
  play.act({ do: 'stirred', bucketId })
  play.act({ do: 'start', potId: 'demo.33', again: false, unstirred: false })
  expect(potOf(play, 'demo.33').touches.map(({ dry }) => dry)).toEqual([false])
  const looks = lessonsUsed(play.table).map(({ observation }) => observation)
  expect(looks).toHaveLength(1)
  expect(looks[0]).not.toHaveProperty('dryMin')
})

it.each(['demo.31', 'demo.33', 'demo.36', 'demo.37'])(
  '%s: what is told after NOT YET lies ahead, and no sooner the later it was',
  (potId) => {
    let before = { lower: 0, likely: 0, upper: 0 }
    for (const part of [0.3, 0.7, 1, 1.5, 2.5, 4, 8, 20]) {
      const play = alone(new Play(), potId)
      const out = play.nowMs
      const likely = forecastOf(play.table, potOf(play, potId))!.ready.likely
      play.nowMs = out + (likely - out) * part
      notYet(play, potId)
      const { ready, thirsty, kiln } = forecastOf(play.table, potOf(play, potId))!
      for (const edge of ['lower', 'likely', 'upper'] as const) {
        expect(ready[edge]).toBeGreaterThan(play.nowMs)
        expect(ready[edge] - out).toBeGreaterThan(before[edge])
        expect(thirsty[edge]).toBeGreaterThanOrEqual(ready[edge])
        expect(kiln[edge]).toBeGreaterThanOrEqual(thirsty[edge])
      }
      before = { lower: ready.lower - out, likely: ready.likely - out, upper: ready.upper - out }
    }
  },
)

it('of a coat found NOT YET dry something is still drawn wet, until it is likely dry after all', () => {
  const play = alone(new Play(), 'demo.33')
  const damp = () => wetnessAt(play.table, potOf(play, 'demo.33'), play.nowMs).damp
  untilAsked(play, 'demo.33')
  expect(damp()).toBe(0)
  notYet(play, 'demo.33')
  expect(damp()).toBeGreaterThan(0.05)
  const before = damp()
  play.wait(60)
  expect(damp()).toBeLessThan(before)
  play.nowMs = forecastOf(play.table, potOf(play, 'demo.33'))!.touch.likely
  expect(damp()).toBe(0)
})

it('by the clock a wall dries as it does, sooner or later than its minutes', () => {
  const play = alone(new Play(), 'demo.33').act({ do: 'set-settings', settings: { readyMeans: 'clock' } })
  const { ready, touch } = forecastOf(play.table, potOf(play, 'demo.33'))!
  expect(ready.likely).toBeGreaterThan(touch.likely + MIN_MS)
  const at = (ms: number) => wetnessAt(play.table, potOf(play, 'demo.33'), ms)
  expect(at(touch.likely)).toEqual({ film: 0, damp: 0 })
  expect(at(touch.likely - MIN_MS).damp).toBeGreaterThan(0.05)
})
