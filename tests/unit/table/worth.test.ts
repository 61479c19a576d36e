import { describe, expect, test } from 'vitest'
import { UNLEARNED } from '../../../src/engine/index.ts'
import { weighingTells } from '../../../src/engine/wait/learn.ts'
import { courseOf, dryGlazeG, runPot, waterG } from '../../../src/engine/wall/pot.ts'
import { worthNow } from '../../../src/table/advice/worth.ts'
import { forecastOf } from '../../../src/table/forecast/forecast.ts'
import { historyOf } from '../../../src/table/forecast/pot-history.ts'
import { twelve } from '../../fixtures/twelve.ts'
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

  /** Twelve pots of two stacks; one has its coat now, and it is the moment to touch it. */
  const twelvePots = (): Play => {
    const play = new Play()
    for (const [i, events] of twelve(['GBH', 'BL'], 6).entries()) play.append(events, `laid-${i}`)
    return play.act({ do: 'set-settings', settings: { ...play.table.settings, readyMeans: 'touch' } })
  }
  const coatedOf = (potId: string, of = twelvePots()): Play => {
    of.act({ do: 'weigh', potId, grams: 400, as: 'bisque' }).act({ do: 'logged', potId, agoMin: 0 })
    return of
  }

  test('a pot on the scale buys what was promised, and more than a touch of the same would', () => {
    const { best, factor } = now(twelvePots())
    if (best?.kind !== 'scale' || best.coat !== 1) throw new Error(`offered: ${JSON.stringify(best)}`)
    const { potId } = best
    const coated = coatedOf(potId)
    const { pot, events, air0 } = historyOf(coated.table, coated.table.pots[potId]!)
    const course = courseOf(pot, events, air0)
    const spread = Math.hypot(UNLEARNED.fillSd, weighingTells({ pot, events, air0 }))
    const lnAfter = (play: Play): number => Math.log(now(play).factor)
    // The middles of five even parts of what the scale may show.
    const shown = [-1.28, -0.52, 0, 0.52, 1.28].map((sds) => {
      const run = runPot(course, Math.exp(spread * sds))
      const grams = 400 + waterG(run) + dryGlazeG(run)
      return lnAfter(coatedOf(potId).act({ do: 'weigh', potId, grams, as: 'now' }))
    })
    const weighed = Math.exp(shown.reduce((sum, ln) => sum + ln, 0) / shown.length)
    expect(best.factor / weighed).toBeGreaterThan(0.92)
    expect(best.factor / weighed).toBeLessThan(1.08)
    const felt = [true, false].map((dry) => {
      const play = coatedOf(potId)
      play.nowMs = forecastOf(play.table, play.table.pots[potId]!)!.touch.likely
      return lnAfter(play.act({ do: 'touched', potIds: [potId], dry }))
    })
    const touched = Math.exp((felt[0]! + felt[1]!) / 2)
    expect(weighed).toBeLessThan(touched)
    expect(touched).toBeLessThan(factor)
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
