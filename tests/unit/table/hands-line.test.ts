import { describe, expect, it } from 'vitest'
import type { Foresight } from '../../../src/planner/index.ts'
import { handsLine, lateness, mayBeLate } from '../../../src/table/order/hands-line.ts'
import { twelve } from '../../fixtures/twelve.ts'
import { PlannedPlay } from './planned.ts'

const MIN_MS = 60_000

/** A small table with an hour of the kiln so long after what is likely, min, and so many in ten ways late. */
function line(slackMin: number, lateOdds: number) {
  const play = new PlannedPlay()
  for (const [i, events] of twelve(['GB'], 2).entries()) play.append(events, `laid-${i}`)
  play.wait(3600).act({
    do: 'set-settings',
    settings: { kilnOnAt: play.nowMs + 10 * 60 * MIN_MS, loadMin: 0 },
  })
  const told = play.schedule!
  const loadS = told.plan.dryAtS! + told.plan.slackS!
  const likely = loadS - slackMin * 60
  const foresight: Foresight = {
    finishS: { lower: 100, likely: 200, upper: 300 },
    dryAtS: { lower: likely - 600, likely, upper: likely + 600 },
    lateOdds,
    interruptionS: [120],
  }
  return handsLine(play.table, { ...told, foresight }, play.nowMs)!
}

describe('the hands line', () => {
  it('tells finish and kiln-dry from early to late, and what ten minutes more cost', () => {
    const { finish, kilnDry, interruptionMs, finishAt } = line(20, 0.05)
    expect(finish).toEqual({ early: 100_000, late: 300_000 })
    expect(finishAt).toBe(200_000)
    expect(kilnDry!.late - kilnDry!.early).toBe(20 * MIN_MS)
    expect(interruptionMs).toBe(2 * MIN_MS)
  })

  it('is late where that is more likely than not, and may be late before', () => {
    const said = (slackMin: number, odds: number) => {
      const of = line(slackMin, odds)
      return [lateness(of) / MIN_MS, mayBeLate(of)]
    }
    expect(said(20, 0.05)).toEqual([0, 0])
    expect(said(5, 0.3)).toEqual([0, 3])
    expect(said(-12, 0.8)).toEqual([12, 0])
  })
})
