/** Guessing and judging fired pots: what is kept, and what is refused. */
import { describe, expect, test } from 'vitest'
import { contentFault } from '../../../src/store/events-schema.ts'
import { firedOf } from '../../../src/table/fired/fired-pot.ts'
import type { OpeningAction } from '../../../src/table/model/opening-action.ts'
import { lessonOf, limitOf } from '../../../src/table/model/taken.ts'
import { outsideWall, pointAt } from '../../../src/table/opening/wall.ts'
import { glazed } from '../../fixtures/glazed.ts'
import { tableOf } from '../../fixtures/seen-by.ts'
import { Play, START_MS } from './play.ts'

const KILN = {
  chamber: { kind: 'round', diameterMm: 450, heightMm: 560 },
  shelves: [{ id: 's', kind: 'round', widthMm: 390, depthMm: 390, thickMm: 16, count: 4 }],
  posts: [{ lengthMm: 150, count: 9 }],
  spyHoles: [],
} as const
const POT = 'demo.31'

/** The demo's pots glazed; 31 and 32 stand in a load on shelf 1, whose lid is shut. */
function inKiln(): Play {
  const play = new Play()
  for (const [i, events] of glazed(START_MS).entries()) play.append(events, `laid ${i}`)
  play.act({ do: 'set-kiln', kiln: KILN })
  const firing = { cone: '6', make: 'american', riseCPerH: 60, holdMin: 0 } as const
  play.act({ do: 'begin-load', kilnId: Object.keys(play.table.kilns ?? {})[0] ?? '', firing })
  const loadId = Object.keys(play.table.loads ?? {})[0] ?? ''
  const at = { column: 'whole', storey: 1 } as const
  play.append(
    [
      { kind: 'shelf-set', loadId, ...at, number: 1, shelfId: 's', postMm: [], posts: [] },
      ...['demo.31', 'demo.32'].map(
        (potId, i) =>
          ({ kind: 'placed', loadId, what: 'pot', potId, ...at, xMm: 90 * i, yMm: 0, slab: false }) as const,
      ),
    ],
    'placed',
  )
  return play
    .act({ do: 'load-shelf', loadId, column: 'whole', storey: 1 })
    .act({ do: 'shut-lid', loadId })
    .act({ do: 'light', loadId })
    .wait(9 * 3600)
    .act({ do: 'switch-off', loadId, sure: true })
    .wait(9 * 3600)
}
const loadOf = (play: Play) => Object.keys(play.table.loads ?? {})[0] ?? ''
const opened = () => {
  const play = inKiln()
  return play.act({ do: 'open-lid', loadId: loadOf(play) })
}
const pot = (play: Play, potId = POT) => {
  const found = play.table.pots[potId]
  if (!found) throw new Error('no such pot')
  return found
}
const judge = (more: Partial<Extract<OpeningAction, { do: 'judge' }>> = {}): OpeningAction => ({
  do: 'judge',
  potId: POT,
  run: { is: 'none' },
  faults: [],
  ...more,
})

describe('a guess', () => {
  test('is fixed with what the app would have guessed, and neither can be changed', () => {
    const app = { lowMm: 1, likelyMm: 3, highMm: 7, roomMm: 8 }
    const play = inKiln().act({ do: 'guess', potId: POT, mm: 4, app })
    expect(play.try({ do: 'guess', potId: POT, mm: 'shelf' })).toMatchObject({ field: 'guessed-already' })
    const rest = play.events.at(-1)
    if (!rest) throw new Error('nothing kept')
    // Another phone's later guess changes nothing either.
    play.append([{ kind: 'guessed', potId: POT, mm: 0 }], 'other')
    expect(firedOf(pot(play))).toMatchObject({ guess: { mm: 4 }, appGuess: app })
  })

  test('comes too late once the lid is up, and ends at the shelf', () => {
    const play = inKiln()
    expect(play.try({ do: 'guess', potId: POT, mm: 400 })).toMatchObject({
      code: 'out-of-range',
      field: 'runMm',
      facts: { value: 400, least: 0 },
    })
    expect(opened().try({ do: 'guess', potId: POT, mm: 2 })).toMatchObject({ field: 'lid-is-up' })
  })
})

describe('a judgement', () => {
  test('takes the pot out with its shelf place, off the board, and keeps what was seen', () => {
    const play = opened()
    const place = play.table.loads?.[loadOf(play)]?.things[POT]?.place
    play.act(judge({ run: { is: 'measured', mm: 2, longestMm: 6 }, stuck: 'ground', faults: ['pinholed'] }))
    expect(place).toMatch(/^1\.\d$/)
    expect(firedOf(pot(play))).toMatchObject({
      place,
      loadId: loadOf(play),
      found: { run: { is: 'measured', mm: 2, longestMm: 6 }, stuck: 'ground', faults: ['pinholed'] },
    })
    expect(pot(play).gone).toBe(true)
  })

  test('may wait: all pots are taken out with their places first', () => {
    const play = opened().act({ do: 'take-out', potIds: [POT, 'demo.32'] })
    expect(['demo.32', POT].map((potId) => firedOf(pot(play, potId)).place)).toEqual(['1.1', '1.2'])
    expect(firedOf(pot(play)).found).toBeUndefined()
    expect(play.try({ do: 'take-out', potIds: [POT] })).toEqual({ code: 'nothing-to-do' })
    expect(play.act(judge()).events.filter(({ event }) => event.kind === 'taken-out')).toHaveLength(2)
  })

  test('of a pot in no load here needs no place', () => {
    const play = opened().act(judge({ potId: 'demo.33' }))
    const fired = firedOf(pot(play, 'demo.33'))
    expect(fired.found?.run).toEqual({ is: 'none' })
    expect(fired).not.toHaveProperty('loadId')
    expect(fired).not.toHaveProperty('place')
  })

  test('later stands, a second look is added, and both can be left out and taken in again', () => {
    const play = opened().act(judge())
    play.act(judge({ run: { is: 'some' } }))
    play.wait(86_400).act({ do: 'look-again', potId: POT, faults: ['crazed'] })
    const before = firedOf(pot(play))
    expect(before.found?.run).toEqual({ is: 'some' })
    expect(before.looks.map(({ faults }) => faults)).toEqual([['crazed']])
    const lessonId = before.found?.id ?? ''
    const drop = { do: 'drop-lesson', potId: POT, lessonId } as const
    play.act({ ...drop, dropped: true })
    expect(firedOf(pot(play)).found?.dropped).toBe(true)
    play.act({ ...drop, dropped: false })
    expect(firedOf(pot(play))).toEqual({ ...before, found: { ...before.found, takenIn: true } })
  })

  test('is taken back whole: the pot is on the board and in the kiln again', () => {
    const play = opened()
    const before = play.table.pots[POT]
    play.act(judge()).act({ do: 'take-back' })
    expect(play.table.pots[POT]).toEqual(before)
  })

  test('of two phones stands on both alike, in whatever order their records come', () => {
    const play = opened()
    const by = (writer: string, at: number, events: Parameters<Play['append']>[0]) =>
      events.map((event, i) => ({ id: `${writer}.${i}`, hit: writer, at, writer, event }))
    const one = by('a.1', play.nowMs + 1000, [
      { kind: 'taken-out', potId: POT },
      { kind: 'judged', potId: POT, run: { is: 'none' }, faults: [] },
    ])
    const two = by('b.1', play.nowMs + 2000, [
      { kind: 'judged', potId: POT, run: { is: 'shelf' }, faults: [], stuck: 'lost' },
    ])
    const tables = ['a', 'b'].map(
      (phone) => tableOf([...play.events, ...one, ...two], phone).pots[POT]?.fired,
    )
    expect(tables[0]).toEqual(tables[1])
    expect(tables[0]?.map(({ event }) => event.kind)).toEqual(['taken-out', 'judged', 'judged'])
  })
})

test.each<[string, OpeningAction, object]>([
  [
    'a run longer than the wall',
    judge({ run: { is: 'measured', mm: 250 } }),
    { code: 'out-of-range', field: 'runMm', facts: { value: 250, least: 0, most: 8 } },
  ],
  [
    'a drip shorter than the run',
    judge({ run: { is: 'measured', mm: 5, longestMm: 3 } }),
    { code: 'out-of-range', field: 'longestMm', facts: { value: 3, least: 5, most: 8 } },
  ],
  ['a run that is no number', judge({ run: { is: 'measured', mm: Number.NaN } }), { field: 'runMm' }],
  ['a pot that is not known', judge({ potId: 'nobody' }), { code: 'unknown-pot' }],
  [
    'a second look at a pot that was not judged',
    { do: 'look-again', potId: POT, faults: [] },
    { field: 'not-judged', facts: { number: 31 } },
  ],
  [
    'a picture that is too large',
    { do: 'keep-photo', potId: POT, photoId: 'f', side: 'front', bytes: 9e6 },
    { field: 'bytes', facts: { value: 9e6, least: 1, most: 4e6 } },
  ],
  [
    'a factor beyond the curve',
    { do: 'take-lesson', bucketId: 'demo.g', factor: 80, low: 1, high: 90, of: 3 },
    { field: 'factor', facts: { value: 80, least: 0.02, most: 50 } },
  ],
])('refused with field, value and range: %s', (_name, action, refusal) => {
  const play = opened()
  const bucketId = Object.keys(play.table.buckets)[0] ?? ''
  const before = play.table
  expect(play.try('bucketId' in action ? { ...action, bucketId } : action)).toMatchObject(refusal)
  expect(play.table).toBe(before)
})

test('nothing is judged before the lid is up, no run is seen on a bare pot, no lid is lifted twice', () => {
  const shut = inKiln()
  expect(shut.try(judge())).toMatchObject({ field: 'not-open', facts: { number: 31 } })
  expect(shut.try({ do: 'take-out', potIds: [POT] })).toMatchObject({ field: 'not-open' })
  const play = opened()
  expect(play.try({ do: 'open-lid', loadId: loadOf(play) })).toMatchObject({ field: 'open-already' })
  play.act({ do: 'wash-off', potId: POT })
  expect(play.try(judge({ run: { is: 'some' } }))).toMatchObject({ field: 'bare-pot' })
  play.act(judge())
})

test('a lesson that was taken stands until another, or until it is as told again', () => {
  const play = opened()
  const [bucketId = '', underId = ''] = Object.keys(play.table.buckets)
  const lesson = { do: 'take-lesson', bucketId, underId, factor: 1.3, low: 1, high: 1.6, of: 3 } as const
  play.act(lesson).act({ do: 'take-limit', bucketId, limitMm: 0.8, of: 4 })
  expect(lessonOf(play.table, { bucketId, underId })).toMatchObject({ factor: 1.3, low: 1, high: 1.6, of: 3 })
  expect(lessonOf(play.table, { bucketId })).toBeUndefined()
  expect(limitOf(play.table, { bucketId })).toBe(0.8)
  play.act({ ...lesson, factor: 1, low: 1, high: 1, of: 0 }).act({
    do: 'take-limit',
    bucketId,
    limitMm: 1,
    of: 0,
  })
  expect(lessonOf(play.table, { bucketId, underId })).toBeUndefined()
  expect(limitOf(play.table, { bucketId })).toBeUndefined()
})

test('what comes from outside is held to the same ranges', () => {
  const fault = (event: Record<string, unknown> & { readonly kind: string }) => contentFault(event)
  const judged = { kind: 'judged', potId: 'p', faults: [] }
  const taken = { kind: 'lesson-taken', bucketId: 'b', low: 1, high: 2, of: 1 }
  expect(fault({ ...judged, run: { is: 'measured', mm: 3 } })).toBeUndefined()
  expect(fault({ ...judged, run: { is: 'measured', mm: 4000 } })).toBe('judged.run.mm')
  expect(fault({ ...judged, faults: ['cursed'] })).toBe('judged.faults.0')
  expect(fault({ kind: 'guessed', potId: 'p', mm: 'floor' })).toBe('guessed.mm')
  expect(fault({ kind: 'taken-out', potId: 'p', place: 'left' })).toBe('taken-out.place')
  expect(fault({ ...taken, factor: 0 })).toBe('lesson-taken.factor')
})

test('bare wall goes from the lowest glazed edge along the wall to the shelf', () => {
  const play = opened()
  const { line, lengthMm, edgeMm = 0, roomMm } = outsideWall(play.table, pot(play))
  expect(edgeMm + roomMm).toBeCloseTo(lengthMm, 9)
  expect(pointAt(line, edgeMm).zMm).toBeCloseTo(pot(play).facts.shape.footLineMm, 6)
  expect(pointAt(line, lengthMm).zMm).toBeCloseTo(0, 6)
  expect(pointAt(line, 0)).toEqual(line[0])
})
