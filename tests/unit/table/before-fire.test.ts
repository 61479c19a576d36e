import { describe, expect, test } from 'vitest'
import { inTheWay } from '../../../src/table/load/before-fire.ts'
import { levelsOf } from '../../../src/table/load/loads.ts'
import { steamsAt } from '../../../src/table/load/steam.ts'
import { longWaits } from '../../../src/table/steps/calls-ahead.ts'
import { begun, FIRING, lit, loadOf, planOf } from './kiln-play.ts'
import type { Play } from './play.ts'

function loadedAll(play: Play): Play {
  const { loadId } = loadOf(play)
  play.act({ do: 'lay-out', loadId, plan: planOf(play) })
  for (const { column, storey } of levelsOf(loadOf(play)))
    play.act({ do: 'load-shelf', loadId, column, storey })
  return play
}

describe('wet pots', () => {
  test('that were to be candled are asked about at the kiln, and there alone, once candling is off again', () => {
    const play = begun(1, 'round', 2)
    const { loadId } = loadOf(play)
    play.act({ do: 'set-candling', loadId, candle: true })
    loadedAll(play)
    expect(inTheWay(play.table, loadOf(play), play.nowMs).wet).toEqual([])
    play.act({ do: 'set-candling', loadId, candle: false })
    expect(inTheWay(play.table, loadOf(play), play.nowMs).wet.length).toBeGreaterThan(4)
    play.act({ do: 'shut-lid', loadId })
    expect(play.try({ do: 'light', loadId })?.field).toBe('wet')
    expect(loadOf(play).litAt).toBeUndefined()
    play.act({ do: 'set-candling', loadId, candle: true }).act({ do: 'light', loadId })
    expect(loadOf(play).litAt).toBeDefined()
  })

  test('that are dry by the hour the kiln is to go on are asked about when it goes on earlier', () => {
    const play = begun(1, 'round', 2)
    const { loadId } = loadOf(play)
    play.act({ do: 'set-settings', settings: { kilnOnAt: play.nowMs + 48 * 3_600_000 } })
    loadedAll(play).act({ do: 'shut-lid', loadId })
    expect(play.try({ do: 'light', loadId })?.field).toBe('wet')
    play.wait(48 * 3600).act({ do: 'light', loadId })
    expect(loadOf(play).litAt).toBeDefined()
  })

  test('that are lit all the same, or said late, are told of until the glass was clear twice or the water is out', () => {
    for (const how of [{ sure: true }, { sure: true, agoMin: 5 }]) {
      const play = begun(1, 'round', 2)
      const { loadId } = loadOf(play)
      const candle = (is: boolean) => play.act({ do: 'set-candling', loadId, candle: is })
      loadedAll(candle(true)).act({ do: 'shut-lid', loadId })
      candle(false)
      const wet = inTheWay(play.table, loadOf(play), play.nowMs).wet.length
      expect(wet).toBeGreaterThan(4)
      play.wait(600).act({ do: 'light', loadId, ...how })
      const steams = () => steamsAt(play.table, loadOf(play))
      expect(steams()?.wet.length).toBe(wet)
      play.wait(5400).act({ do: 'read-heat', loadId, tempC: 140 })
      expect(steams()).toMatchObject({ tempC: 140, atHeat: false })
      play.act({ do: 'hold-glass', loadId, fogged: false }).wait(1200)
      play.act({ do: 'hold-glass', loadId, fogged: false })
      expect(steams()).toBeUndefined()
      play.act({ do: 'hold-glass', loadId, fogged: true })
      expect(steams()?.atHeat).toBe(true)
      play.wait(5400).act({ do: 'read-heat', loadId, tempC: 360 })
      expect(steams()).toBeUndefined()
    }
    const dry = lit()
    expect(steamsAt(dry.table, loadOf(dry))).toBeUndefined()
  })
})

test('pots that are in the fire dry for no kiln, and are in no calendar', () => {
  const play = begun(1, 'round', 2)
  const { loadId } = loadOf(play)
  play.act({ do: 'set-candling', loadId, candle: true })
  loadedAll(play)
  const drying = () =>
    longWaits(play.table, play.nowMs).flatMap(({ what, pots }) => (what === 'kiln' ? pots : []))
  const before = drying().length
  const inLoad = Object.values(loadOf(play).things).filter(({ what }) => what === 'pot').length
  expect(inLoad).toBeGreaterThan(3)
  play.act({ do: 'shut-lid', loadId }).act({ do: 'light', loadId })
  expect(drying().length).toBeLessThanOrEqual(before - inLoad)
})

describe('a kiln that is hot with another load', () => {
  test('is asked about at lighting until it is cold; another kiln is not', () => {
    const play = lit()
    const first = loadOf(play)
    play.wait(6 * 3600).act({ do: 'read-heat', loadId: first.loadId, tempC: 800 })
    play.act({ do: 'begin-load', kilnId: first.kiln.kilnId, firing: FIRING })
    const { loadId } = loadOf(play)
    expect(inTheWay(play.table, loadOf(play), play.nowMs).hot?.loadId).toBe(first.loadId)
    expect(play.try({ do: 'light', loadId })?.field).toBe('hot-kiln')
    const other = { ...loadOf(play), kiln: { ...first.kiln, kilnId: 'other' } }
    expect(inTheWay(play.table, other, play.nowMs).hot).toBeUndefined()
    play.act({ do: 'switch-off', loadId: first.loadId, sure: true }).wait(20 * 3600)
    expect(play.try({ do: 'light', loadId })?.field).toBe('hot-kiln')
    play.act({ do: 'open-lid', loadId: first.loadId, tempC: 50 }).act({ do: 'light', loadId })
    expect(loadOf(play).litAt).toBeDefined()
  })

  test('is cold after four days, whatever nobody wrote down', () => {
    const play = lit()
    const first = loadOf(play)
    play.wait(97 * 3600).act({ do: 'begin-load', kilnId: first.kiln.kilnId, firing: FIRING })
    expect(inTheWay(play.table, loadOf(play), play.nowMs).hot).toBeUndefined()
  })
})
