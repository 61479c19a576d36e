/** A dipped tile against tiles of known density: an alarm at a bucket, never its density. */
import { describe, expect, test } from 'vitest'
import { tileSays, withTile } from '../../../src/table/forecast/dipped-tile.ts'
import { Play } from './play.ts'

const TARGET = { targetGramsPerMl: 1.45, toleranceGramsPerMl: 0.02 }
const KNOWN = [{ gainG: 8, gramsPerMl: 1.45 }]

test('says which way a bucket is off, nothing of an ordinary one, and nothing at all without a comparison', () => {
  expect(tileSays(TARGET, [], 8)).toBeUndefined()
  expect(tileSays(TARGET, KNOWN, 8.3)).toBe('nothing')
  expect(tileSays(TARGET, KNOWN, 13)).toBe('thick')
  expect(tileSays(TARGET, KNOWN, 5)).toBe('thin')
  // Kept from a thick evening, so that the same gain is thick again.
  expect(tileSays(TARGET, Array(3).fill({ gainG: 8, gramsPerMl: 1.53 }), 8)).toBe('thick')
})

test('keeps the latest six', () => {
  const tiles = Array.from({ length: 8 }, (_, i) => ({ gainG: i + 1, gramsPerMl: 1.45 }))
  const kept = tiles.reduce<ReturnType<typeof withTile>>(withTile, [])
  expect(kept.map(({ gainG }) => gainG)).toEqual([3, 4, 5, 6, 7, 8])
})

describe('kept with its bucket', () => {
  const set = (dippedTiles: readonly { gainG: number; gramsPerMl: number }[]) => {
    const play = new Play().act({ do: 'lay-demo' })
    const facts = play.table.buckets['demo.gatepost']?.facts
    if (!facts) throw new Error('no bucket')
    const refusal = play.try({ do: 'set-bucket', bucket: { ...facts, dippedTiles } })
    return { refusal, bucket: play.table.buckets['demo.gatepost'] }
  }

  test('and moves no density', () => {
    const { refusal, bucket } = set([{ gainG: 8, gramsPerMl: 1.53 }])
    expect(refusal).toBeUndefined()
    expect(bucket?.facts.dippedTiles).toEqual([{ gainG: 8, gramsPerMl: 1.53 }])
    expect(bucket?.gramsPerMl).toBe(1.45)
  })

  test.each([
    [{ gainG: 0, gramsPerMl: 1.45 }, 'tileG'],
    [{ gainG: 8, gramsPerMl: 3 }, 'gramsPerMl'],
    [{ gainG: Number.NaN, gramsPerMl: 1.45 }, 'tileG'],
  ])('%o is refused', (tile, field) => {
    expect(set([tile]).refusal).toMatchObject({ code: 'out-of-range', field })
  })
})
