/** What a fired pot may say where nobody is sure which one it was: itself, its lid, and those alike it. */
import { describe, expect, test } from 'vitest'
import type { Fault, RunFacts } from '../../../shared/opening.ts'
import { dangersOf } from '../../../src/table/fired/danger.ts'
import { guessesScored } from '../../../src/table/fired/guess.ts'
import { factorsOf } from '../../../src/table/fired/lesson.ts'
import { limitsTold } from '../../../src/table/fired/limits.ts'
import { resultsOf } from '../../../src/table/fired/results.ts'
import { takes } from '../../../src/table/fired/take.ts'
import { matchPiece } from '../../../src/table/load/match.ts'
import { toldFound } from '../../../src/table/opening/told-found.ts'
import { collar, dipped, type FiredSpec, fired, whole } from '../../fixtures/fired/kiln-play.ts'
import { Play } from './play.ts'

const evening = () => new Play().act({ do: 'lay-demo' })
const shelf = { is: 'shelf' } as const
const none = { is: 'none' } as const
const lone = (potId: string, bucket = 'brackwater', more: Partial<FiredSpec> = {}): FiredSpec => ({
  potId,
  coats: [whole(bucket, 4)],
  ...more,
})
const JAR = {
  form: 'beaker',
  heightMm: 95,
  rimMm: 80,
  wallMm: 5,
  footLineMm: 8,
  galleryMm: 5,
} as const
const matched = (play: Play, potId: string, sureness: number) =>
  play.append([{ kind: 'matched', potId, loadId: 'one', sureness }], `match ${potId}`)
const found = (play: Play, potIds: readonly string[], run: RunFacts, faults: readonly Fault[] = []) => {
  for (const potId of potIds)
    play.append([{ kind: 'judged', potId, loadId: 'one', run, faults }], `judge-${potId}`)
}
const judged = (play: Play, ...potIds: readonly string[]) => found(play, potIds, none)
const silence = (play: Play) =>
  Object.fromEntries(resultsOf(play.table).map(({ pot, silent }) => [pot.facts.potId, silent]))
const loadOne = (play: Play) => {
  const load = play.table.loads?.one
  if (!load) throw new Error('no load')
  return load
}

/** A jar of Brackwater and its lid of Heather. */
function jarAndLid(): Play {
  const play = evening()
  dipped(play, [lone('jar', 'brackwater', { shape: JAR }), lone('lid', 'heather')])
  const lid = play.table.pots.lid
  if (!lid) throw new Error('no lid')
  play.append([{ kind: 'pot-set', pot: { ...lid.facts, lidOf: 'jar' } }], 'lid')
  fired(play, 'one', ['jar'])
  return play
}

describe('a lid', () => {
  test('of a jar that may be another one teaches nothing either', () => {
    const play = jarAndLid()
    matched(play, 'jar', 0.3)
    judged(play, 'jar', 'lid')
    expect(silence(play)).toEqual({ jar: 'unmatched', lid: 'unmatched' })
    expect(factorsOf(play.table)).toEqual([])
  })

  test('that was told by itself is known, whatever its jar is', () => {
    const play = jarAndLid()
    matched(play, 'jar', 0.3)
    matched(play, 'lid', 0.97)
    judged(play, 'jar', 'lid')
    expect(silence(play)).toEqual({ jar: 'unmatched', lid: undefined })
  })
})

/** Alike pieces, a glaze each. */
function alike(...buckets: readonly string[]): Play {
  const play = evening()
  const pots = buckets.map((bucket, i) => lone('abcdefghijklmnop'.charAt(i), bucket))
  dipped(play, pots)
  fired(
    play,
    'one',
    pots.map(({ potId }) => potId),
  )
  return play
}

describe('what is left over', () => {
  const THREE = ['brackwater', 'heather', 'gatepost'] as const

  test('after pieces that nobody was sure of is no surer than they were', () => {
    const play = alike(...THREE)
    for (let nth = 0; nth < 3; nth++) {
      const { options, sure } = matchPiece(play.table, loadOne(play), { heightMm: 90 })
      const best = options[0]
      if (!best) throw new Error('nothing left')
      expect(sure).toBe(false)
      expect(best.sureness).toBeLessThan(0.6)
      // Each is offered once.
      expect(loadOne(play).matched?.[best.potId]).toBeUndefined()
      matched(play, best.potId, best.sureness)
    }
    judged(play, 'a', 'b', 'c')
    expect(silence(play)).toEqual({ a: 'unmatched', b: 'unmatched', c: 'unmatched' })
    expect(factorsOf(play.table)).toEqual([])
  })

  test('after pieces that were surely told, or that a hand took in, is sure', () => {
    const play = alike(...THREE)
    matched(play, 'a', 0.95)
    matched(play, 'b', 0.4)
    judged(play, 'b')
    const last = () => matchPiece(play.table, loadOne(play), { heightMm: 90 })
    expect(last().sure).toBe(false)
    const lessonId = resultsOf(play.table)[0]?.found.dropId ?? ''
    play.append([{ kind: 'lesson-dropped', potId: 'b', lessonId, dropped: false }], 'take in b')
    expect(last()).toMatchObject({ sure: true, options: [{ potId: 'c' }] })
  })
})

describe('a pot judged by its place beside one that nobody was sure of', () => {
  test('may be that one where it is alike, and teaches nothing until it is taken in', () => {
    const play = alike('brackwater', 'gatepost')
    matched(play, 'a', 0.5)
    judged(play, 'a', 'b')
    expect(silence(play)).toEqual({ a: 'unmatched', b: 'unmatched' })
    const b = resultsOf(play.table).find(({ pot }) => pot.facts.potId === 'b')
    const lessonId = b?.found.dropId ?? ''
    play.append([{ kind: 'lesson-dropped', potId: 'b', lessonId, dropped: false }], 'take in b')
    expect(silence(play).b).toBeUndefined()
  })

  test('is known where it is of another size, or one of many', () => {
    const play = evening()
    dipped(play, [lone('a'), lone('tall', 'gatepost', { shape: { ...JAR, heightMm: 150 } })])
    fired(play, 'one', ['a', 'tall'])
    matched(play, 'a', 0.5)
    judged(play, 'a', 'tall')
    expect(silence(play)).toEqual({ a: 'unmatched', tall: undefined })
    const many = alike('brackwater', ...Array.from({ length: 11 }, () => 'gatepost'))
    matched(many, 'a', 0.3)
    judged(many, 'a', 'b')
    expect(silence(many)).toEqual({ a: 'unmatched', b: undefined })
  })
})

describe('pots alike that carry the same', () => {
  const FOUR = ['brackwater', 'brackwater', 'brackwater', 'brackwater'] as const

  test('teach alike whichever of them a piece was, before and after it', () => {
    const first = alike(...FOUR)
    matched(first, 'a', 0.3)
    found(first, ['a', 'b', 'c'], shelf, ['crawled'])
    expect(silence(first)).toEqual({ a: undefined, b: undefined, c: undefined })
    expect(limitsTold(first.table)).toHaveLength(1)
    const later = alike(...FOUR)
    found(later, ['a', 'b'], shelf)
    const danger = () => dangersOf(later.table).map(({ why }) => why)
    expect(danger()).toEqual(['more'])
    later.act(takes(factorsOf(later.table)[0]!))
    matched(later, 'c', 0.53)
    found(later, ['c'], shelf)
    expect(silence(later)).toEqual({ a: undefined, b: undefined, c: undefined })
    expect(factorsOf(later.table).map(({ withdrawn }) => withdrawn)).toEqual([false])
  })

  test('go on teaching when a hand takes one of them in', () => {
    const play = alike('brackwater', 'brackwater')
    matched(play, 'a', 0.53)
    judged(play, 'a', 'b')
    const b = resultsOf(play.table).find(({ pot }) => pot.facts.potId === 'b')
    const lessonId = b?.found.dropId ?? ''
    play.append([{ kind: 'lesson-dropped', potId: 'b', lessonId, dropped: false }], 'take in b')
    expect(silence(play)).toEqual({ a: undefined, b: undefined })
  })

  test('do not where a coat is thinner, or ends higher', () => {
    for (const coats of [[whole('brackwater', 1)], [collar('brackwater', 40, 4)]]) {
      const play = evening()
      dipped(play, [lone('a'), { potId: 'b', coats }])
      fired(play, 'one', ['a', 'b'])
      matched(play, 'a', 0.5)
      judged(play, 'a', 'b')
      expect(silence(play)).toEqual({ a: 'unmatched', b: 'unmatched' })
    }
  })
})

test('a pot that was judged by its place before is not what an unsure piece was taken from', () => {
  const play = alike('brackwater', 'gatepost', 'heather')
  judged(play, 'a')
  matched(play, 'b', 0.5)
  judged(play, 'b', 'c')
  expect(silence(play)).toEqual({ a: undefined, b: 'unmatched', c: 'unmatched' })
})

test('what went wrong on a pot judged by its place stands beside a piece that nobody was sure of', () => {
  const play = alike('gatepost', 'brackwater', 'brackwater')
  matched(play, 'a', 0.34)
  judged(play, 'a')
  found(play, ['b', 'c'], shelf)
  expect(silence(play)).toEqual({ a: 'unmatched', b: undefined, c: undefined })
  expect(dangersOf(play.table).map(({ why }) => why)).toEqual(['more'])
})

test('guesses are scored and drawn of known pots alone that nobody left out', () => {
  const play = alike('brackwater', 'gatepost', 'heather')
  const app = { lowMm: 0, likelyMm: 3, highMm: 6, roomMm: 8 }
  for (const potId of ['a', 'b', 'c'])
    play.append([{ kind: 'guessed', potId, loadId: 'one', mm: 0, app }], `guess ${potId}`)
  matched(play, 'a', 0.2)
  matched(play, 'c', 0.95)
  judged(play, 'a', 'b', 'c')
  const told = () => toldFound(play.table).map(({ pot }) => pot.facts.potId)
  // The second stands alike beside the first, which may be any of them.
  expect([guessesScored(play.table).told, told()]).toEqual([1, ['c']])
  const lessonId = resultsOf(play.table).find(({ pot }) => pot.facts.potId === 'c')?.found.dropId ?? ''
  play.append([{ kind: 'lesson-dropped', potId: 'c', lessonId, dropped: true }], 'leave out c')
  expect([guessesScored(play.table).told, told()]).toEqual([0, []])
})
