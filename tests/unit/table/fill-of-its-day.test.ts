/** A fired pot keeps the fills that it was dipped from, whatever is scratched and weighed of those that came later. */
import { expect, test } from 'vitest'
import { againOf } from '../../../src/table/fired/again.ts'
import { firedZones } from '../../../src/table/fired/fired-coats.ts'
import { factorsOf } from '../../../src/table/fired/lesson.ts'
import { limitsTold, thickestMm } from '../../../src/table/fired/limits.ts'
import { resultsOf } from '../../../src/table/fired/results.ts'
import { dipped, type FiredSpec, fired, firing, whole } from '../../fixtures/fired/kiln-play.ts'
import { Play } from './play.ts'

const BUCKET = 'demo.brackwater'
const pot = (potId: string, more: Partial<FiredSpec> = {}): FiredSpec => ({
  potId,
  coats: [whole('brackwater', 4)],
  run: { is: 'measured', mm: 4 },
  ...more,
})
const potOf = (play: Play, potId: string) => {
  const found = play.table.pots[potId]
  if (!found) throw new Error(`no ${potId}`)
  return found
}
/** The bucket is filled anew, and of that fill a scratch through a fresh coat and a slide are entered. */
function filledAnew(play: Play, pinMm: number): Play {
  play.wait(3600).append([{ kind: 'filled', bucketId: BUCKET, fillId: 'anew', litres: 11 }], 'fill')
  const facts = play.table.buckets[BUCKET]?.facts
  if (!facts) throw new Error('no bucket')
  return play.act({ do: 'set-bucket', bucket: { ...facts, pinMm, clingsGramsPerCm2: 0.03 } })
}
const again = (play: Play) => {
  const told = againOf(play.table, potOf(play, 'a'), play.nowMs)
  return 'why' in told ? undefined : told.coats[0]
}

test.each([
  ['of a load', {}],
  ['of no load here', { loose: true as const }],
])('a fired pot %s', (_of, more) => {
  const play = new Play().act({ do: 'lay-demo' })
  firing(play, 'one', [pot('a', { ...more, faults: ['crawled'] }), pot('b', more)])
  const told = () => ({
    mm: thickestMm(firedZones(play.table, potOf(play, 'a')), { bucketId: BUCKET }),
    lnK: resultsOf(play.table).map(({ lnK }) => lnK),
    factor: factorsOf(play.table).map(({ factor }) => factor),
    limitMm: limitsTold(play.table).map(({ limitMm }) => limitMm),
  })
  const before = told()
  const then = again(play)
  expect(before.mm).toBeGreaterThan(0.2)
  filledAnew(play, 0.9)
  expect(told()).toEqual(before)
  // Today's fill goes on thicker: fewer seconds give what it was.
  expect(again(play)?.wantedMm).toBe(then?.wantedMm)
  expect(again(play)?.holdS).toBeLessThan(then?.holdS ?? 0)
})

test('a pot that waited for its kiln keeps the scratch of the fill that it was dipped from', () => {
  const waits = (scratched: boolean) => {
    const play = new Play().act({ do: 'lay-demo' })
    dipped(play, [pot('a')])
    const facts = play.table.buckets[BUCKET]!.facts
    // What is scratched of its own fill afterwards counts.
    if (scratched) play.act({ do: 'set-bucket', bucket: { ...facts, pinMm: 0.6 } })
    const mm = () => thickestMm(firedZones(play.table, potOf(play, 'a')), { bucketId: BUCKET })
    const atDip = mm()
    filledAnew(play, 0.9)
    expect(mm()).toBe(atDip)
    filledAnew(play, 0.3)
    dipped(play, [pot('b')])
    fired(play, 'one', ['a', 'b'])
    expect(mm()).toBe(atDip)
    filledAnew(play, 0.8)
    play.append(
      [{ kind: 'judged', potId: 'a', loadId: 'one', run: { is: 'none' }, faults: ['crawled'] }],
      'judge',
    )
    expect(thickestMm(firedZones(play.table, potOf(play, 'b')), { bucketId: BUCKET })).toBeLessThan(
      0.9 * atDip,
    )
    expect(limitsTold(play.table)[0]?.limitMm).toBeLessThan(atDip)
    return atDip
  }
  expect(waits(true)).toBeGreaterThan(1.2 * waits(false))
})

test('a bucket keeps what its fills were known by once for those that were known alike', () => {
  const play = new Play().act({ do: 'lay-demo' })
  const filled = () =>
    play.wait(3600).append([{ kind: 'filled', bucketId: BUCKET, fillId: 'f', litres: 11 }], `f${play.nowMs}`)
  filled()
  filled()
  expect(play.table.buckets[BUCKET]?.past).toEqual([
    { until: play.nowMs, facts: play.table.buckets[BUCKET]?.facts },
  ])
})

test('a pot that is dipped after it goes by the scratch of today', () => {
  const play = new Play().act({ do: 'lay-demo' })
  firing(play, 'one', [pot('a')])
  filledAnew(play, 0.9)
  firing(play, 'two', [pot('c')])
  const mm = (potId: string) => thickestMm(firedZones(play.table, potOf(play, potId)), { bucketId: BUCKET })
  expect(mm('c')).toBeGreaterThan(1.2 * mm('a'))
})
