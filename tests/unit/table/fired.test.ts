/** What results of fired pots do at the table: whom they teach, what shows, what waits, and what stays as it was. */
import { describe, expect, test } from 'vitest'
import { warningsFor } from '../../../src/table/advice/warnings.ts'
import { againOf } from '../../../src/table/fired/again.ts'
import { dangersFor, dangersOf, reliefsOf } from '../../../src/table/fired/danger.ts'
import { footOf } from '../../../src/table/fired/foot.ts'
import { appGuess, guessesScored } from '../../../src/table/fired/guess.ts'
import { factorsOf } from '../../../src/table/fired/lesson.ts'
import { asSet, limitsTold, takesLimit } from '../../../src/table/fired/limits.ts'
import { pairOf, pairSoFar } from '../../../src/table/fired/pairs.ts'
import { resultsOf, type Silent } from '../../../src/table/fired/results.ts'
import { takes } from '../../../src/table/fired/take.ts'
import { flowOf, toldFlowOf } from '../../../src/table/firing/glaze-flow.ts'
import { limitsOf, zonesAtEnd } from '../../../src/table/forecast/hypothetical-dip.ts'
import {
  CONE_6,
  collar,
  dipped,
  type FiredSpec,
  fired,
  firing,
  whole,
} from '../../fixtures/fired/kiln-play.ts'
import { Play } from './play.ts'

const evening = () => new Play().act({ do: 'lay-demo' })
const BRACKWATER = whole('brackwater', 4)
const OVER_GATEPOST = [whole('gatepost', 4), BRACKWATER]
/** The pair that the demo has no tile of. */
const OVER_HEATHER = [whole('heather', 3), collar('brackwater', 40, 2)]
const lone = (potId: string, run: FiredSpec['run'], more: Partial<FiredSpec> = {}): FiredSpec => ({
  potId,
  coats: [BRACKWATER],
  ...(run ? { run } : {}),
  ...more,
})
const none = { is: 'none' } as const
const shelf = { is: 'shelf' } as const
const factor = (play: Play, bucket = 'brackwater', under?: string) =>
  factorsOf(play.table).find(
    ({ bucketId, underId }) =>
      bucketId === `demo.${bucket}` && underId === (under === undefined ? undefined : `demo.${under}`),
  )
const silentOf = (play: Play, potId: string): Silent | undefined =>
  resultsOf(play.table).find(({ pot }) => pot.facts.potId === potId)?.silent
const dropped = (play: Play, potId: string, is: boolean) => {
  const found = resultsOf(play.table).find(({ pot }) => pot.facts.potId === potId)?.found
  play.append(
    [{ kind: 'lesson-dropped', potId, lessonId: found?.dropId ?? '', dropped: is }],
    `drop ${potId} ${is}`,
  )
}

describe('a result teaches', () => {
  test('its glaze, on the shelf upward and not at all run downward', () => {
    const over = evening()
    firing(over, 'one', [lone('a', shelf)])
    expect(factor(over)?.factor.likely).toBeGreaterThan(1.15)
    const under = evening()
    firing(under, 'one', [lone('a', none)])
    expect(factor(under)?.factor.likely).toBeLessThan(0.85)
    expect(factor(under)?.results.map(({ pot }) => pot.facts.potId)).toEqual(['a'])
  })

  test('the pair where its melt decides, and no glaze of it alone', () => {
    const play = evening()
    firing(play, 'one', [{ potId: 'a', coats: OVER_GATEPOST, run: none }])
    expect(factor(play, 'brackwater', 'gatepost')?.factor.likely).toBeLessThan(0.9)
    expect(factor(play)).toBeUndefined()
    expect(factor(play, 'gatepost')).toBeUndefined()
  })

  test.each<[Silent, FiredSpec]>([
    ['no-load', lone('x', shelf, { loose: true })],
    ['no-run', lone('x', undefined)],
  ])('nobody: %s', (silent, spec) => {
    const play = evening()
    firing(play, 'one', [spec])
    expect(silentOf(play, 'x')).toBe(silent)
    expect(factorsOf(play.table)).toEqual([])
  })

  test('nobody where coats were counted by eye, or a glaze has no tile', () => {
    const play = evening()
    dipped(play, [lone('x', shelf), lone('y', shelf)])
    play.append([{ kind: 'coats-counted', potId: 'x', coats: 1 }], 'counted')
    fired(play, 'one', ['x', 'y'])
    for (const potId of ['x', 'y'])
      play.append([{ kind: 'judged', potId, loadId: 'one', run: shelf, faults: [] }], `judge-${potId}`)
    expect(silentOf(play, 'x')).toBe('unsure')
    for (const tileId of ['demo.t3', 'demo.t4']) play.act({ do: 'remove-tile', tileId })
    expect(silentOf(play, 'y')).toBe('untested')
  })

  test('nobody where it is not sure which pot it was, until a hand takes it in', () => {
    const matched = (sureness: number) => {
      const play = evening()
      const pots = ['a', 'b'].map((potId) => ({ potId, coats: OVER_HEATHER }))
      dipped(play, [...pots, lone('c', shelf)])
      fired(play, 'one', ['a', 'b', 'c'])
      for (const potId of ['a', 'b', 'c']) {
        const of = { potId, loadId: 'one' }
        play.append([{ kind: 'matched', ...of, sureness }], `match ${potId}`)
        play.append([{ kind: 'judged', ...of, run: shelf, faults: ['crawled'] }], `judge-${potId}`)
      }
      return play
    }
    const teaches = (play: Play) => [
      factor(play)?.results.length,
      limitsTold(play.table).some(({ bucketId, pots }) => bucketId === 'demo.brackwater' && pots.length > 0),
      pairOf(play.table, 'demo.brackwater', 'demo.heather').is,
    ]
    expect(teaches(matched(0.95))).toEqual([1, true, 'went-wrong'])
    const unsure = matched(0.23)
    expect(teaches(unsure)).toEqual([undefined, false, 'untried'])
    expect(silentOf(unsure, 'c')).toBe('unmatched')
    for (const potId of ['a', 'c']) dropped(unsure, potId, false)
    expect(teaches(unsure)).toEqual([1, true, 'went-wrong'])
    // Put right since, it is still the pot that the hand says.
    const again = { potId: 'c', loadId: 'one', run: { is: 'some' }, faults: [] } as const
    unsure.append([{ kind: 'judged', ...again }], 'right')
    expect(silentOf(unsure, 'c')).not.toBe('unmatched')
    dropped(unsure, 'c', true)
    expect(silentOf(unsure, 'c')).toBe('dropped')
  })

  test('one firing of ten pots less than ten firings', () => {
    const one = evening()
    firing(
      one,
      'one',
      Array.from({ length: 6 }, (_, i) => lone(`p${i}`, shelf)),
    )
    const six = evening()
    for (let i = 0; i < 6; i++) firing(six, `load ${i}`, [lone(`p${i}`, shelf)])
    const wide = (play: Play) => {
      const { low = 1, high = 1 } = factor(play)?.factor ?? {}
      return high / low
    }
    expect(factor(one)?.results).toHaveLength(6)
    expect(factor(six)?.factor.likely).toBeGreaterThan(factor(one)?.factor.likely ?? 9)
    expect(wide(one)).toBeGreaterThan(1.3)
  })

  test('less where cones say that the kiln ran hot, another cone nothing at all', () => {
    const [plain, hot] = [evening(), evening()]
    firing(plain, 'one', [lone('a', shelf)])
    firing(
      hot,
      'one',
      [lone('a', shelf)],
      [
        ['6', 'flat'],
        ['7', 'down'],
        ['8', 'standing'],
      ],
    )
    expect(factor(hot)?.factor.likely).toBeLessThan((factor(plain)?.factor.likely ?? 0) - 0.05)
    const other = evening()
    firing(other, 'one', [lone('a', shelf)], [], { ...CONE_6, cone: '8' })
    expect(factor(other)).toBeUndefined()
  })
})

describe('a pot that stuck', () => {
  const stuck = (run: FiredSpec['run'], more: Partial<FiredSpec> = {}) => {
    const play = evening()
    play.append(
      [
        {
          kind: 'guessed',
          potId: 'a',
          loadId: 'one',
          mm: 'shelf',
          app: { lowMm: 0, likelyMm: 0, highMm: 1, roomMm: 8 },
        },
      ],
      'guess',
    )
    firing(play, 'one', [lone('a', run, { stuck: 'ground', ...more })])
    return play
  }
  const said = (play: Play) => {
    const [result] = resultsOf(play.table)
    return { run: result?.found.run, seen: result?.seen, silent: result?.silent }
  }

  test('is danger at once, though nobody saw it run: so earlier records say it', () => {
    for (const run of [none, { is: 'some' } as const]) {
      const play = stuck(run)
      expect(said(play)).toEqual({ run: shelf, seen: { kind: 'shelf' }, silent: undefined })
      expect(reliefsOf(play.table)).toEqual([])
      expect(dangersOf(play.table)).toHaveLength(1)
      // The guess of the shelf was right, the app's of no run was not.
      expect(guessesScored(play.table)).toMatchObject({ personMm: 0, appMm: 8 })
    }
  })

  test('keeps a front that was measured: its drip is the shelf’s, unless that was measured too', () => {
    const run = { is: 'measured', mm: 3 } as const
    expect(said(stuck(run))).toMatchObject({ run: { ...run, longestMm: 'shelf' }, seen: { mm: 3 } })
    for (const longestMm of [3, 5]) {
      const play = stuck({ ...run, longestMm })
      expect(said(play)).toMatchObject({ run: { ...run, longestMm }, seen: { mm: 3 } })
      expect(dangersOf(play.table).filter(({ why }) => why === 'drip' || why === 'shelf')).toEqual([])
    }
  })

  test('is no word for its glaze where nothing moved on the ruler', () => {
    const play = stuck({ is: 'measured', mm: 0 })
    expect(said(play)).toMatchObject({ seen: undefined, silent: 'stuck' })
    expect(factorsOf(play.table)).toEqual([])
    expect(guessesScored(play.table).both).toBe(0)
  })

  test('to another pot says what was said of its run', () => {
    expect(said(stuck(none, { faults: ['kissed'] })).run).toEqual(none)
  })

  test('as lid or jar says nothing of its run, unless that was seen', () => {
    const jar = { form: 'beaker', heightMm: 95, rimMm: 80, wallMm: 5, footLineMm: 8, galleryMm: 5 } as const
    const ran = { is: 'measured', mm: 3 } as const
    for (const isLid of [true, false]) {
      const piece = (run: FiredSpec['run']) => {
        const play = stuck(run, isLid ? {} : { shape: jar })
        const { facts } = play.table.pots.a!
        if (isLid) play.append([{ kind: 'pot-set', pot: { ...facts, lidOf: 'jar' } }], 'lid')
        return play
      }
      expect(said(piece(none))).toMatchObject({ run: none, seen: undefined })
      expect(factorsOf(piece(none).table)).toEqual([])
      expect(said(piece(ran))).toMatchObject({ run: ran, seen: { mm: 3 } })
      expect(said(piece(shelf))).toMatchObject({ run: shelf, seen: { kind: 'shelf' } })
    }
  })

  test('bare has no run', () => {
    const play = evening()
    firing(play, 'one', [lone('a', none, { stuck: 'tapped', coats: [] })])
    expect(said(play).run).toEqual(none)
  })
})

describe('leaving out', () => {
  test('is as if it had never been, and in again as it was', () => {
    const play = evening()
    firing(play, 'one', [lone('a', none), lone('b', none)])
    const both = factor(play)
    firing(play, 'two', [lone('c', shelf)])
    const three = factor(play)?.factor
    dropped(play, 'c', true)
    expect(factor(play)?.factor).toEqual(both?.factor)
    expect(factor(play)?.others.map(({ pot }) => pot.facts.potId)).toEqual(['c'])
    dropped(play, 'c', false)
    expect(factor(play)?.factor).toEqual(three)
  })

  test('the order in which pots are judged does not matter', () => {
    const told = (order: readonly string[]) => {
      const play = evening()
      dipped(play, [lone('a', none), lone('b', shelf)])
      fired(play, 'one', ['a', 'b'])
      for (const potId of order)
        play.append(
          [{ kind: 'judged', potId, loadId: 'one', run: potId === 'a' ? none : shelf, faults: [] }],
          `judge-${potId}`,
        )
      return factor(play)?.factor
    }
    expect(told(['a', 'b'])).toEqual(told(['b', 'a']))
  })
})

describe('nothing changes silently', () => {
  const planned = (play: Play) => flowOf(play.table, 'demo.brackwater', null)?.likelyPerMm ?? Number.NaN

  test('danger shows at once, until it is answered; the dose moves when a hand takes it', () => {
    const play = evening()
    const before = planned(play)
    firing(play, 'one', [lone('a', shelf), lone('b', { is: 'measured', mm: 6 })])
    const [danger] = dangersOf(play.table)
    expect(danger?.worst?.pot.facts.potId).toBe('a')
    expect(danger?.worst?.load?.loadId).toBe('one')
    expect(planned(play)).toBe(before)
    if (!danger) throw new Error('no danger')
    play.act(takes(danger.told))
    expect(dangersOf(play.table)).toEqual([])
    expect(planned(play) / before).toBeCloseTo(danger.told.factor.likely, 9)
    expect(toldFlowOf(play.table, 'demo.brackwater', null)?.likelyPerMm).toBe(before)
    play.wait(60)
    firing(play, 'two', [lone('c', shelf)])
    expect(dangersOf(play.table)).toHaveLength(1)
  })

  test('of the glaze and the pair alone that a pot is to carry', () => {
    const play = evening()
    firing(play, 'one', [{ potId: 'a', coats: OVER_GATEPOST, run: shelf, shape: TALL }])
    const pot = (potId: string) => {
      const found = play.table.pots[potId]
      if (!found) throw new Error('no pot')
      return found
    }
    expect(dangersOf(play.table)).toHaveLength(1)
    // 31 gets Brackwater over Gatepost, 34 Heather.
    expect(dangersFor(play.table, pot('demo.31'), 'demo.brackwater')).toHaveLength(1)
    expect(dangersFor(play.table, pot('demo.31'), 'demo.gatepost')).toEqual([])
    expect(dangersFor(play.table, pot('demo.34'), 'demo.heather')).toEqual([])
  })

  test('relief waits for a hand, and can be refused', () => {
    const play = evening()
    const before = planned(play)
    firing(play, 'one', [lone('a', none), lone('b', none)])
    expect(dangersOf(play.table)).toEqual([])
    const [relief] = reliefsOf(play.table)
    if (!relief) throw new Error('no relief')
    expect(planned(play)).toBe(before)
    play.act({ ...takes(relief), factor: 1, low: 1, high: 1, of: 0 })
    expect(reliefsOf(play.table)).toEqual([])
    expect(planned(play)).toBe(before)
  })

  test('a lesson that was taken ends with a tile that tells anew, and danger is said again', () => {
    const play = evening()
    firing(play, 'one', [lone('a', shelf), lone('b', shelf)])
    const [danger] = dangersOf(play.table)
    if (!danger) throw new Error('no danger')
    play.act(takes(danger.told))
    const tile = {
      bucketId: 'demo.brackwater',
      firing: CONE_6,
      stripes: [{ dryMm: 0.8, bandMm: 60, runMm: 10 }],
    }
    play.act({ do: 'read-tile', tile })
    expect(planned(play)).toBe(toldFlowOf(play.table, 'demo.brackwater', null)?.likelyPerMm)
    expect(dangersOf(play.table)).toHaveLength(1)
    // A tile of another glaze leaves it alone.
    const [again] = dangersOf(play.table)
    if (!again) throw new Error('no danger')
    play.act(takes(again.told))
    const taken = planned(play)
    play.act({ do: 'read-tile', tile: { ...tile, bucketId: 'demo.heather' } })
    expect(planned(play)).toBe(taken)
  })

  test('what was told of a load that is recorded stays, whatever results teach and hands take', () => {
    const play = evening()
    firing(play, 'one', [lone('a', shelf)])
    const of = () => resultsOf(play.table).find(({ pot }) => pot.facts.potId === 'a')
    const before = of()
    firing(play, 'two', [lone('b', shelf), lone('c', none)])
    const told = factor(play)
    if (!told) throw new Error('no factor')
    play.act(takes(told))
    expect(of()?.curve).toEqual(before?.curve)
    expect(of()?.lnK).toEqual(before?.lnK)
    expect(play.table.loads?.one).toEqual(before?.load)
  })

  test('a lesson is carried to a hotter cone no narrower than its flow is known there', () => {
    const play = evening()
    firing(play, 'one', [lone('a', none), lone('b', none)])
    const told = factor(play)
    if (!told) throw new Error('no factor')
    play.act(takes(told))
    const width = () => {
      const dose = flowOf(play.table, 'demo.brackwater', null)
      return dose ? dose.highPerMm / dose.lowPerMm : Number.NaN
    }
    const at6 = width()
    play.act({ do: 'plan-firing', firing: { ...CONE_6, cone: '8' } })
    expect(width()).toBeGreaterThan(1.5 * at6)
  })
})

const TALL = { form: 'cylinder', heightMm: 95, rimMm: 80, wallMm: 5, footLineMm: 8 } as const

describe('a pair', () => {
  const over = (potId: string, run: FiredSpec['run'], more: Partial<FiredSpec> = {}): FiredSpec => ({
    ...lone(potId, run, more),
    coats: OVER_HEATHER,
  })
  const pair = (play: Play) => pairOf(play.table, 'demo.brackwater', 'demo.heather')

  test('is proved by good pots of two firings, not of one', () => {
    const play = evening()
    firing(play, 'one', [over('a', none), over('b', none)])
    expect(pair(play)).toMatchObject({ is: 'untried', good: ['a', 'b'] })
    firing(play, 'two', [over('c', none)])
    expect(pair(play)).toMatchObject({ is: 'proved', proved: 2, byHand: { proved: 0, wrong: 0 } })
    dropped(play, 'c', true)
    expect(pair(play).is).toBe('untried')
  })

  test('is not proved by a pot past its foot line, stuck, faulty, fired too cool, or whose run nobody measured', () => {
    const second = (more: Partial<FiredSpec>, cones: Parameters<typeof firing>[3] = []) => {
      const play = evening()
      firing(play, 'one', [over('a', none)])
      firing(play, 'two', [over('b', none, more)], cones)
      return pair(play).is
    }
    expect(second({})).toBe('proved')
    expect(second({ run: { is: 'measured', mm: 3 } })).toBe('went-wrong')
    expect(second({ stuck: 'tapped' })).toBe('went-wrong')
    expect(second({ faults: ['crawled'] })).toBe('untried')
    expect(second({ run: { is: 'some' } })).toBe('untried')
    expect(second({}, [['4', 'standing']])).toBe('untried')
  })

  test('is untried only where nothing of it was fired, and went wrong where it did', () => {
    const soFar = (...specs: FiredSpec[]) => {
      const play = evening()
      if (specs.length > 0) firing(play, 'one', specs)
      return pairSoFar(play.table, 'demo.brackwater', 'demo.heather')
    }
    expect(soFar()).toBe('untried')
    expect(soFar(over('a', none))).toBe('fired')
    expect(soFar(over('a', none, { faults: ['pinholed'] }))).toBe('fired')
    expect(soFar(over('a', none), over('b', shelf))).toBe('went-wrong')
  })

  test('that was counted by hand stays, and is told apart', () => {
    const play = evening()
    const set = { overId: 'demo.brackwater', underId: 'demo.heather', proved: 1, wrong: 0 }
    play.act({ do: 'set-pair', pair: set })
    expect(pair(play)).toMatchObject({ is: 'proved', byHand: { proved: 1, wrong: 0 }, good: [] })
    firing(play, 'one', [over('a', shelf)])
    expect(pair(play)).toMatchObject({ is: 'went-wrong', wrong: 1, byHand: { wrong: 0 }, bad: ['a'] })
  })

  test('is clear in the foot room only where its pots could have run', () => {
    const proved = (holdS: number) => {
      const play = evening()
      const coats = [whole('heather', holdS), collar('brackwater', 40, holdS)]
      firing(play, 'one', [{ potId: 'a', coats, run: none }])
      firing(play, 'two', [{ potId: 'b', coats, run: none }])
      dipped(play, [{ potId: 'next', coats }])
      const next = play.table.pots.next
      const zones = next && zonesAtEnd(play.table, next)
      if (!next || !zones) throw new Error('no pot')
      expect(pairOf(play.table, 'demo.brackwater', 'demo.heather').is).toBe('proved')
      return footOf(play.table, next, zones).input.provedPairs.some(
        ({ over: o, under }) => o === 'demo.brackwater' && under === 'demo.heather',
      )
    }
    expect(proved(0.5)).toBe(false)
    expect(proved(4)).toBe(true)
  })
})

describe('the armed card', () => {
  const said = (play: Play, potId: string, bucketId: string) => {
    const pot = play.table.pots[potId]
    if (!pot) throw new Error('no pot')
    return warningsFor(play.table, pot, bucketId, play.nowMs).find(({ kind }) => kind === 'ran')
  }

  test('says at once what ran farther than is reckoned with, until it is answered', () => {
    const play = evening()
    dipped(play, [{ potId: 'next', coats: [] }])
    play.append([{ kind: 'plan-changed', potId: 'next', coats: [BRACKWATER] }], 'plan')
    expect(said(play, 'next', 'demo.brackwater')).toBeUndefined()
    firing(play, 'one', [lone('a', shelf)])
    expect(said(play, 'next', 'demo.brackwater')).toMatchObject({
      over: 'demo.brackwater',
      used: 1,
      number: play.table.pots.a?.facts.number,
      to: 'shelf',
    })
    const [danger] = dangersOf(play.table)
    if (!danger) throw new Error('no danger')
    play.act(takes(danger.told))
    expect(said(play, 'next', 'demo.brackwater')).toBeUndefined()
  })
})

test('the armed card says at once where pots crawled with less', () => {
  const play = evening()
  dipped(play, [{ potId: 'next', coats: [] }])
  play.append([{ kind: 'plan-changed', potId: 'next', coats: [whole('gatepost', 6)] }], 'plan')
  const said = () => {
    const pot = play.table.pots.next
    if (!pot) throw new Error('no pot')
    return warningsFor(play.table, pot, 'demo.gatepost', play.nowMs).find(({ kind }) => kind === 'crawled')
  }
  firing(play, 'one', [{ potId: 'a', coats: [whole('gatepost', 3)], run: none }])
  expect(said()).toBeUndefined()
  firing(
    play,
    'two',
    ['b', 'c'].map((potId) => ({
      potId,
      coats: [whole('gatepost', 3)],
      run: none,
      faults: ['crawled'] as const,
    })),
  )
  expect(said()).toMatchObject({ glaze: 'demo.gatepost', number: play.table.pots.c?.facts.number })
  const [told] = limitsTold(play.table)
  if (!told) throw new Error('no limit')
  play.act(takesLimit(told))
  expect(said()).toBeUndefined()
})

describe('how thick a glaze may go on', () => {
  const limit = (play: Play) => limitsTold(play.table).find(({ bucketId }) => bucketId === 'demo.gatepost')
  const thick = (potId: string, faults: FiredSpec['faults'], coats = [whole('gatepost', 4)]): FiredSpec => ({
    potId,
    coats,
    run: none,
    ...(faults ? { faults } : {}),
  })

  test('comes down where thin coats crawled, at once in sight, and moves when a hand takes it', () => {
    const play = evening()
    firing(play, 'one', [thick('a', ['crawled']), thick('b', ['crawled'])])
    const told = limit(play)
    if (!told) throw new Error('no limit')
    expect(told).toMatchObject({ leads: 'danger', asks: true, usedMm: 1.2 })
    expect(told.limitMm).toBeLessThan(0.9)
    expect(limitsOf(play.table).glazeMm['demo.gatepost']).toBe(1.2)
    play.act(takesLimit(told))
    expect(limitsOf(play.table).glazeMm['demo.gatepost']).toBeCloseTo(told.limitMm, 2)
    expect(limit(play)).toMatchObject({ asks: false, leads: 'same' })
  })

  test('is the pair’s where two glazes lay on each other, held or crawled, and nothing where none crawled', () => {
    const play = evening()
    firing(play, 'one', [thick('a', [], OVER_GATEPOST), thick('b', [])])
    expect(limitsTold(play.table)).toEqual([])
    firing(play, 'two', [thick('c', ['crawled'], OVER_GATEPOST)])
    expect(limit(play)?.underId).toBeUndefined()
    const [told, ...others] = limitsTold(play.table)
    expect(others).toEqual([])
    expect(told).toMatchObject({ bucketId: 'demo.brackwater', underId: 'demo.gatepost', statedMm: 1.25 })
    expect(told?.pots.map(({ pot }) => pot.facts.potId)).toEqual(['a', 'c'])
  })

  test('is nobody’s where either of two pairs may have crawled, and holds of such pots say no more', () => {
    const play = evening()
    const three = [...OVER_GATEPOST, collar('heather', 40, 2)]
    firing(play, 'one', [thick('a', ['crawled'], three), thick('b', [], three)])
    expect(limitsTold(play.table)).toEqual([])
  })

  test('of a pair is said on the armed card, holds for the order once it is taken, and can be undone', () => {
    const play = evening()
    const crawled = (potId: string) => thick(potId, ['crawled'], OVER_GATEPOST)
    firing(play, 'one', ['a', 'b', 'c'].map(crawled))
    firing(play, 'two', ['d', 'e', 'f'].map(crawled))
    dipped(play, [{ potId: 'next', coats: [whole('gatepost', 4)] }])
    play.append([{ kind: 'plan-changed', potId: 'next', coats: OVER_GATEPOST }], 'plan')
    const said = () => {
      const pot = play.table.pots.next
      if (!pot) throw new Error('no pot')
      return warningsFor(play.table, pot, 'demo.brackwater', play.nowMs)
    }
    expect(said()).toContainEqual(
      expect.objectContaining({ kind: 'crawled', glaze: 'demo.brackwater', under: 'demo.gatepost' }),
    )
    const [told] = limitsTold(play.table)
    if (!told) throw new Error('no limit')
    expect(told).toMatchObject({ leads: 'danger', asks: true, usedMm: 1.25 })
    expect(pairOf(play.table, 'demo.brackwater', 'demo.gatepost').is).toBe('went-wrong')
    play.act(takesLimit(told))
    expect(said().map(({ kind }) => kind)).not.toContain('crawled')
    const build = said().find(({ kind }) => kind === 'build')
    expect(build).toMatchObject({ grade: 'over', limitMm: Math.round(told.limitMm * 100) / 100 })
    const [taken] = limitsTold(play.table)
    if (!taken) throw new Error('no limit')
    play.act(asSet(taken))
    expect(limitsOf(play.table).pairs).toEqual([])
  })
})

describe('that one again', () => {
  const fire = (coats = OVER_GATEPOST) => {
    const play = evening()
    firing(
      play,
      'one',
      [{ potId: 'a', coats, run: none }],
      [
        ['6', 'down'],
        ['7', 'standing'],
      ],
    )
    return play
  }
  const again = (play: Play, target?: string) => {
    const pot = play.table.pots.a
    const on = target === undefined ? undefined : play.table.pots[target]
    if (!pot) throw new Error('no pot')
    const told = againOf(play.table, pot, play.nowMs, on)
    if ('why' in told) throw new Error(told.why)
    return told
  }

  test('says how far it ran, and the slab that it stood on', () => {
    const told = (run: FiredSpec['run'], more: Partial<FiredSpec> = {}) => {
      const play = evening()
      firing(play, 'one', [{ potId: 'a', coats: [BRACKWATER], run, ...more }])
      if (more.loose) play.append([{ kind: 'slab-set', potId: 'a', slab: true }], 'slab')
      const { ran, differences } = again(play)
      return { ran, slab: differences.filter(({ what }) => what === 'slab') }
    }
    expect(told(none)).toEqual({ ran: undefined, slab: [] })
    expect(told({ is: 'measured', mm: 1 }).ran).toBeUndefined()
    expect(told({ is: 'measured', mm: 6 }, { coats: [BRACKWATER] }).ran).toBe('past-foot')
    expect(told(none, { stuck: 'ground' }).ran).toBe('shelf')
    expect(told(shelf, { loose: true })).toEqual({ ran: 'shelf', slab: [{ what: 'slab', was: true }] })
  })

  test('says what else went wrong with its glaze, and its pot gets a number of its own', () => {
    const play = evening()
    const faults = ['crawled', 'warped'] as const
    firing(play, 'one', [{ potId: 'a', coats: [BRACKWATER], run: none, faults }])
    expect(again(play).faults).toEqual(['crawled'])
    const { number = 0 } = play.table.pots.a?.facts ?? {}
    play.append([{ kind: 'taken-out', potId: 'a' }], 'out')
    const { shape, stackId } = play.table.pots.a!.facts
    const made = () => {
      play.act({ do: 'set-pot', pot: { shape, stackId } })
      return Object.values(play.table.pots).at(-1)?.facts.number
    }
    expect(made()).toBeGreaterThan(number)
  })

  test('has the seconds of then where nothing has changed but the density', () => {
    const play = fire()
    for (const bucketId of ['demo.gatepost', 'demo.brackwater'])
      play.append([{ kind: 'density-read', bucketId, gramsPerMl: 1.45 }], `read ${bucketId}`)
    const same = again(play)
    expect(same.plan?.map(({ bucketId }) => bucketId)).toEqual(['demo.gatepost', 'demo.brackwater'])
    expect(same.plan?.map(({ holdS }) => holdS)).toEqual([4, 4])
    expect(same.coats.map(({ afterMin, waitedMin }) => [afterMin, waitedMin])).toEqual([
      [0, 0],
      [120, 120],
    ])
    expect(same.differences.map(({ what }) => what)).toEqual(['heat'])
    play.append([{ kind: 'density-read', bucketId: 'demo.gatepost', gramsPerMl: 1.53 }], 'thick')
    const thick = again(play)
    expect(thick.coats[0]?.holdS).toBeLessThan(3)
    expect(thick.coats[0]?.meets).toBe(false)
    expect(thick.plan).toBeUndefined()
    expect(thick.differences).toContainEqual({
      what: 'density',
      glazeId: 'demo.gatepost',
      was: 1.45,
      now: 1.53,
    })
  })

  test('names the wall of today, and the heat of then', () => {
    const play = fire()
    dipped(play, [{ potId: 'thin', coats: [], shape: { ...TALL, wallMm: 3 } }])
    const told = again(play, 'thin')
    expect(told.differences).toContainEqual({ what: 'wall', was: 5, now: 3 })
    expect(told.differences).toContainEqual({ what: 'heat', overK: 8.5 })
  })

  test('cannot be where coats were counted by eye, or a bucket is no more', () => {
    const play = fire()
    const pot = play.table.pots.a
    if (!pot) throw new Error('no pot')
    expect(againOf(play.table, { ...pot, coatsCounted: 1 }, play.nowMs)).toEqual({ why: 'unsure' })
    const { 'demo.brackwater': gone, ...buckets } = play.table.buckets
    if (!gone) throw new Error('no bucket')
    const without = { ...play.table, buckets, removed: { 'demo.brackwater': gone } }
    expect(againOf(without, pot, play.nowMs)).toEqual({ why: 'no-bucket', bucketId: 'demo.brackwater' })
  })
})

describe('the app’s guess', () => {
  test('is a range on the pot’s own wall, follows the results, and is scored as the person’s', () => {
    const play = evening()
    dipped(play, [lone('a', none), lone('b', none)])
    fired(play, 'one', ['a'])
    const load = play.table.loads?.one
    const pot = play.table.pots.a
    if (!load || !pot) throw new Error('no load')
    const first = appGuess(play.table, pot, load)
    if (!first) throw new Error('no guess')
    expect(first.lowMm).toBeLessThan(first.likelyMm)
    expect(first.likelyMm).toBeLessThanOrEqual(first.highMm)
    expect(first.highMm).toBeLessThanOrEqual(first.roomMm)
    play.append(
      [
        { kind: 'guessed', potId: 'a', loadId: 'one', mm: 1, app: first },
        { kind: 'judged', potId: 'a', loadId: 'one', run: none, faults: [] },
      ],
      'judge a',
    )
    fired(play, 'two', ['b'])
    const next = play.table.loads?.two
    const other = play.table.pots.b
    const second = next && other && appGuess(play.table, other, next)
    expect(second?.likelyMm).toBeLessThan(first.likelyMm)
    expect(guessesScored(play.table)).toMatchObject({
      both: 1,
      personMm: 1,
      appMm: first.likelyMm,
      nearer: null,
    })
  })
})
