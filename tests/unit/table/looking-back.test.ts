/** What looking back is drawn from: runs told and found, waits by the checks behind them, a bucket's density. */
import { describe, expect, test } from 'vitest'
import '../../../src/table/forecast/walls.ts'
import type { RunFacts } from '../../../shared/opening.ts'
import { densityCourse } from '../../../src/table/opening/density-course.ts'
import { narrowing } from '../../../src/table/opening/narrowing.ts'
import { potsWith, resultsWith } from '../../../src/table/opening/of-glaze.ts'
import { toldFound } from '../../../src/table/opening/told-found.ts'
import { dipped, fired, firing, whole } from '../../fixtures/fired/kiln-play.ts'
import { yearOf } from '../../fixtures/year.ts'
import { Play, START_MS } from './play.ts'

const coats = [whole('gatepost', 4), whole('brackwater', 3)]

describe('runs told and found', () => {
  const app = { lowMm: 2, likelyMm: 4, highMm: 6, roomMm: 9 }
  function found(run: RunFacts, guess = app) {
    const play = new Play().act({ do: 'lay-demo' })
    dipped(play, [{ potId: 'p', coats }])
    fired(play, 'l', ['p'], [['6', 'down']])
    play.append([{ kind: 'guessed', potId: 'p', loadId: 'l', mm: 3, app: guess }], 'guess')
    play.append([{ kind: 'judged', potId: 'p', loadId: 'l', run, faults: [] }], 'judge')
    return toldFound(play.table)[0]
  }

  test.each<readonly [RunFacts, string]>([
    [{ is: 'none' }, 'less'],
    [{ is: 'measured', mm: 1 }, 'less'],
    [{ is: 'measured', mm: 6 }, 'within'],
    [{ is: 'measured', mm: 7 }, 'farther'],
    [{ is: 'shelf' }, 'farther'],
    [{ is: 'some' }, 'within'],
  ])('of 2 to 6 mm told, %j is %s', (run, is) => {
    expect(found(run)).toMatchObject({ by: 'guess', likelyMm: 4, is })
  })

  test('a drip on the shelf came onto the shelf', () => {
    expect(found({ is: 'measured', mm: 2, longestMm: 'shelf' })?.shelved).toBe(true)
    expect(found({ is: 'measured', mm: 2, longestMm: 5 })?.shelved).toBe(false)
  })

  test('no run is kept to by a range that begins below a millimetre, the shelf by one that ends there', () => {
    expect(found({ is: 'none' }, { ...app, lowMm: 0 })?.is).toBe('within')
    expect(found({ is: 'shelf' }, { ...app, highMm: 9 })?.is).toBe('within')
    expect(found({ is: 'some' }, { ...app, lowMm: 0, likelyMm: 0, highMm: 0.5 })?.is).toBe('farther')
  })

  test('nobody guessed: what tiles tell stands; without tiles nothing does', () => {
    const play = new Play().act({ do: 'lay-demo' })
    firing(play, 'l', [{ potId: 'p', coats, run: { is: 'none' } }], [['6', 'down']])
    const told = toldFound(play.table)
    expect(told).toMatchObject([{ by: 'tile' }])
    expect(told[0]?.lowMm).toBeLessThan(told[0]?.likelyMm ?? 0)
    expect(told[0]?.highMm).toBeGreaterThanOrEqual(told[0]?.likelyMm ?? 99)
    for (const tileId of Object.keys(play.table.tiles)) play.act({ do: 'remove-tile', tileId })
    expect(toldFound(play.table)).toEqual([])
  })
})

test('waits are told narrower the more checks are behind them, from before any on', () => {
  const empty = narrowing(new Play().act({ do: 'lay-demo' }).table)
  expect(empty).toHaveLength(1)
  const { play } = yearOf(100, START_MS)
  const all = narrowing(play.table)
  expect(all).toHaveLength(13)
  expect(all[0]).toMatchObject({ seen: undefined, likely: 1 })
  const width = (n: number) => Math.log((all.at(n)?.high ?? 0) / (all.at(n)?.low ?? 1))
  expect(width(-1)).toBeLessThan(width(0) * 0.9)
  for (const { low, likely, high, coatLow, coatHigh } of all) {
    expect(low).toBeLessThan(likely)
    expect(coatLow).toBeLessThan(low)
    expect(coatHigh).toBeGreaterThan(high)
  }
})

test('a density falls where water went in, and not where a new mix did', () => {
  const play = new Play().act({ do: 'lay-demo' })
  const bucketId = 'demo.gatepost'
  const read = (gramsPerMl: number) => play.wait(3600).act({ do: 'read-density', bucketId, gramsPerMl })
  const course = () => densityCourse(play.table, bucketId)?.points ?? []
  dipped(play, [{ potId: 'old', coats: [whole('gatepost', 4)] }], () => 1.5)
  read(1.48)
  read(1.44)
  play.wait(60)
  dipped(play, [{ potId: 'p', coats: [whole('gatepost', 4)] }], () => 1.44)
  expect(course().map(({ thinner }) => thinner)).toEqual([false, true, true, false])
  expect(course().map(({ pot }) => pot?.facts.potId)).toEqual(['old', undefined, undefined, 'p'])
  play.wait(3600).act({ do: 'refill', bucketId, litres: 10 })
  read(1.4)
  // What was weighed of the fill before is gone with it; what its coats were dipped at is not.
  expect(course().map(({ gramsPerMl, thinner }) => [gramsPerMl, thinner])).toEqual([
    [1.5, false],
    [1.44, true],
    [1.4, false],
  ])
  expect(densityCourse(play.table, 'nowhere')).toBeUndefined()
})

test('a glaze’s page counts the pots that carry it, a pair’s those where one lies on the other', () => {
  const play = new Play().act({ do: 'lay-demo' })
  const both = { coats, run: { is: 'none' } } as const
  firing(play, 'l1', [{ potId: 'a', ...both }], [['6', 'down']])
  firing(play, 'l2', [
    { potId: 'b', ...both },
    { potId: 'c', coats: [whole('heather', 3)], run: { is: 'none' } },
  ])
  const pots = (subject: { bucketId: string; underId?: string }) =>
    potsWith(play.table, subject).map(({ facts }) => facts.potId)
  const [gatepost, brackwater, heather] = ['demo.gatepost', 'demo.brackwater', 'demo.heather']
  expect(pots({ bucketId: gatepost })).toEqual(['b', 'a'])
  expect(pots({ bucketId: heather })).toEqual(['c'])
  expect(pots({ bucketId: brackwater, underId: gatepost })).toEqual(['b', 'a'])
  expect(pots({ bucketId: gatepost, underId: brackwater })).toEqual([])
  const { pair, pairs, limit } = resultsWith(play.table, { bucketId: brackwater, underId: gatepost })
  expect(pair).toMatchObject({ is: 'proved', good: ['a', 'b'] })
  expect([pairs, limit]).toEqual([[], undefined])
  // Heather over Gatepost has tiles; the others were never fired on each other.
  expect(
    resultsWith(play.table, { bucketId: gatepost }).pairs.map(({ overId, underId }) => [overId, underId]),
  ).toEqual([
    [brackwater, gatepost],
    [heather, gatepost],
  ])
  expect(pots({ bucketId: 'nowhere' })).toEqual([])
})
