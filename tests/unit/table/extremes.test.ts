import { describe, expect, it } from 'vitest'
import type { FiringFacts } from '../../../shared/nouns.ts'
import { checkInput } from '../../../src/planner/problem/check.ts'
import { rideAlong } from '../../../src/table/advice/ticket.ts'
import { warningsFor } from '../../../src/table/advice/warnings.ts'
import { AS_IS, outlookOf, supposing } from '../../../src/table/advice/what-if.ts'
import { forecastOf } from '../../../src/table/forecast/forecast.ts'
import { potsOnTable } from '../../../src/table/model/plan.ts'
import { jobsOf } from '../../../src/table/order/jobs.ts'
import { Play } from './play.ts'

/** What once kept a screen from being shown: `tests/laws/any-table.test.ts` looks for more of it. */

const demo = () => new Play().act({ do: 'lay-demo' })
const YEARS_S = 3 * 365 * 86_400
const gatepost = (play: Play) => play.table.buckets['demo.gatepost']!.facts

describe('time', () => {
  it('lets a flow tile be chosen for pots that were wiped and not dipped yet', () => {
    const play = demo()
    const before = rideAlong(play.table)
    for (const { facts } of potsOnTable(play.table))
      play.act({ do: 'waxed', potId: facts.potId }).wait(400).act({ do: 'wiped', potId: facts.potId })
    expect(rideAlong(play.table)).toMatchObject({ over: before?.over, under: before?.under })
  })

  it('takes up a pot that stood for years, and the air of today', () => {
    const play = demo().act({ do: 'logged', potId: 'demo.33', agoMin: 0 }).wait(YEARS_S)
    play.act({ do: 'set-air', air: { tempC: 20, rh: 0.5, draught: 'room' } })
    expect(forecastOf(play.table, play.table.pots['demo.33']!)?.touch.upper).toBeLessThan(play.nowMs)
    play.act({ do: 'logged', potId: 'demo.33', agoMin: 0 })
    expect(forecastOf(play.table, play.table.pots['demo.33']!)?.touch.upper).toBeGreaterThan(play.nowMs)
    expect(play.card.kind).not.toBe('empty')
  })
})

describe('the order of work', () => {
  const told =
    ({ table, nowMs }: Play) =>
    () =>
      checkInput(jobsOf(table, nowMs).input)

  it('is asked for with pots that were left half done for years, and a bucket left open', () => {
    const play = demo().act({ do: 'stirred', bucketId: 'demo.gatepost' })
    play.act({ do: 'logged', potId: 'demo.33', agoMin: 0 }).wait(YEARS_S)
    expect(told(play)).not.toThrow()
  })

  it('has room for every coat of a stack: more are refused', () => {
    const coat = { bucketId: 'demo.gatepost', cover: { kind: 'full' }, holdS: 2 } as const
    const stack = (many: number) => ({
      stackId: 'demo.doorstep',
      name: 'Many',
      coats: Array(many).fill(coat),
    })
    const play = demo()
    expect(play.try({ do: 'set-stack', stack: stack(21) })).toMatchObject({
      code: 'out-of-range',
      field: 'coats',
    })
    play.act({ do: 'set-stack', stack: stack(20) })
    expect(told(play)).not.toThrow()
  })

  it('is asked for where water-based wax never sets', () => {
    const play = demo().act({ do: 'set-settings', settings: { wax: 'water', waxFirst: false } })
    play.act({ do: 'set-air', air: { tempC: 20, rh: 1, draught: 'still' } })
    expect(told(play)).not.toThrow()
  })
})

describe('a bucket as thick as the coat itself', () => {
  it('is no target: refused with the range that its solids leave', () => {
    const play = demo()
    const bucket = { ...gatepost(play), targetGramsPerMl: 1.75 }
    expect(play.try({ do: 'set-bucket', bucket })).toEqual({
      code: 'out-of-range',
      field: 'gramsPerMl',
      facts: { value: 1.75, least: 1.05, most: 1.69 },
    })
  })

  it('may be read, and is warned of', () => {
    const play = demo().act({ do: 'read-density', bucketId: 'demo.gatepost', gramsPerMl: 1.9 })
    const kinds = warningsFor(play.table, play.table.pots['demo.33']!, 'demo.gatepost', play.nowMs).map(
      ({ kind }) => kind,
    )
    expect(kinds).toContain('density')
    expect(play.card.kind).toBe('wax')
  })

  it('says nothing of its pick-up by a scratch ten times off', () => {
    const play = demo().act({
      do: 'set-board',
      board: { ...new Play().table.board, sorptivityMmPerSqrtS: 0.01 },
    })
    const bucket = { ...gatepost(play), targetGramsPerMl: 1.05, pinMm: 1.5 }
    play.act({ do: 'set-bucket', bucket })
    expect(play.card.kind).toBe('wax')
    expect(warningsFor(play.table, play.table.pots['demo.33']!, 'demo.gatepost', play.nowMs)).toBeDefined()
  })
})

describe('a wall too thick for the form', () => {
  const plate = { form: 'plate', heightMm: 22, rimMm: 200, wallMm: 20, footLineMm: 4 } as const

  it('is refused, and nothing is put on the board', () => {
    const play = demo()
    const before = potsOnTable(play.table).length
    expect(play.try({ do: 'set-pot', pot: { shape: plate, stackId: 'demo.doorstep' } })).toEqual({
      code: 'no-such-pot',
      field: 'wallMm',
    })
    expect(potsOnTable(play.table)).toHaveLength(before)
  })

  it('is not supposed either', () => {
    const play = demo()
    const { facts } = play.table.pots['demo.38']!
    const [table, pot] = supposing(play.table, facts, { ...AS_IS, wallMm: 27 })
    expect(outlookOf(table, pot, table.stacks['demo.doorstep']!.coats, play.nowMs).coats).toHaveLength(2)
  })
})

describe('a flow tile', () => {
  const firing: FiringFacts = { cone: '022', make: 'american', riseCPerH: 60, holdMin: 0 }
  const runs = (stripe: { dryMm: number; bandMm: number; runMm: number }, at: FiringFacts) => {
    const play = demo()
    for (const tileId of Object.keys(play.table.tiles)) play.act({ do: 'remove-tile', tileId })
    play.act({ do: 'read-tile', tile: { bucketId: 'demo.gatepost', firing: at, stripes: [stripe] } })
    const said = warningsFor(play.table, play.table.pots['demo.33']!, 'demo.gatepost', play.nowMs)
    return said.find(({ kind }) => kind === 'run')
  }

  it('read a tenth as thick as it was is over, not an error', () => {
    const wrong = { dryMm: 0.05, bandMm: 60, runMm: 300 }
    expect(runs(wrong, { ...firing, cone: '6' })).toMatchObject({ grade: 'over' })
  })

  it('of a firing as far off as can be is over, not an error', () => {
    expect(runs({ dryMm: 0.5, bandMm: 60, runMm: 2 }, firing)).toMatchObject({ grade: 'over', carried: true })
  })
})

it('a pot of the hands’ own choice is told how many are left like it', () => {
  const play = demo()
  expect(play.card).toMatchObject({ kind: 'wax', left: 8 })
  play.act({ do: 'pick', potId: 'demo.35' })
  expect(play.card).toMatchObject({ kind: 'wax', potId: 'demo.35', left: 8 })
})
