/** What fired pots said is not forgotten: however many were judged since, at another cone, and put right of something else. */
import { describe, expect, test } from 'vitest'
import type { FiringFacts } from '../../../shared/nouns.ts'
import type { RunFacts } from '../../../shared/opening.ts'
import { warningsFor } from '../../../src/table/advice/warnings.ts'
import { dangersOf, reliefsOf } from '../../../src/table/fired/danger.ts'
import { LATEST_RESULTS, latestOf } from '../../../src/table/fired/latest.ts'
import { factorsOf } from '../../../src/table/fired/lesson.ts'
import { limitsTold, takesLimit } from '../../../src/table/fired/limits.ts'
import { pairsProved } from '../../../src/table/fired/pairs.ts'
import { judgedPots, resultsOf } from '../../../src/table/fired/results.ts'
import { keeps, takes } from '../../../src/table/fired/take.ts'
import { flowOf } from '../../../src/table/firing/glaze-flow.ts'
import { lessonOf } from '../../../src/table/model/taken.ts'
import { CONE_6, collar, dipped, type FiredSpec, firing, whole } from '../../fixtures/fired/kiln-play.ts'
import { Play } from './play.ts'

const evening = () => new Play().act({ do: 'lay-demo' })
const none = { is: 'none' } as const
const shelf = { is: 'shelf' } as const
const lone = (potId: string, run: RunFacts, bucket = 'brackwater'): FiredSpec => ({
  potId,
  coats: [whole(bucket, 4)],
  run,
})
const factor = (play: Play, bucket = 'brackwater') =>
  factorsOf(play.table).find((one) => one.bucketId === `demo.${bucket}` && one.underId === undefined)
const of = (play: Play, bucket = 'brackwater') => {
  const told = factor(play, bucket)
  if (!told) throw new Error(`nothing of ${bucket}`)
  return told
}
/** More firings than are reckoned with, of pots of one glaze that did not run. */
function many(play: Play, bucket: string, name = 'many') {
  const loads = Math.ceil((LATEST_RESULTS + 8) / 14)
  for (let load = 0; load < loads; load++)
    firing(
      play,
      `${name}${load}`,
      Array.from({ length: 14 }, (_, i) => lone(`${name}${load}.${i}`, none, bucket)),
    )
}
const at = (play: Play, cone: string, more: Partial<FiringFacts> = {}) =>
  play.act({ do: 'plan-firing', firing: { ...CONE_6, cone, ...more } })

describe('after many pots of other glazes', () => {
  test('a danger that nobody answered is said, and one that was taken stands', () => {
    const play = evening()
    firing(play, 'one', [lone('a', shelf), lone('b', shelf)])
    const before = of(play)
    const taken = evening()
    firing(taken, 'one', [lone('a', shelf), lone('b', shelf)])
    taken.act(takes(of(taken)))
    for (const one of [play, taken]) many(one, 'gatepost')
    expect(resultsOf(play.table).length).toBeLessThanOrEqual(LATEST_RESULTS)
    expect(dangersOf(play.table)).toMatchObject([{ why: 'more', told: { key: before.key } }])
    expect(of(play)).toMatchObject({ results: { length: 2 }, asks: true })
    expect(dangersOf(taken.table)).toEqual([])
    expect(of(taken)).toMatchObject({ withdrawn: false, asks: false, used: before.factor.likely })
  }, 60_000)
})

describe('after many pots of the same', () => {
  test('one on the shelf is said until it is answered, and what was taken from it is not withdrawn', () => {
    const play = evening()
    firing(play, 'one', [lone('a', shelf), lone('b', shelf)])
    const takenFrom = takes(of(play))
    const taken = evening()
    firing(taken, 'one', [lone('a', shelf), lone('b', shelf)])
    taken.act(takenFrom)
    for (const one of [play, taken]) many(one, 'brackwater')
    expect(of(play).results.some(({ found }) => found.run?.is === 'shelf')).toBe(false)
    expect(dangersOf(play.table)).toMatchObject([{ why: 'shelf' }])
    expect(of(play).shelved.map(({ pot }) => pot.facts.potId)).toEqual(['a', 'b'])
    play.act(keeps(of(play)))
    expect(dangersOf(play.table)).toEqual([])
    expect(of(play)).toMatchObject({ asks: false })
    expect(of(taken)).toMatchObject({ withdrawn: false, leads: 'relief', shelved: [] })
  }, 60_000)

  test('what is left out takes no place: all is as if it had never been', () => {
    const filled = (withTwo: boolean) => {
      const play = evening()
      firing(play, 'zero', [lone('z', shelf)])
      many(play, 'gatepost')
      firing(play, 'last', [
        lone('y', none, 'heather'),
        ...(withTwo ? [lone('x', none, 'heather'), lone('w', none, 'heather')] : []),
      ])
      return play
    }
    const [without, left] = [filled(false), filled(true)]
    for (const potId of ['x', 'w']) {
      const lessonId = judgedPots(left.table).find(({ pot }) => pot.facts.potId === potId)?.found.dropId ?? ''
      left.act({ do: 'drop-lesson', potId, lessonId, dropped: true })
    }
    const said = (play: Play) =>
      factorsOf(play.table).map(({ key, factor: f, results }) => [key, f.likely, results.length])
    expect(said(left)).toEqual(said(without))
    // And they are listed, to be taken in again.
    expect(resultsOf(left.table).filter(({ silent }) => silent === 'dropped')).toHaveLength(2)
  }, 60_000)

  test('turns are dealt to what is glazed alike, the latest first', () => {
    const play = evening()
    firing(play, 'one', [lone('a', shelf), ...['b', 'c', 'd', 'e'].map((id) => lone(id, none, 'gatepost'))])
    const ids = (most: number) => latestOf(judgedPots(play.table), most).map(({ pot }) => pot.facts.potId)
    expect(ids(9)).toEqual(['a', 'b', 'c', 'd', 'e'])
    expect(ids(3)).toEqual(['a', 'd', 'e'])
    expect(ids(2)).toEqual(['a', 'e'])
  })
})

describe('at another cone', () => {
  const ranAt6 = () => {
    const play = evening()
    firing(play, 'one', [lone('a', shelf), lone('b', shelf)])
    return play
  }
  const relievedAt6 = () => {
    const play = evening()
    firing(play, 'one', [lone('a', none), lone('b', none)])
    firing(play, 'two', [lone('c', none), lone('d', none)])
    return play
  }
  const warned = (play: Play) => {
    dipped(play, [{ potId: 'next', coats: [] }])
    play.append([{ kind: 'plan-changed', potId: 'next', coats: [whole('brackwater', 4)] }], 'plan')
    const next = play.table.pots.next
    return next
      ? warningsFor(play.table, next, 'demo.brackwater', play.nowMs).some(({ kind }) => kind === 'ran')
      : false
  }

  test('a danger holds for hotter ones, and for no cooler one', () => {
    for (const cone of ['7', '8']) {
      const play = at(ranAt6(), cone)
      expect(of(play)).toMatchObject({ cone: '6', leads: 'danger', asks: true })
      expect(dangersOf(play.table)).toMatchObject([{ why: 'more' }])
      expect(warned(play)).toBe(true)
    }
    const cooler = at(ranAt6(), '5')
    expect(factorsOf(cooler.table)).toEqual([])
    expect(warned(cooler)).toBe(false)
  })

  test('a danger is taken for both, and at the hotter one as wide as the flow is known there', () => {
    const play = at(ranAt6(), '8')
    const width = () => {
      const dose = flowOf(play.table, 'demo.brackwater', null)
      return dose ? dose.highPerMm / dose.lowPerMm : Number.NaN
    }
    play.act(takes(of(play)))
    const at8 = width()
    expect(dangersOf(play.table)).toEqual([])
    expect(of(play)).toMatchObject({ asks: false, withdrawn: false, taken: true })
    at(play, '6')
    expect(dangersOf(play.table)).toEqual([])
    expect(at8).toBeGreaterThan(1.2 * width())
  })

  test('one on the shelf is said beside what pots of the hotter one did, until it is answered', () => {
    const play = at(ranAt6(), '8')
    const hot = { ...CONE_6, cone: '8' }
    for (const loadId of ['three', 'four'])
      firing(play, loadId, [lone(`${loadId}a`, none), lone(`${loadId}b`, none)], [], hot)
    expect(of(play)).toMatchObject({ cone: undefined, results: { length: 4 } })
    expect(dangersOf(play.table)).toMatchObject([{ why: 'shelf' }])
    play.act(keeps(of(play)))
    expect(dangersOf(play.table)).toEqual([])
  })

  test('what ran less is offered nowhere else', () => {
    for (const cone of ['5', '7', '8']) {
      const play = at(relievedAt6(), cone)
      expect(factorsOf(play.table)).toEqual([])
      expect(reliefsOf(play.table)).toEqual([])
    }
  })

  test('what was taken is not said to be left out, and asks nothing', () => {
    for (const make of [ranAt6, relievedAt6])
      for (const cone of ['4', '7', '9']) {
        const play = make()
        play.act(takes(of(play)))
        const lesson = lessonOf(play.table, { bucketId: 'demo.brackwater' })
        at(play, cone)
        expect(of(play)).toMatchObject({ withdrawn: false, asks: false, leads: 'same', cone: '6' })
        expect(of(play).results.length).toBeGreaterThan(1)
        // Whatever is answered here, it is of these results: it wipes nothing.
        expect(takes(of(play)).of).toBe(of(play).results.length)
        expect(lessonOf(play.table, { bucketId: 'demo.brackwater' })).toEqual(lesson)
      }
  })

  test('what was taken and left out since is said wherever it is planned', () => {
    const play = ranAt6()
    play.act(takes(of(play)))
    for (const { pot, found } of judgedPots(play.table))
      play.act({ do: 'drop-lesson', potId: pot.facts.potId, lessonId: found.dropId, dropped: true })
    expect(of(at(play, '7'))).toMatchObject({ withdrawn: true, asks: true })
  })

  test('pots of it prove no pair clear, though a lesson was taken from them', () => {
    const play = evening()
    const coats = [collar('heather', 60, 4), collar('brackwater', 55, 4)]
    for (const loadId of ['one', 'two'])
      firing(play, loadId, [{ potId: `${loadId}a`, coats, run: { is: 'measured', mm: 3 } }])
    const told = () => factorsOf(play.table).find(({ underId }) => underId === 'demo.heather')
    play.act(takes(told() ?? of(play)))
    const clear = () => pairsProved(play.table).some(({ under }) => under === 'demo.heather')
    expect(clear()).toBe(true)
    at(play, '8')
    expect(told()).toMatchObject({ cone: '6', results: { length: 2 } })
    expect(clear()).toBe(false)
  })
})

describe('a fault that is added after a lesson was taken', () => {
  test('changes nothing of it: its run was not said anew', () => {
    const play = evening()
    firing(play, 'one', [lone('a', shelf), lone('b', shelf)])
    play.act(takes(of(play)))
    play.wait(60).act({ do: 'judge', potId: 'a', run: shelf, faults: ['pinholed'] })
    expect(of(play)).toMatchObject({ withdrawn: false, asks: false, shelved: [] })
    expect(dangersOf(play.table)).toEqual([])
    // Taken anew it names the same, and another run is news.
    play.act(takes(of(play)))
    play.wait(60).act({ do: 'judge', potId: 'a', run: shelf, faults: [] })
    expect(of(play)).toMatchObject({ withdrawn: false, asks: false })
    play.wait(60).act({ do: 'judge', potId: 'a', run: none, faults: [] })
    expect(of(play)).toMatchObject({ withdrawn: true })
  })

  test('changes nothing of a limit that was taken, until it is said to have crawled', () => {
    const play = evening()
    firing(play, 'one', [{ ...lone('a', none), faults: ['crawled'] }, lone('b', none)])
    const limit = () => limitsTold(play.table)[0]
    const told = limit()
    if (!told) throw new Error('no limit')
    play.act(takesLimit(told))
    play.wait(60).act({ do: 'judge', potId: 'b', run: none, faults: ['pinholed'] })
    expect(limit()).toMatchObject({ asks: false, leads: 'same' })
    play.wait(60).act({ do: 'judge', potId: 'b', run: none, faults: ['crawled'] })
    expect(limit()).toMatchObject({ asks: true, leads: 'danger' })
  })
})
