import { describe, expect, it } from 'vitest'
import { keptLines } from '../../../src/screens/bench/kept-lines.ts'
import type { Kept } from '../../../src/table/card/card.ts'
import { WORDS } from '../../../src/words/bench.ts'
import { potId } from '../../fixtures/twelve.ts'
import { begun } from '../table/planned.ts'

const HOUR = 'at its hour'

describe('pots that are kept on purpose', () => {
  const { table, nowMs } = begun(['GB', 'GH', 'GL'], 2)
  const group = (bucketId: string, numbers: readonly number[], minutes: number): Kept => ({
    bucketId,
    potIds: numbers.map(potId),
    at: nowMs + minutes * 60_000,
    later: false,
  })
  const lines = (kept: readonly Kept[], most: number) =>
    keptLines(WORDS.en, () => HOUR, table, kept, nowMs, most)

  it('are told with their hour while that is to come, and without it once it is past', () => {
    expect(lines([group('B', [1, 2], 5)], 2)).toEqual([`Pots 1, 2 ready. Kept for Brackwater ${HOUR}.`])
    expect(lines([group('B', [1], -5)], 2)).toEqual(['Pot 1 ready. Kept for Brackwater.'])
  })

  it('are counted where they have no line', () => {
    const groups = [group('B', [1, 2], 5), group('H', [3], 10), group('L', [5, 6], 15)]
    expect(lines(groups, 3)).toHaveLength(3)
    expect(lines(groups, 2)).toEqual([
      `Pots 1, 2 ready. Kept for Brackwater ${HOUR}.`,
      `Pot 3 ready. Kept for Heather ${HOUR}. Two more kept.`,
    ])
    expect(lines(groups, 1)).toEqual([`Pots 1, 2 ready. Kept for Brackwater ${HOUR}. Three more kept.`])
  })
})
