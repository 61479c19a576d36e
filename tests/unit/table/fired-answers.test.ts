/** What is said of fired pots, and asked: by whose results, until it is answered, and as long as they count. */
import { describe, expect, test } from 'vitest'
import type { RunFacts } from '../../../shared/opening.ts'
import { warningsFor } from '../../../src/table/advice/warnings.ts'
import { dangersOf, reliefsOf } from '../../../src/table/fired/danger.ts'
import { firedOf } from '../../../src/table/fired/fired-pot.ts'
import { appGuess, guessesScored } from '../../../src/table/fired/guess.ts'
import { factorsOf } from '../../../src/table/fired/lesson.ts'
import { resultsOf } from '../../../src/table/fired/results.ts'
import { asTold, isByOneFiring, keeps, takes } from '../../../src/table/fired/take.ts'
import { flowOf, meltCoats } from '../../../src/table/firing/glaze-flow.ts'
import { zonesAtEnd } from '../../../src/table/forecast/hypothetical-dip.ts'
import { lessonOf } from '../../../src/table/model/taken.ts'
import { collar, dipped, type FiredSpec, fired, firing, whole } from '../../fixtures/fired/kiln-play.ts'
import { Play } from './play.ts'

const evening = () => new Play().act({ do: 'lay-demo' })
const none = { is: 'none' } as const
const shelf = { is: 'shelf' } as const
const lone = (potId: string, run: RunFacts, bucket = 'brackwater'): FiredSpec => ({
  potId,
  coats: [whole(bucket, 4)],
  run,
})
const of = (play: Play, bucket = 'brackwater', under?: string) => {
  const told = factorsOf(play.table).find(
    ({ bucketId, underId }) =>
      bucketId === `demo.${bucket}` && underId === (under === undefined ? undefined : `demo.${under}`),
  )
  if (!told) throw new Error(`nothing of ${bucket}`)
  return told
}
const resultOf = (play: Play, potId: string) => {
  const result = resultsOf(play.table).find(({ pot }) => pot.facts.potId === potId)
  if (!result) throw new Error(`no result of ${potId}`)
  return result
}
const leftOut = (play: Play, potId: string, dropped = true) =>
  play.act({ do: 'drop-lesson', potId, lessonId: resultOf(play, potId).found.id, dropped })
const potOf = (play: Play, potId: string) => {
  const pot = play.table.pots[potId]
  if (!pot) throw new Error(`no pot ${potId}`)
  return pot
}

describe('a danger', () => {
  test('of a glaze needs a pot of its own that ran: what the studio’s others ran is no word against it', () => {
    const play = evening()
    firing(
      play,
      'one',
      ['a', 'b', 'c', 'd', 'e'].map((potId) => lone(potId, shelf)),
    )
    firing(
      play,
      'two',
      ['f', 'g', 'h', 'i'].map((potId) => lone(potId, shelf)),
    )
    firing(play, 'three', [{ potId: 'x', coats: [collar('heather', 20, 1)], run: none }])
    const told = of(play, 'heather')
    expect(told.factor.likely).toBeGreaterThan(1.2)
    expect(told).toMatchObject({ leads: 'same', asks: false, more: [] })
    expect(dangersOf(play.table).map((danger) => danger.told.bucketId)).toEqual(['demo.brackwater'])
  })

  test('and a relief are no noise: a fifth, or a range that leaves what is reckoned with', () => {
    const play = evening()
    firing(play, 'one', [lone('a', { is: 'some' })])
    const { factor, leads } = of(play)
    expect(factor.low).toBeLessThan(1)
    expect(factor.high).toBeGreaterThan(1)
    expect(Math.abs(Math.log(factor.likely))).toBeLessThan(Math.log(1.2))
    expect(leads).toBe('same')
    expect(dangersOf(play.table)).toEqual([])
    expect(reliefsOf(play.table)).toEqual([])
  })

  test('that was refused is said all the same, and asked about again once a pot ran farther', () => {
    const play = evening()
    firing(play, 'one', [lone('a', shelf), lone('b', shelf)])
    play.act(keeps(of(play)))
    expect(dangersOf(play.table)).toMatchObject([{ kept: true, why: 'more' }])
    firing(play, 'two', [lone('c', none)])
    expect(of(play).factor.likely).toBeGreaterThan(1.2)
    expect(of(play).asks).toBe(false)
    expect(dangersOf(play.table)).toMatchObject([{ kept: true }])
    firing(play, 'three', [lone('d', shelf)])
    expect(of(play).asks).toBe(true)
    expect(dangersOf(play.table)).toMatchObject([
      { kept: false, why: 'more', worst: { pot: { facts: { potId: 'd' } } } },
    ])
  })
})

describe('a pot on the shelf', () => {
  const fourGood = () => {
    const play = evening()
    firing(play, 'one', [lone('a', none), lone('b', none)])
    firing(play, 'two', [lone('c', none), lone('d', none)])
    return play
  }
  const said = (play: Play) => {
    dipped(play, [{ potId: 'next', coats: [] }])
    play.append([{ kind: 'plan-changed', potId: 'next', coats: [whole('brackwater', 4)] }], 'plan')
    return warningsFor(play.table, potOf(play, 'next'), 'demo.brackwater', play.nowMs).find(
      ({ kind }) => kind === 'ran',
    )
  }

  test('is said though all others did not run, until it is answered', () => {
    const play = fourGood()
    firing(play, 'three', [lone('e', shelf)])
    expect(of(play)).toMatchObject({ leads: 'relief', asks: true })
    expect(of(play).shelved.map(({ pot }) => pot.facts.potId)).toEqual(['e'])
    expect(said(play)).toMatchObject({ to: 'all-the-same', number: potOf(play, 'e').facts.number })
    play.act(keeps(of(play)))
    expect(dangersOf(play.table)).toEqual([])
    expect(of(play).shelved).toEqual([])
  })

  test('is asked about as well where its results come to what is reckoned with', () => {
    const play = evening()
    firing(play, 'one', [lone('a', none)])
    firing(play, 'two', [lone('b', shelf)])
    expect(of(play)).toMatchObject({ leads: 'same', asks: true })
    expect(dangersOf(play.table)).toMatchObject([{ why: 'shelf' }])
  })

  test('after less was taken is told against what is reckoned with', () => {
    const play = fourGood()
    play.act(takes(of(play)))
    const { used } = of(play)
    expect(used).toBeLessThan(0.5)
    firing(play, 'three', [lone('e', shelf), lone('f', shelf)])
    expect(said(play)).toMatchObject({ to: 'shelf', used, factor: of(play).factor.likely })
    expect(of(play).factor.likely).toBeGreaterThan(1.2 * used)
  })
})

describe('what was taken', () => {
  const relieved = () => {
    const play = evening()
    firing(play, 'one', [lone('a', none), lone('b', none)])
    firing(play, 'two', [lone('c', none), lone('d', none), lone('e', none)])
    play.act(takes(of(play)))
    return play
  }

  test('is listed and can be undone when all that it came from is left out', () => {
    const play = relieved()
    for (const potId of ['a', 'b', 'c', 'd', 'e']) leftOut(play, potId)
    expect(of(play)).toMatchObject({ results: [], taken: true, withdrawn: true, leads: 'danger', asks: true })
    expect(dangersOf(play.table)).toMatchObject([{ why: 'gone' }])
    const told = flowOf(play.table, 'demo.brackwater', null)?.likelyPerMm ?? 0
    play.act(keeps(of(play)))
    expect(dangersOf(play.table)).toEqual([])
    expect(flowOf(play.table, 'demo.brackwater', null)?.likelyPerMm).toBe(told)
    play.act(asTold(of(play)))
    expect(lessonOf(play.table, { bucketId: 'demo.brackwater' })).toBeUndefined()
    expect(flowOf(play.table, 'demo.brackwater', null)?.likelyPerMm).toBeGreaterThan(2 * told)
    expect(factorsOf(play.table)).toEqual([])
  })

  test('is asked about anew when most of it is left out, and no more once they are in again', () => {
    const play = relieved()
    expect(of(play)).toMatchObject({ asks: false, leads: 'same' })
    for (const potId of ['a', 'b', 'c', 'd']) leftOut(play, potId)
    expect(of(play)).toMatchObject({ withdrawn: true, leads: 'danger', asks: true })
    expect(dangersOf(play.table)).toHaveLength(1)
    for (const potId of ['a', 'b', 'c', 'd']) leftOut(play, potId, false)
    expect(of(play)).toMatchObject({ withdrawn: false, asks: false })
    expect(dangersOf(play.table)).toEqual([])
  })

  test('knows nothing of a pot that another phone had judged before', () => {
    const play = evening()
    dipped(play, [lone('a', none), lone('b', none)])
    fired(play, 'one', ['a', 'b'])
    const judge = (potId: string, run: RunFacts) =>
      [{ kind: 'judged', potId, loadId: 'one', run, faults: [] }] as const
    play.append(judge('a', none), 'judge-a')
    const lesson = takes(of(play))
    // In the order of the records: judged on the other phone first, taken here in ignorance of it.
    play.append(judge('b', shelf), 'judge-b')
    play.wait(60)
    play.act(lesson)
    expect(of(play).asks).toBe(true)
    expect(dangersOf(play.table).map(({ worst }) => worst?.pot.facts.potId)).toEqual(['b'])
  })

  test('before results were named is held to those judged by then', () => {
    const play = evening()
    firing(play, 'one', [lone('a', shelf), lone('b', shelf)])
    const { results: _named, ...lesson } = takes(of(play))
    play.wait(60)
    play.act(lesson)
    expect(of(play).asks).toBe(false)
    leftOut(play, 'a')
    expect(of(play).withdrawn).toBe(true)
  })
})

test('good on a pot whose glaze ended far above its foot line says no more than that', () => {
  const play = evening()
  const coats = [collar('brackwater', 30, 3)]
  firing(play, 'one', [{ potId: 'a', coats, run: none }])
  const { seen, lnK } = resultOf(play, 'a')
  expect(seen?.kind).toBe('within')
  expect(seen?.kind === 'within' ? seen.mm : 0).toBeGreaterThan(40)
  expect(lnK?.kind === 'range' ? lnK.high : 0).toBeGreaterThan(1)
  expect(of(play).factor.likely).toBeGreaterThan(0.9)
  expect(reliefsOf(play.table)).toEqual([])
  // Looked at and measured as none it says that it did not move.
  firing(play, 'two', [{ potId: 'b', coats, run: { is: 'measured', mm: 0 } }])
  expect(resultOf(play, 'b').lnK).toMatchObject({ kind: 'range', low: Number.NEGATIVE_INFINITY })
  expect(of(play).factor.likely).toBeLessThan(0.8)
})

test('less by one firing alone is kept as the main answer, by two it may be used', () => {
  const play = evening()
  firing(play, 'one', [lone('a', none), lone('b', none)])
  expect([of(play).still, isByOneFiring(of(play))]).toEqual(['relief', true])
  firing(play, 'two', [lone('c', none)])
  expect([of(play).still, isByOneFiring(of(play))]).toEqual(['relief', false])
})

describe('the longest drip', () => {
  test('of a glaze that else runs less is taken alone: what less it runs is told, and taken apart', () => {
    const play = evening()
    firing(play, 'one', [lone('a', none), lone('b', none)])
    firing(play, 'two', [lone('c', none), lone('d', { is: 'measured', mm: 1, longestMm: 6 })])
    const before = flowOf(play.table, 'demo.brackwater', null)
    const told = of(play)
    expect(told).toMatchObject({ still: 'danger', way: 'relief' })
    expect(told.factor.likely).toBeLessThan(0.8)
    play.act(takes(told))
    const { drip: dripFactor = 0 } = told
    const close = (value = 0) => expect.closeTo(value, 9)
    expect(flowOf(play.table, 'demo.brackwater', null)).toMatchObject({
      likelyPerMm: close(before?.likelyPerMm),
      lowPerMm: close(before?.lowPerMm),
      highPerMm: close(before?.highPerMm),
      dripFactor,
    })
    expect(of(play)).toMatchObject({ still: 'relief', asks: false, usedDrip: dripFactor })
    expect(of(play).tileDrip).toBeLessThan(dripFactor)
    play.act(takes(of(play)))
    expect(flowOf(play.table, 'demo.brackwater', null)?.likelyPerMm).toBeLessThan(
      0.8 * (before?.likelyPerMm ?? 0),
    )
  })

  test('kept, what is reckoned with keeps its whole range', () => {
    const play = evening()
    firing(play, 'one', [lone('a', shelf), lone('b', shelf)])
    play.act(takes(of(play)))
    const before = flowOf(play.table, 'demo.brackwater', null)
    firing(play, 'two', [lone('c', none), lone('d', none)])
    play.act(keeps(of(play)))
    expect(flowOf(play.table, 'demo.brackwater', null)).toEqual(before)
  })

  test('on the shelf keeps the front that was measured', () => {
    const play = evening()
    firing(play, 'one', [lone('a', { is: 'measured', mm: 2, longestMm: 'shelf' })])
    const { lnK, seen, pastFoot } = resultOf(play, 'a')
    expect(seen).toEqual({ kind: 'measured', mm: 2 })
    expect(lnK?.kind).toBe('point')
    expect(pastFoot).toBe(true)
    expect(of(play).shelved).toHaveLength(1)
  })

  test('that came farther than is reckoned with is a danger though the front says less, and is taken', () => {
    const play = evening()
    firing(play, 'one', [lone('a', { is: 'measured', mm: 1, longestMm: 7 })])
    const told = of(play)
    expect(told.drip).toBe(5)
    expect(told.usedDrip).toBeLessThan(3)
    expect(told).toMatchObject({ leads: 'danger', asks: true })
    expect(dangersOf(play.table)).toMatchObject([{ why: 'drip' }])
    const margin = () => {
      dipped(play, [{ potId: 'next', coats: [whole('brackwater', 4)] }])
      const zones = zonesAtEnd(play.table, potOf(play, 'next'))
      return zones ? meltCoats(play.table, zones).marginFactor : 0
    }
    const before = margin()
    play.act(takes(told))
    expect(margin()).toBe(5)
    expect(before).toBeLessThan(3)
    expect(dangersOf(play.table)).toEqual([])
    play.act(asTold(of(play)))
    expect(margin()).toBe(before)
  })
})

describe('the app’s guess', () => {
  test('of a pot that nobody guessed is fixed as it was when the lid went up, and scored alone', () => {
    const play = evening()
    dipped(play, [lone('a', none), lone('b', none)])
    fired(play, 'one', ['a', 'b'])
    const load = play.table.loads?.one
    const before = load && appGuess(play.table, potOf(play, 'b'), load)
    play.act({ do: 'judge', potId: 'a', run: shelf, faults: [] })
    play.act({ do: 'judge', potId: 'b', run: none, faults: [] })
    expect(firedOf(potOf(play, 'b'))).toMatchObject({ appGuess: before, found: { run: none } })
    expect(firedOf(potOf(play, 'b')).guess).toBeUndefined()
    expect(guessesScored(play.table)).toMatchObject({ both: 0, told: expect.any(Number) })
    // Judged again it stays.
    play.act({ do: 'judge', potId: 'b', run: shelf, faults: [] })
    expect(firedOf(potOf(play, 'b')).appGuess).toEqual(before)
  })

  test('of anything from none to the shelf holds nothing', () => {
    const play = evening()
    dipped(play, [lone('a', none), lone('b', none)])
    fired(play, 'one', ['a', 'b'])
    const app = { lowMm: 0, likelyMm: 3, highMm: 8, roomMm: 8 }
    play.append(
      [
        { kind: 'guessed', potId: 'a', loadId: 'one', mm: 1, app },
        { kind: 'judged', potId: 'a', loadId: 'one', run: none, faults: [] },
        { kind: 'guessed', potId: 'b', loadId: 'one', mm: 1, app: { ...app, highMm: 6 } },
        { kind: 'judged', potId: 'b', loadId: 'one', run: none, faults: [] },
      ],
      'judge-both',
    )
    expect(guessesScored(play.table)).toMatchObject({ both: 2, told: 1, held: 1 })
  })
})

test('a result that was left out stays out, said again or put right, until a hand takes it in', () => {
  const play = evening()
  firing(play, 'one', [lone('a', shelf)])
  const { id } = resultOf(play, 'a').found
  leftOut(play, 'a')
  expect(play.try({ do: 'judge', potId: 'a', run: shelf, faults: [] })).toEqual({ code: 'nothing-to-do' })
  expect(resultOf(play, 'a')).toMatchObject({ silent: 'dropped', found: { id } })
  play.act({ do: 'judge', potId: 'a', run: none, faults: [] })
  const { silent, found } = resultOf(play, 'a')
  expect(silent).toBe('dropped')
  play.act({ do: 'drop-lesson', potId: 'a', lessonId: found.dropId, dropped: false })
  expect(resultOf(play, 'a').silent).toBeUndefined()
})
