import { describe, expect, test } from 'vitest'
import { boardFill, litresNow } from '../../../src/table/advice/fill.ts'
import { warningsFor } from '../../../src/table/advice/warnings.ts'
import { densityOfCup } from '../../../src/table/entry/mix.ts'
import { Play } from './play.ts'

const evening = () => new Play().act({ do: 'lay-demo' })
const gatepost = (play: Play) => play.table.buckets['demo.gatepost']!

describe('what is in a bucket', () => {
  test('12 L stand 182 mm deep in 290 mm, and each dip takes some of it', () => {
    const play = evening()
    const before = boardFill(play.table, gatepost(play))
    // V = pi/4 · 2.9² dm² · h: 12 L / 6.605 dm² = 1.817 dm.
    expect(before.levelMm).toBeCloseTo(181.7, 1)
    expect(before.afterLitres).toBeLessThan(before.litres)
    play.act({ do: 'logged', potId: 'demo.37', agoMin: 0 })
    const taken = before.litres - litresNow(play.table, gatepost(play))
    expect(taken).toBeGreaterThan(0.02)
    expect(taken).toBeLessThan(0.4)
    const after = boardFill(play.table, gatepost(play))
    expect(after.dips).toBe(before.dips - 1)
    expect(after.afterLitres).toBeCloseTo(before.afterLitres, 6)
  })

  test('stirs are in the log, those in a row as one line', () => {
    const play = evening()
    for (let i = 0; i < 3; i++) play.wait(60).act({ do: 'stirred', bucketId: 'demo.gatepost' })
    play.act({ do: 'sieved', bucketId: 'demo.gatepost' }).act({ do: 'stirred', bucketId: 'demo.gatepost' })
    expect(gatepost(play).log.map(({ what, value }) => [what, value])).toEqual([
      ['stirred', 3],
      ['sieved', undefined],
      ['stirred', 1],
    ])
    expect(gatepost(play).log.at(-1)!.at).toBe(gatepost(play).stirredAt)
  })

  test('a level that is read counts from then; a new fill begins a new log and keeps the facts', () => {
    const play = evening().act({ do: 'logged', potId: 'demo.37', agoMin: 0 }).wait(60)
    play
      .act({ do: 'read-level', bucketId: 'demo.gatepost', litres: 12 })
      .act({ do: 'sieved', bucketId: 'demo.gatepost' })
    play.act({ do: 'read-density', bucketId: 'demo.gatepost', gramsPerMl: 1.5 })
    expect(litresNow(play.table, gatepost(play))).toBe(12)
    expect(gatepost(play).log.map(({ what }) => what)).toEqual(['level', 'sieved', 'density'])
    play.wait(60).act({ do: 'refill', bucketId: 'demo.gatepost', litres: 10 })
    expect(gatepost(play)).toMatchObject({ gramsPerMl: 1.45, log: [{ what: 'filled', value: 10 }] })
    expect(gatepost(play).densityAt).toBeUndefined()
  })

  test.each([
    ['refill', 0.1],
    ['read-level', 22],
    ['read-level', Number.NaN],
  ] as const)('%s of %s L is refused with what the bucket holds', (what, litres) => {
    const refusal = evening().try({ do: what, bucketId: 'demo.gatepost', litres })
    expect(refusal).toMatchObject({ code: 'out-of-range', field: 'litres' })
  })

  test('half a bucket does not cover the bottle, nor half of a plate held sideways; a wide plate is told', () => {
    const play = evening().act({ do: 'read-level', bucketId: 'demo.gatepost', litres: 8 })
    const fill = boardFill(play.table, gatepost(play))
    expect(fill.worst).toMatchObject({ pot: { facts: { number: 35 } }, fit: { misfit: 'shallow' } })
    const side = { bucketId: 'demo.gatepost', cover: { kind: 'side' }, holdS: 3 } as const
    const said = (rimMm: number, litres: number) => {
      const shape = { form: 'plate', heightMm: 40, rimMm, wallMm: 6, footLineMm: 5 } as const
      const { potId } = Object.values(
        play.act({ do: 'set-pot', pot: { shape, stackId: 'demo.doorstep' } }).table.pots,
      ).at(-1)!.facts
      play.act({ do: 'set-plan', potId, coats: [side, side] })
      play.act({ do: 'read-level', bucketId: 'demo.gatepost', litres })
      const warnings = warningsFor(play.table, play.table.pots[potId]!, 'demo.gatepost', play.nowMs)
      return warnings.flatMap((w) => (w.kind === 'fit' ? w.misfit : w.kind === 'level' ? w.kind : []))
    }
    expect(said(240, 8)).toEqual(['level'])
    expect(said(240, 13)).toEqual([])
    expect(said(320, 13)).toEqual(['mouth'])
  })
})

test('a cup of 100 ml that weighs 52 g empty and 197 g full is 1.45', () => {
  expect(densityOfCup(100, 52, 197)).toBeCloseTo(1.45, 9)
  expect(() => densityOfCup(0, 52, 197)).toThrow(/^cupMl is 0: must be from 20/)
})
