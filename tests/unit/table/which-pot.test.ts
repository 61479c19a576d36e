/** What a fired pot may say where nobody is sure which one it was: itself, its lid, and those alike it. */
import { describe, expect, test } from 'vitest'
import { guessesScored } from '../../../src/table/fired/guess.ts'
import { factorsOf } from '../../../src/table/fired/lesson.ts'
import { resultsOf } from '../../../src/table/fired/results.ts'
import { matchPiece } from '../../../src/table/load/match.ts'
import { toldFound } from '../../../src/table/opening/told-found.ts'
import { dipped, type FiredSpec, fired, whole } from '../../fixtures/fired/kiln-play.ts'
import { Play } from './play.ts'

const evening = () => new Play().act({ do: 'lay-demo' })
const shelf = { is: 'shelf' } as const
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
const judged = (play: Play, ...potIds: readonly string[]) => {
  for (const potId of potIds)
    play.append([{ kind: 'judged', potId, loadId: 'one', run: shelf, faults: [] }], `judge ${potId}`)
}
const silence = (play: Play) =>
  Object.fromEntries(resultsOf(play.table).map(({ pot, silent }) => [pot.facts.potId, silent]))
const loadOne = (play: Play) => {
  const load = play.table.loads?.one
  if (!load) throw new Error('no load')
  return load
}

/** A jar and its lid, both of Brackwater. */
function jarAndLid(): Play {
  const play = evening()
  dipped(play, [lone('jar', 'brackwater', { shape: JAR }), lone('lid')])
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
    const many = alike(...Array.from({ length: 12 }, () => 'gatepost'))
    matched(many, 'a', 0.3)
    judged(many, 'a', 'b')
    expect(silence(many)).toEqual({ a: 'unmatched', b: undefined })
  })
})

test('guesses are scored and drawn of known pots alone that nobody left out', () => {
  const play = alike('brackwater', 'brackwater', 'brackwater')
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
