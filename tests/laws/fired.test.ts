/** Laws of what the fire teaches: any results, in any order. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Fault, type RunFacts, STUCK, type SubjectFacts } from '../../shared/opening.ts'
import { flowLesson, type TaughtResult } from '../../src/engine/fired/flow-lesson.ts'
import { type Evidence, mayBeClear, pairShown } from '../../src/engine/fired/proven.ts'
import { roomMemory } from '../../src/engine/fired/room-memory.ts'
import { lnKOf, type RunSeen, runCurve, sharesOf } from '../../src/engine/fired/run-curve.ts'
import { thicknessLimit } from '../../src/engine/fired/thickness-limit.ts'
import { warningsFor } from '../../src/table/advice/warnings.ts'
import { againOf } from '../../src/table/fired/again.ts'
import { dangersOf, reliefsOf } from '../../src/table/fired/danger.ts'
import { coatOf } from '../../src/table/fired/fired-coats.ts'
import { firedOf } from '../../src/table/fired/fired-pot.ts'
import { factorsOf } from '../../src/table/fired/lesson.ts'
import { asSet, keepsLimit, limitsTold, takesLimit } from '../../src/table/fired/limits.ts'
import { resultsOf } from '../../src/table/fired/results.ts'
import { asTold, keeps, takes } from '../../src/table/fired/take.ts'
import { fold } from '../../src/table/fold/fold.ts'
import { forecastOf } from '../../src/table/forecast/forecast.ts'
import '../../src/table/forecast/walls.ts'
import { lastDip } from '../../src/table/model/plan.ts'
import { toLookAt } from '../../src/table/opening/queue.ts'
import { storyOf } from '../../src/table/opening/story.ts'
import { toldFound } from '../../src/table/opening/told-found.ts'
import { dueAt, stepOf } from '../../src/table/steps/steps.ts'
import { collar, firing, whole } from '../fixtures/fired/kiln-play.ts'
import { fromTo, pots } from '../fixtures/melt-pots.ts'
import { Play } from '../unit/table/play.ts'

const RUNS = Math.min(2000, Number(process.env.PROVE_RUNS ?? 60))
const SUBJECTS = ['a', 'b', 'c']
const HEATS = ['1', '2', '3', '4']
const starts = SUBJECTS.map((subject, i) => ({ subject, mean: -0.1 * i, sd: 0.3 + 0.1 * i }))
const heats = HEATS.map((heat, i) => ({ heat, mean: 0.1 * i, sd: i % 2 ? 0.2 : 0.103 }))

const lnKs = fc.oneof(
  fc.record({ kind: fc.constant('point' as const), ln: fromTo(-2, 2), sd: fromTo(0, 0.5) }),
  fc
    .tuple(fromTo(-2, 2), fromTo(0.1, 2), fc.constantFrom('below', 'above', 'between'))
    .map(([at, wide, which]) => ({
      kind: 'range' as const,
      low: which === 'below' ? Number.NEGATIVE_INFINITY : at,
      high: which === 'above' ? Number.POSITIVE_INFINITY : at + wide,
    })),
)
const results: fc.Arbitrary<TaughtResult[]> = fc
  .array(
    fc.record({
      subject: fc.constantFrom(...SUBJECTS),
      heat: fc.constantFrom(...HEATS),
      fill: fc.constantFrom('x', 'y'),
      lnK: lnKs,
    }),
    { maxLength: 12 },
  )
  .map((all) => all.map((one, i) => ({ ...one, id: `pot ${i}` })))
const shuffled = <T>(all: readonly T[], by: number): T[] =>
  all
    .map((one, i) => [Math.sin(by * (i + 1)), one] as const)
    .sort((a, b) => a[0] - b[0])
    .map(([, one]) => one)

test('the order of entry does not matter, to the last bit', () => {
  fc.assert(
    fc.property(results, fc.integer({ min: 1, max: 1000 }), (all, by) => {
      expect(flowLesson(shuffled(all, by), shuffled(starts, by), shuffled(heats, by))).toEqual(
        flowLesson(all, starts, heats),
      )
    }),
    { numRuns: RUNS },
  )
})

test('a result left out is as if it had never been, and comes back exactly', () => {
  fc.assert(
    fc.property(results, fc.nat(11), (all, at) => {
      const told = flowLesson(all, starts, heats)
      const without = flowLesson(
        all.filter((_, i) => i !== at),
        starts,
        heats,
      )
      for (const { results: ids } of without.subjects) expect(ids).not.toContain(`pot ${at}`)
      const back = [...all.filter((_, i) => i !== at), ...all.filter((_, i) => i === at)]
      expect(flowLesson(back, starts, heats)).toEqual(told)
    }),
    { numRuns: RUNS },
  )
})

test('every lesson is a range that is told in order, and finite', () => {
  fc.assert(
    fc.property(results, (all) => {
      for (const { factor, lnSd } of flowLesson(all, starts, heats).subjects) {
        expect(factor.low).toBeGreaterThan(0)
        expect(factor.low).toBeLessThan(factor.likely)
        expect(factor.likely).toBeLessThan(factor.high)
        expect(Number.isFinite(factor.high)).toBe(true)
        expect(lnSd).toBeGreaterThan(0)
      }
    }),
    { numRuns: RUNS },
  )
})

test('a pot that did not run never raises its factor, one on the shelf never lowers it', () => {
  fc.assert(
    fc.property(results, fromTo(-1, 1), (all, at) => {
      const mine = all.filter(({ subject }) => subject === 'a')
      const likely = (extra: TaughtResult['lnK']) =>
        flowLesson([...mine, { id: 'x', subject: 'a', heat: '1', fill: 'x', lnK: extra }], starts, heats)
          .subjects[0]!.lnMean
      const told = flowLesson(mine, starts, heats).subjects[0]!.lnMean
      expect(likely({ kind: 'range', low: Number.NEGATIVE_INFINITY, high: at })).toBeLessThan(told + 1e-6)
      expect(likely({ kind: 'range', low: at, high: Number.POSITIVE_INFINITY })).toBeGreaterThan(told - 1e-6)
    }),
    { numRuns: RUNS },
  )
})

const seen: fc.Arbitrary<RunSeen> = fc.oneof(
  fc.constantFrom<RunSeen>({ kind: 'none' }, { kind: 'shelf' }, { kind: 'some' }),
  fromTo(0, 60).map((mm) => ({ kind: 'measured' as const, mm })),
)

test('any pot has a rising curve, says something that can be of any result, and shares it out whole', () => {
  fc.assert(
    fc.property(pots, seen, (pot, found) => {
      const curve = runCurve(pot)
      if (!curve) return
      for (let i = 1; i < curve.runMm.length; i++)
        expect(curve.runMm[i]!).toBeGreaterThanOrEqual(curve.runMm[i - 1]!)
      const lnK = lnKOf(curve, found)
      if (lnK.kind === 'range') expect(lnK.low).toBeLessThan(lnK.high)
      else expect(Number.isFinite(lnK.ln) && lnK.sd >= 0).toBe(true)
      const shares = sharesOf(pot, curve, found)
      if (shares.length > 0) expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9)
    }),
    { numRuns: RUNS },
  )
})

test('clear never without results of two firings, or a tile', () => {
  const evidence: fc.Arbitrary<Evidence> = fc.record({
    firing: fc.constant('one'),
    seen,
    firstLn: fromTo(-3, 3),
  })
  fc.assert(
    fc.property(fc.array(evidence), fromTo(-2, 2), (all, mean) => {
      expect(mayBeClear(false, all, mean)).toBe(false)
    }),
    { numRuns: RUNS },
  )
})

test('a bad pot is never outvoted, and more good ones never unprove a pair', () => {
  const fired = fc.record({
    firing: fc.constantFrom('1', '2', '3'),
    pastFoot: fc.boolean(),
    stuck: fc.boolean(),
    faulty: fc.boolean(),
    crawled: fc.boolean(),
    short: fc.boolean(),
    others: fc.constant(false),
  })
  fc.assert(
    fc.property(fc.array(fired), (all) => {
      const named = all.map((one, i) => ({ ...one, id: `${i}` }))
      const { is } = pairShown(named)
      if (named.some(({ pastFoot, stuck }) => pastFoot || stuck)) expect(is).toBe('went-wrong')
      const good = {
        id: 'x',
        firing: '1',
        pastFoot: false,
        stuck: false,
        faulty: false,
        crawled: false,
        short: false,
        others: false,
      }
      if (is === 'proved') expect(pairShown([...named, good]).is).toBe('proved')
      expect(pairShown(shuffled(named, 3))).toEqual(pairShown(named))
    }),
    { numRuns: RUNS },
  )
})

test('limits and boards do not depend on the order either', () => {
  const crawl = fc.record({ id: fc.uuid(), mm: fromTo(0.1, 3), crawled: fc.boolean() })
  const wait = fc.record({
    sitting: fc.constantFrom('1', '2', '3'),
    board: fc.constantFrom('A', 'B'),
    place: fc.constantFrom('1', '2'),
    lnOver: fromTo(-1, 1),
  })
  fc.assert(
    fc.property(fc.array(crawl, { maxLength: 8 }), fc.array(wait, { maxLength: 12 }), (pots, waits) => {
      expect(thicknessLimit(1, shuffled(pots, 5))).toEqual(thicknessLimit(1, pots))
      const told = roomMemory(waits)
      const again = roomMemory(shuffled(waits, 5))
      expect(again.fastest).toBe(told.fastest)
      again.boards.forEach(({ ln }, i) => {
        expect(ln).toBeCloseTo(told.boards[i]!.ln, 12)
      })
    }),
    { numRuns: RUNS },
  )
})

const GLAZES = ['gatepost', 'brackwater', 'heather']
const stacks = fc
  .array(fc.tuple(fc.constantFrom(...GLAZES), fc.integer({ min: 1, max: 5 })), { minLength: 1, maxLength: 2 })
  .map((coats) => coats.map(([glaze, s], i) => (i === 0 ? whole(glaze, s) : collar(glaze, 40, s))))
const runs: fc.Arbitrary<RunFacts> = fc.oneof(
  fc.constantFrom<RunFacts>({ is: 'none' }, { is: 'some' }, { is: 'shelf' }, { is: 'measured', mm: 0 }),
  fc.integer({ min: 1, max: 7 }).map((mm) => ({ is: 'measured', mm }) as const),
)

test('a pot that stuck is never taken for one that did not run', () => {
  fc.assert(
    fc.property(stacks, runs, fc.constantFrom(...STUCK), (coats, run, stuck) => {
      const play = new Play().act({ do: 'lay-demo' })
      const app = { lowMm: 0, likelyMm: 0, highMm: 1, roomMm: 8 }
      play.append([{ kind: 'guessed', potId: 'a', loadId: 'one', mm: 'shelf', app }], 'guessed')
      firing(play, 'one', [{ potId: 'a', coats, run, stuck }])
      const [result] = resultsOf(play.table)
      expect(['none', 'within']).not.toContain(result?.seen?.kind)
      expect(toldFound(play.table).map(({ found }) => found.kind)).not.toContain('none')
      // Where nobody measured the front it teaches danger alone, and at once.
      if (run.is === 'measured') return
      expect(reliefsOf(play.table)).toEqual([])
      for (const told of factorsOf(play.table)) {
        expect(told.factor.likely).toBeGreaterThan(0.999)
        expect(told.shelved.map(({ pot }) => pot.facts.potId)).toEqual(['a'])
        expect(told.asks).toBe(true)
      }
    }),
    { numRuns: Math.min(RUNS, 40) },
  )
})

const boards = fc.record({
  absorption: fc.integer({ min: 2, max: 30 }).map((part) => part / 100),
  bisqueCone: fc.constantFrom('06', '04', '1'),
})

test('what is set for new pots changes nothing of a pot that was fired, and is told where it is made again', () => {
  fc.assert(
    fc.property(stacks, boards, fc.boolean(), (coats, set, loose) => {
      const play = new Play().act({ do: 'lay-demo' })
      firing(play, 'one', [{ potId: 'a', coats, run: { is: 'some' }, ...(loose ? { loose: true } : {}) }])
      const pot = play.table.pots.a!
      const of = () => ({
        story: storyOf(play.table, pot),
        results: resultsOf(play.table).map(({ curve, lnK, subject }) => ({ curve, lnK, subject })),
        factors: factorsOf(play.table).map(({ factor }) => factor),
      })
      const before = of()
      const { board } = play.table
      play.append([{ kind: 'board-set', board: { ...board, ...set } }], 'board')
      expect(of()).toEqual(before)
      const again = againOf(play.table, pot, play.nowMs)
      const what = 'why' in again ? [] : again.differences.map((one) => one.what)
      expect(what.includes('bisque')).toBe(set.bisqueCone !== board.bisqueCone)
      expect(what.includes('absorption')).toBe(
        Math.abs(set.absorption - board.absorption) > 0.05 * board.absorption,
      )
    }),
    { numRuns: Math.min(RUNS, 30) },
  )
})

const looks = fc.record({
  run: runs,
  stuck: fc.option(fc.constantFrom(...STUCK), { nil: undefined }),
  faults: fc.subarray<Fault>(['crawled', 'kissed', 'dunted']),
  afterH: fc.integer({ min: 0, max: 100 }),
})

test('a judgement keeps its day and its later looks, however often it is put right; said again it writes nothing', () => {
  fc.assert(
    fc.property(fc.array(looks, { minLength: 1, maxLength: 6 }), fc.boolean(), (said, dropped) => {
      const play = new Play().act({ do: 'lay-demo' })
      firing(play, 'one', [{ potId: 'a', coats: [whole('gatepost', 3)], run: { is: 'none' } }])
      const found = () => firedOf(play.table.pots.a!).found!
      const { at, dropId } = found()
      if (dropped) play.act({ do: 'drop-lesson', potId: 'a', lessonId: dropId, dropped })
      play.wait(90_000).act({ do: 'look-again', potId: 'a', faults: [] })
      for (const { afterH, run, stuck, faults } of said) {
        play.wait(afterH * 3600)
        const judge = { do: 'judge', potId: 'a', run, faults, ...(stuck ? { stuck } : {}) } as const
        play.try(judge)
        const [written, before] = [play.events.length, found()]
        expect(play.wait(60).try(judge)).toEqual({ code: 'nothing-to-do' })
        expect(play.events).toHaveLength(written)
        // Earlier pages wrote it again: that says nothing new either.
        const { do: _judge, ...record } = judge
        play.append([{ kind: 'judged', loadId: 'one', ...record }], `again ${written}`)
        expect(found()).toEqual(before)
        expect(found()).toMatchObject({ at, dropped })
        const day = toLookAt(play.table, at + 6 * 86_400_000).length
        const week = toLookAt(play.table, at + 8 * 86_400_000).length
        expect([day, week]).toEqual([0, stuck === 'lost' ? 0 : 1])
      }
      if (dropped) {
        play.act({ do: 'drop-lesson', potId: 'a', lessonId: found().dropId, dropped: false })
        expect(found().dropped).toBe(false)
      }
    }),
    { numRuns: Math.min(RUNS, 40) },
  )
})

const firings = fc.array(
  fc.array(
    fc.tuple(stacks, runs, fc.subarray<Fault>(['crawled'])).map(([coats, run, faults]) => ({
      coats,
      run,
      faults,
    })),
    { minLength: 1, maxLength: 3 },
  ),
  { minLength: 1, maxLength: 3 },
)

test('later results, and what is taken of them, change nothing of a load that was recorded before', () => {
  let taken = 0
  fc.assert(
    fc.property(firings, firings, ([first = []], later) => {
      const play = new Play().act({ do: 'lay-demo' })
      firing(
        play,
        'first',
        first.map((pot, i) => ({ ...pot, potId: `f${i}` })),
      )
      // As on a phone that was opened just now: nothing is computed yet.
      const recorded = () => {
        const table = fold([...play.events])
        return resultsOf(table)
          .filter(({ load }) => load?.loadId === 'first')
          .map(({ pot, curve, lnK, subject, silent }) => ({
            story: storyOf(table, pot),
            ...{ curve, lnK, subject, silent },
          }))
      }
      const before = recorded()
      expect(before).toHaveLength(first.length)
      for (const [n, pots] of later.entries())
        firing(
          play,
          `later ${n}`,
          pots.map((pot, i) => ({ ...pot, potId: `l${n}.${i}` })),
        )
      for (const told of factorsOf(play.table)) {
        taken++
        play.act(takes(told))
      }
      expect(recorded()).toEqual(before)
    }),
    { numRuns: Math.min(RUNS, 20) },
  )
  expect(taken).toBeGreaterThan(3)
})

test('an answer can be changed into the other, and a danger that was not taken is said until it is', () => {
  fc.assert(
    fc.property(firings, (loads) => {
      const play = new Play().act({ do: 'lay-demo' })
      loads.forEach((pots, i) => {
        firing(
          play,
          `load ${i}`,
          pots.map((pot, k) => ({ ...pot, potId: `p${i}.${k}` })),
        )
      })
      const of = ({ key }: { readonly key: string }) => factorsOf(play.table).find((one) => one.key === key)!
      const said = ({ key }: { readonly key: string }) =>
        dangersOf(play.table).filter(({ told }) => told.key === key)
      for (const told of factorsOf(play.table)) {
        const { still, factor } = told
        if (told.leads !== 'same') expect(still).toBe(told.leads)
        play.act(keeps(told))
        expect(of(told)).toMatchObject({ still, asks: false, used: told.used })
        expect(said(told).map(({ kept }) => kept)).toEqual(still === 'danger' ? [true] : [])
        play.act(takes(of(told)))
        expect(of(told)).toMatchObject({ still: 'same', asks: false, used: factor.likely })
        expect(said(told)).toEqual([])
        play.act(asTold(of(told)))
        expect(of(told)).toMatchObject({ still, asks: false, used: 1 })
      }
      const limit = (of: SubjectFacts) =>
        limitsTold(play.table).find((one) => one.bucketId === of.bucketId && one.underId === of.underId)
      for (const told of limitsTold(play.table)) {
        const { still, usedMm } = told
        if (told.leads !== 'same') expect(still).toBe(told.leads)
        play.act(keepsLimit(told))
        expect(limit(told)).toMatchObject({ still, asks: false, usedMm })
        play.act(takesLimit(told))
        expect(limit(told)).toMatchObject({ still: 'same', asks: false })
        play.act(asSet(told))
        expect(limit(told)).toMatchObject({ still, asks: false, usedMm })
      }
    }),
    { numRuns: Math.min(RUNS, 30) },
  )
})

test('a new pot of a fired one gets its coats, dipped by the plan as soon as the bench calls it', () => {
  let planned = 0
  let held = 0
  fc.assert(
    fc.property(stacks, fc.integer({ min: 0, max: 3 }), fromTo(0, 1.2), (coats, thinner, part) => {
      const play = new Play().act({ do: 'lay-demo' })
      firing(play, 'one', [{ potId: 'a', coats, run: { is: 'none' } }])
      for (const glaze of GLAZES) {
        const gramsPerMl = 1.45 - thinner / 100
        play.append([{ kind: 'density-read', bucketId: `demo.${glaze}`, gramsPerMl }], glaze)
      }
      const of = (potId: string) => play.table.pots[potId]!
      const again = againOf(play.table, of('a'), play.nowMs)
      if ('why' in again || !again.plan) return
      planned++
      const { potId: _own, number: _number, place: _place, ...like } = of('a').facts
      play.act({ do: 'set-pot', pot: { ...like, potId: 'b' } })
      play.act({ do: 'set-plan', potId: 'b', coats: again.plan })
      again.plan.forEach(({ bucketId, cover, holdS }, coat) => {
        // It may be touched before that, and be dry: the next coat goes on no sooner for it.
        const before = lastDip(of('b'))
        if (before) {
          const ready = forecastOf(play.table, of('b'))!.ready.likely
          play.nowMs = before.outAt + part * (ready - before.outAt)
          play.append([{ kind: 'touched', potIds: ['b'], dry: true }], `touch ${coat}`)
          const step = stepOf(play.table, of('b'), play.nowMs)
          if (step.is === 'wait') {
            held++
            const { bucketId: into } = again.plan![coat]!
            const heldAt = () =>
              warningsFor(play.table, of('b'), into, play.nowMs).filter(({ kind }) => kind === 'held')
            expect(heldAt()).toMatchObject([{ until: forecastOf(play.table, of('b'))!.ready.likely }])
            play.nowMs = dueAt(step)
            expect(stepOf(play.table, of('b'), play.nowMs).is).toBe('touch')
            expect(heldAt()).toEqual([])
            play.append([{ kind: 'touched', potIds: ['b'], dry: true }], `again ${coat}`)
          }
          expect(stepOf(play.table, of('b'), play.nowMs).is).toBe('dip')
        }
        const readyAt = play.nowMs
        const dip = { dipId: `b.d${coat}`, potId: 'b', coat, bucketId, cover, holdS, outAt: readyAt }
        const { gramsPerMl } = play.table.buckets[bucketId]!
        play.append(
          [{ kind: 'dipped', ...dip, gramsPerMl, leadS: 4, lowerS: 1, unstirred: false, told: true }],
          `dip ${coat}`,
        )
        const mm = coatOf(play.table, of('b'), `b.d${coat}`)!
        const { wantedMm } = again.coats[coat]!
        // Seconds are counted by halves: of one second a quarter is a part of its coat.
        const off = 0.06 + 0.3 / holdS
        expect(mm / wantedMm).toBeGreaterThan(1 - off)
        expect(mm / wantedMm).toBeLessThan(1 + off)
      })
    }),
    { numRuns: Math.min(RUNS, 30) },
  )
  expect(planned).toBeGreaterThan(3)
  expect(held).toBeGreaterThan(1)
})
