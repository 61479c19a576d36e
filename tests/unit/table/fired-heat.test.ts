/** What cones and thermometer of a firing say of its heat, and of the pots that were in it. */
import { describe, expect, test } from 'vitest'
import type { ConeStand } from '../../../shared/load.ts'
import { dangersOf, reliefsOf } from '../../../src/table/fired/danger.ts'
import { limitsTold } from '../../../src/table/fired/limits.ts'
import { pairOf } from '../../../src/table/fired/pairs.ts'
import { resultsOf } from '../../../src/table/fired/results.ts'
import { collar, dipped, type FiredSpec, firing, loaded, whole } from '../../fixtures/fired/kiln-play.ts'
import { Play } from './play.ts'

const HOUR_S = 3600
const evening = () => new Play().act({ do: 'lay-demo' })
const none = { is: 'none' } as const
const lone = (potId: string, more: Partial<FiredSpec> = {}): FiredSpec => ({
  potId,
  coats: [whole('brackwater', 4)],
  ...more,
})
/** Of a pair without a tile. */
const over = (potId: string): FiredSpec => ({
  potId,
  coats: [whole('heather', 3), collar('brackwater', 40, 2)],
})

type Look = readonly [hours: number, tempC: number | null, cone?: readonly [string, ConeStand]]

/** A load lit by hand, read and looked at after so many hours each, off after the last and opened cold; then judged. */
function kept(
  play: Play,
  loadId: string,
  pots: readonly FiredSpec[],
  looks: readonly Look[],
  later?: readonly [string, ConeStand],
) {
  dipped(play, pots)
  loaded(
    play,
    loadId,
    pots.map(({ potId }) => potId),
  )
  play.act({ do: 'light', loadId })
  for (const [hours, tempC, cone] of looks) {
    play.wait(hours * HOUR_S)
    if (tempC !== null) play.act({ do: 'read-heat', loadId, tempC })
    if (cone) play.act({ do: 'see-cone', loadId, cone: cone[0], is: cone[1] })
  }
  play.act({ do: 'switch-off', loadId, sure: true })
  play.wait(15 * HOUR_S)
  play.act({ do: 'read-heat', loadId, tempC: 50 })
  play.act({ do: 'open-lid', loadId, tempC: 50 })
  if (later) play.act({ do: 'see-cone', loadId, cone: later[0], is: later[1] })
  for (const { potId, run = none, faults = [] } of pots) play.act({ do: 'judge', potId, run, faults })
}

const last = (play: Play) => resultsOf(play.table).at(-1)!

describe('a cone looked at before the end', () => {
  const heatAfter = (...cone: readonly [string, ConeStand][]) => {
    const play = evening()
    const [first, second] = cone
    kept(
      play,
      'one',
      [lone('a')],
      [
        [5, 900, first],
        [5, 1200],
        [1 / 3, 1222, second],
      ],
    )
    return last(play).heat!
  }
  test('says nothing of how it ended, standing as well as bending', () => {
    const unseen = heatAfter()
    expect(unseen).toMatchObject({ mean: 0, sd: 0.2, overK: null, short: false, unreached: false })
    expect(heatAfter(['5', 'standing'])).toEqual(unseen)
    expect(heatAfter(['6', 'standing'])).toEqual(unseen)
    expect(heatAfter(['6', 'bending'])).toEqual(unseen)
  })

  test('says how it ended where it is looked at then, and since', () => {
    expect(heatAfter(['5', 'standing'], ['6', 'standing']).overK).toBeLessThan(-15)
    expect(heatAfter(['5', 'down'], ['6', 'standing'])).toMatchObject({ overK: -18 })
    const play = evening()
    kept(play, 'one', [lone('a')], [[9, 1222]], ['6', 'standing'])
    expect(last(play).heat?.overK).toBeLessThan(-15)
  })

  test('that fell, or bent beyond the plan, says that it came so far at least', () => {
    expect(heatAfter(['5', 'down'])).toMatchObject({ overK: null, mean: 0 })
    expect(heatAfter(['6', 'down'])).toMatchObject({ overK: 0 })
    expect(heatAfter(['7', 'bending']).overK).toBeGreaterThan(5)
    expect(heatAfter(['7', 'down'], ['8', 'standing']).overK).toBeGreaterThan(15)
  })
})

describe('a kiln that was switched off far below its cone', () => {
  const twice = (topC: number, later?: readonly [string, ConeStand]) => {
    const play = evening()
    for (const loadId of ['one', 'two'])
      kept(
        play,
        loadId,
        [lone(`${loadId}a`), over(`${loadId}b`)],
        [
          [7, topC - 60],
          [1, topC],
        ],
        later,
      )
    return play
  }
  const pair = (play: Play) => pairOf(play.table, 'demo.brackwater', 'demo.heather').is

  test('teaches nothing by what did not run, offers no relief and proves no pair', () => {
    const [low, full] = [twice(1000), twice(1222)]
    expect(resultsOf(low.table).map(({ silent }) => silent)).toEqual(Array(4).fill('unreached'))
    expect(reliefsOf(low.table)).toEqual([])
    expect(pair(low)).toBe('untried')
    expect(reliefsOf(full.table).length).toBeGreaterThan(0)
    expect(pair(full)).toBe('proved')
  })

  test('was fired as planned where a cone says so: the thermometer was wrong', () => {
    expect(pair(twice(1000, ['6', 'down']))).toBe('proved')
  })

  test('is none that may have risen on after its last reading, or was held for long', () => {
    const play = evening()
    kept(
      play,
      'one',
      [lone('a')],
      [
        [7, 1000],
        [2, null],
      ],
    )
    expect(last(play).heat?.unreached).toBe(false)
    const long = evening()
    const hours = Array.from({ length: 23 }, (): Look => [1, 1125])
    kept(long, 'one', [lone('a')], [[9, 1125], ...hours])
    expect(last(long).heat?.unreached).toBe(false)
    const short = evening()
    kept(short, 'one', [lone('a')], [[9, 1125], ...hours.slice(-1)])
    expect(last(short).heat?.unreached).toBe(true)
  })

  test('is none by a reading that may be of its cooling', () => {
    for (const looks of [
      [[20, 300]],
      [
        [5, 700],
        [16, 300],
      ],
      [
        [5, 700],
        [16, 300],
        [1, null],
      ],
      [
        [5, 700],
        [16, 750],
      ],
    ] satisfies Look[][]) {
      const play = evening()
      for (const loadId of ['one', 'two']) kept(play, loadId, [lone(`${loadId}a`), over(`${loadId}b`)], looks)
      expect(resultsOf(play.table).map(({ silent }) => silent)).toEqual(Array(4).fill(undefined))
      expect(pair(play)).toBe('proved')
    }
  })

  test('stayed there though it was read as it fell: no gap was long enough to go up and come down', () => {
    const play = evening()
    kept(
      play,
      'one',
      [lone('a')],
      [
        [7, 940],
        [1, 1000],
        [1, 900],
        [5, 600],
      ],
    )
    expect(last(play).silent).toBe('unreached')
  })

  test('teaches what a hand takes in', () => {
    const play = twice(1000)
    for (const { pot, found } of resultsOf(play.table))
      play.act({ do: 'drop-lesson', potId: pot.facts.potId, lessonId: found.dropId, dropped: false })
    expect(resultsOf(play.table).map(({ silent }) => silent)).toEqual(Array(4).fill(undefined))
    expect(pair(play)).toBe('proved')
  })

  test('shows danger all the same by what ran there', () => {
    const play = evening()
    kept(play, 'one', [lone('a', { run: { is: 'shelf' } }), lone('b', { run: { is: 'shelf' } })], [[8, 1000]])
    expect(dangersOf(play.table).map(({ why }) => why)).toEqual(['more'])
  })

  test('says nothing of how thick a coat holds', () => {
    const limit = (topC: number) => {
      const play = evening()
      firing(play, 'zero', [lone('x', { faults: ['crawled'], run: none })])
      kept(
        play,
        'one',
        [lone('a'), lone('b')],
        [
          [7, topC - 60],
          [1, topC],
        ],
      )
      return limitsTold(play.table)[0]!
    }
    expect(limit(1222).pots).toHaveLength(3)
    expect(limit(1000).pots).toHaveLength(1)
  })
})
