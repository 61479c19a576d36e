import { describe, expect, test } from 'vitest'
import type { PotFacts } from '../../../shared/nouns.ts'
import { meltPreviewOf } from '../../../src/table/advice/melt-preview.ts'
import { outlookOf } from '../../../src/table/advice/what-if.ts'
import { Play } from './play.ts'

function look(play: Play, number: number, more: Partial<PotFacts> = {}, frames = 13) {
  const { table, nowMs } = play
  const facts = { ...table.pots[`demo.${number}`]!.facts, ...more }
  const { coats } = table.stacks[facts.stackId]!
  return meltPreviewOf(table, facts, coats, outlookOf(table, facts, coats, nowMs), frames)
}
const evening = () => new Play().act({ do: 'lay-demo' })

describe('melt look-ahead of a stack', () => {
  test('goes from raw over the planned cone to one over', () => {
    const melting = look(evening(), 35)!
    expect(melting.look.frames).toHaveLength(13)
    expect(melting.look.frames[melting.plannedAt]!.share).toBe(1)
    expect(melting.look.frames.at(-1)!.share).toBeGreaterThan(1)
    expect(melting.endings.map(({ cone }) => cone)).toEqual(['6', '7'])
    expect(melting.endings[0]!.room.verdict).toBe('over')
    expect(melting.endings.map(({ carried }) => carried)).toEqual([false, true])
  })

  test('one over runs farther than planned, and its verdict is no easier', () => {
    const [planned, over] = look(evening(), 31)!.endings
    expect(over!.room.marginRunMm).toBeGreaterThan(planned!.room.marginRunMm)
    expect([planned!.room.verdict, over!.room.verdict]).toEqual(['near', 'over'])
  })

  test('three stills are raw, planned, one over', () => {
    const { look: seen, plannedAt } = look(evening(), 33, {}, 3)!
    expect([seen.frames.length, plannedAt]).toEqual([3, 1])
  })

  test('the coats are drawn in their order, the upper one sliding', () => {
    const { look: seen, patterns } = look(evening(), 33)!
    const glazes = seen.frames[0]!.edges.map(({ glazeId }) => patterns[glazeId])
    expect(glazes).toEqual(['hatch', 'wave', 'brick'])
    const wave = seen.frames.map(({ edges }) => edges[1]!.fromMm)
    expect(wave.every((mm, i) => i === 0 || mm <= wave[i - 1]!)).toBe(true)
    expect(wave.at(-1)).toBeLessThan(wave[0]! - 3)
  })

  test('a flat is not judged, and says so', () => {
    const plate = { form: 'plate', heightMm: 25, rimMm: 220, wallMm: 5, footLineMm: 4 } as const
    const { endings } = look(evening(), 33, { shape: plate })!
    expect(endings[0]!.room.doubts).toContain('flat')
    expect(endings[0]!.room.verdict).toBe('unknown')
  })

  test('a glaze without a tile is unknown, never clear', () => {
    const play = evening()
    for (const { tileId, bucketId } of Object.values(play.table.tiles))
      if (bucketId === 'demo.heather') play.act({ do: 'remove-tile', tileId })
    const { endings } = look(play, 34)!
    expect(endings[0]!.room).toMatchObject({ verdict: 'unknown', untestedGlazes: ['demo.heather'] })
  })

  test('without a firing or a tile there is nothing to look at', () => {
    const play = new Play()
    play.append(
      evening()
        .events.map(({ event }) => event)
        .filter(({ kind }) => !/tile|firing/.test(kind)),
      'earlier',
    )
    expect(look(play, 33)).toBeUndefined()
  })
})
