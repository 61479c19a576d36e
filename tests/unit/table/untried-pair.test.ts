/** A pair that no tile was made of: what is planned for it, what the page says of that, and what its own pots say against it. */

import { describe, expect, test } from 'vitest'
import type { RunFacts } from '../../../shared/opening.ts'
import { dangersOf } from '../../../src/table/fired/danger.ts'
import { type FactorTold, factorsOf } from '../../../src/table/fired/lesson.ts'
import { asTold, takes } from '../../../src/table/fired/take.ts'
import { flowOf, toldFlowOf } from '../../../src/table/firing/glaze-flow.ts'
import { collar, type FiredSpec, firing, whole } from '../../fixtures/fired/kiln-play.ts'
import { firedLoad, LOAD } from '../../fixtures/opened.ts'
import { Play, START_MS } from './play.ts'

const TALL = { form: 'cylinder', heightMm: 150, rimMm: 80, wallMm: 5, footLineMm: 8 } as const
const lone = (potId: string, run: FiredSpec['run']): FiredSpec => ({
  potId,
  coats: [whole('brackwater', 4)],
  ...(run ? { run } : {}),
})
const pair = (potId: string, mm: number): FiredSpec => ({
  potId,
  coats: [collar('heather', 60, 3), collar('brackwater', 55, 4)],
  shape: TALL,
  run: { is: 'measured', mm },
})
const toldOf = (play: Play, underId?: string): FactorTold => {
  const told = factorsOf(play.table).find(
    (one) => one.bucketId === 'demo.brackwater' && one.underId === underId,
  )
  if (!told) throw new Error('nothing told')
  return told
}
/** What is planned for a glaze, or a pair, so many times what tiles tell. */
const planned = ({ table }: Play, underId: string | null): number =>
  (flowOf(table, 'demo.brackwater', underId)?.likelyPerMm ?? 0) /
  (toldFlowOf(table, 'demo.brackwater', underId)?.likelyPerMm ?? 1)

/** Brackwater alone, of two firings, taken as its pots ran. */
function taken(run: FiredSpec['run']): Play {
  const play = new Play().act({ do: 'lay-demo' })
  firing(play, 'one', [lone('a', run), lone('b', run)])
  firing(play, 'two', [lone('c', run), lone('d', run)])
  return play.act(takes(toldOf(play)))
}

describe('a glaze over another without a tile', () => {
  test('is not planned to run less because the glaze alone does', () => {
    const play = taken({ is: 'none' })
    expect(planned(play, null)).toBeLessThan(0.5)
    expect(planned(play, 'demo.heather')).toBe(1)
  })

  test('a stiff one over a runny one is planned by the runny one, and nothing says otherwise', () => {
    const play = new Play()
    for (const [i, events] of firedLoad(START_MS, 'up').entries()) play.append(events, `e${i}`)
    const judged = (n: number, run: RunFacts) =>
      play.append(
        [
          { kind: 'taken-out', potId: `demo.${n}`, loadId: LOAD },
          { kind: 'judged', potId: `demo.${n}`, loadId: LOAD, run, faults: [] },
        ],
        `j${n}`,
      )
    judged(34, { is: 'shelf' })
    judged(36, { is: 'measured', mm: 4, longestMm: 'shelf' })
    judged(38, { is: 'some' })
    const told = factorsOf(play.table).find((one) => one.underId === 'demo.brackwater')
    expect(told?.bucketId).toBe('demo.heather')
    expect(told?.used).toBe(1)
    // The glaze below runs as it did, whatever was taken of the pair.
    play.act({ ...takes(told!), factor: 0.3, low: 0.2, high: 0.4 })
    const less = factorsOf(play.table).find(({ key }) => key === told?.key)
    expect(less).toMatchObject({ used: 1, taken: true, still: 'same' })
    play.act(asTold(told!))
    expect(factorsOf(play.table).find(({ key }) => key === told?.key)?.used).toBe(1)
  })

  test('that ran farther than is planned is a danger, and the page says what is planned', () => {
    const play = taken({ is: 'none' })
    firing(play, 'three', [pair('p', 20), pair('q', 20)])
    firing(play, 'four', [pair('r', 20), pair('s', 20)])
    const told = toldOf(play, 'demo.heather')
    expect(told.used).toBe(planned(play, 'demo.heather'))
    expect(told.factor.likely).toBeGreaterThan(1.2 * told.used)
    expect(dangersOf(play.table)).toMatchObject([{ why: 'more', told: { underId: 'demo.heather' } }])
  })

  test('is planned to run more where a glaze alone does, and its page says so', () => {
    const play = taken({ is: 'shelf' })
    firing(play, 'three', [pair('p', 8), pair('q', 8)])
    const told = toldOf(play, 'demo.heather')
    expect(told.used).toBeGreaterThan(1.2)
    expect(told.used).toBe(planned(play, 'demo.heather'))
    expect(told.taken).toBe(false)
  })
})
