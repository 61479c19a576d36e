import { describe, expect, test } from 'vitest'
import { matchPiece, notFound, shrinkageOf } from '../../../src/table/load/match.ts'
import { lit, loadOf } from './kiln-play.ts'
import type { Play } from './play.ts'

/** Fired, cool, the lid up. */
function opened(): Play {
  const play = lit().wait(10 * 3600)
  const { loadId } = loadOf(play)
  play.act({ do: 'switch-off', loadId, sure: true }).wait(20 * 3600)
  return play.act({ do: 'open-lid', loadId, tempC: 60 })
}
const shapeOf = (play: Play, potId: string) => {
  const shape = play.table.pots[potId]?.facts.shape
  if (!shape) throw new Error(`no ${potId}`)
  return { heightMm: shape.heightMm, widthMm: Math.max(shape.rimMm, shape.bellyMm ?? 0) }
}
/** As it comes out, so many per cent smaller. */
const smaller = (play: Play, potId: string, part: number) => {
  const { heightMm, widthMm } = shapeOf(play, potId)
  return { heightMm: Math.round(heightMm * (1 - part)), widthMm: Math.round(widthMm * (1 - part)) }
}

describe('which pot is this', () => {
  test('one like no other is told by its size alone, the likeliest first, at most three', () => {
    const play = opened()
    const { options, sure } = matchPiece(play.table, loadOf(play), smaller(play, 'demo.35', 0.05))
    expect(options[0]?.potId).toBe('demo.35')
    expect(sure).toBe(true)
    expect(options.length).toBeLessThanOrEqual(3)
    expect(matchPiece(play.table, loadOf(play), smaller(play, 'demo.35', 0.05)).options).toEqual(options)
    // Nothing is taken for it by that.
    expect(loadOf(play).matched).toBeUndefined()
  })

  test('with nothing but its shelf nobody is sure; with its place one is', () => {
    const play = opened()
    expect(matchPiece(play.table, loadOf(play), { place: '1' })).toMatchObject({ sure: false })
    const place = loadOf(play).things['demo.38']?.place ?? ''
    expect(matchPiece(play.table, loadOf(play), { place }).options[0]).toMatchObject({ potId: 'demo.38' })
  })

  test('what was found is asked about no more, is found once, and may be taken back', () => {
    const play = opened()
    const { loadId } = loadOf(play)
    const sizes = smaller(play, 'demo.35', 0.05)
    play.act({ do: 'match', loadId, potId: 'demo.35', sureness: 0.97, ...sizes })
    expect(loadOf(play).matched?.['demo.35']).toMatchObject({ sureness: 0.97, ...sizes })
    expect(notFound(play.table, loadOf(play)).map(({ facts }) => facts.potId)).not.toContain('demo.35')
    const again = matchPiece(play.table, loadOf(play), sizes)
    expect(again.options.map(({ potId }) => potId)).not.toContain('demo.35')
    const twice = { do: 'match', loadId, potId: 'demo.35', sureness: 0.5 } as const
    expect(play.try(twice)).toMatchObject({ field: 'matched-already', facts: { number: 35 } })
    play.act({ do: 'take-back' })
    expect(loadOf(play).matched).toBeUndefined()
  })

  test('how much the first ones shrank is expected of the next', () => {
    const play = opened()
    const { loadId } = loadOf(play)
    const told = shrinkageOf(play.table, loadOf(play))
    expect([told.mean, told.sd]).toEqual([expect.closeTo(0.05, 9), expect.closeTo(0.025, 9)])
    for (const potId of ['demo.34', 'demo.35', 'demo.36'])
      play.act({ do: 'match', loadId, potId, sureness: 0.9, ...smaller(play, potId, 0.1) })
    const learned = shrinkageOf(play.table, loadOf(play))
    expect(learned.mean).toBeGreaterThan(0.08)
    expect(learned.mean).toBeLessThan(0.1)
    expect(learned.sd).toBeLessThan(0.01)
  })

  test('bad input names field, value and range', () => {
    const play = lit()
    const { loadId } = loadOf(play)
    const match = (more: { potId?: string; sureness?: number; heightMm?: number }) =>
      play.try({ do: 'match', loadId, potId: 'demo.35', sureness: 0.9, ...more })
    expect(match({})?.field).toBe('not-open')
    play
      .wait(3600)
      .act({ do: 'switch-off', loadId, sure: true })
      .wait(30 * 3600)
    play.act({ do: 'open-lid', loadId, tempC: 60 })
    expect(match({ potId: 'nobody' })?.code).toBe('unknown-pot')
    expect(match({ heightMm: 700 })).toMatchObject({
      field: 'heightMm',
      facts: { value: 700, least: 10, most: 600 },
    })
    expect(match({ heightMm: Number.NaN })?.field).toBe('heightMm')
    expect(match({ sureness: 1.2 })).toMatchObject({ field: 'sureness', facts: { least: 0, most: 1 } })
    expect(loadOf(play).matched).toBeUndefined()
  })
})
