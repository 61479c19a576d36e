/** The smaller lessons of the fire: rows computed once from the stated models, and their rules. */
import { describe, expect, test } from 'vitest'
import { type DipReference, dipAlarm, dipDensity } from '../../../../src/engine/fired/dip-density.ts'
import {
  chanceOfAtMost,
  foundMm,
  type Guessed,
  guessScore,
  missMm,
} from '../../../../src/engine/fired/guess-score.ts'
import { type ConeStood, heatOf, overPlanK } from '../../../../src/engine/fired/heat.ts'
import {
  type Evidence,
  leadsTo,
  mayBeClear,
  type PairFired,
  pairShown,
} from '../../../../src/engine/fired/proven.ts'
import { roomMemory, type WaitSeen } from '../../../../src/engine/fired/room-memory.ts'
import { thicknessLimit } from '../../../../src/engine/fired/thickness-limit.ts'
import { LOSSES, tileValues, untestedGlaze } from '../../../../src/engine/fired/tile-value.ts'
import { normalCdf } from '../../../../src/engine/numeric/spread.ts'
import { crpsOf } from '../../../fixtures/fired/crps.ts'
import { near } from '../../../reference/near.ts'

describe('thickness limit', () => {
  test.each([
    ['crawled at 0.6', 0.6, true, [0.45, 0.61, 0.88]],
    ['held at 1.2', 1.2, false, [1.03, 1.37, 1.9]],
  ] as const)('stated 1 mm, %s', (_, mm, crawled, [low, likely, high]) => {
    const limit = thicknessLimit(1, [{ id: 'p', mm, crawled }])
    near(limit.mm.low, low, { part: 0.02 })
    near(limit.mm.likely, likely, { part: 0.02 })
    near(limit.mm.high, high, { part: 0.02 })
    expect(limit.offeredMm).toBeGreaterThan(limit.mm.low)
    expect(limit.offeredMm).toBeLessThan(limit.mm.likely)
  })

  test('one pot that crawled thin among many that held is taken for odd', () => {
    const held = Array.from({ length: 6 }, (_, i) => ({ id: `${i}`, mm: 0.9, crawled: false }))
    const odd = thicknessLimit(1, [...held, { id: 'x', mm: 0.3, crawled: true }])
    expect(odd.offeredMm).toBeGreaterThan(0.75)
    expect(() => thicknessLimit(1, [{ id: 'x', mm: 0, crawled: true }])).toThrow('x.mm is 0')
  })
})

describe('the tile that rides next', () => {
  const shelfLn = [20, 60, 200].map(Math.log)
  const asked = { subject: 'a', lnMean: Math.log(20), lnSd: 1, firings: 1, shelfLn }
  test.each([
    [1, 0.8],
    [0.6, 0.321],
  ])('of a glaze known to %d is worth %d', (lnSd, value) => {
    near(tileValues([{ ...asked, lnSd }])[0]!.value, value, { by: 0.005 })
  })

  test('is none where all is known, and none for a pot that never reaches the shelf', () => {
    expect(tileValues([{ ...asked, lnSd: 0.2 }])).toEqual([])
    expect(tileValues([{ ...asked, shelfLn: [Number.POSITIVE_INFINITY] }])).toEqual([])
  })

  test('decides the pots whose way into the kiln it may change', () => {
    const [worth] = tileValues([{ ...asked, shelfLn: [20, 60, 200, 2e4].map(Math.log) }])
    expect(worth!.decides).toBe(2)
  })

  test('frees pots from slabs that nothing clears without it', () => {
    const thin = { ...asked, shelfLn: [2000, 3000].map(Math.log) }
    expect(tileValues([thin])).toEqual([])
    expect(tileValues([{ ...thin, unclear: true }])[0]).toMatchObject({ decides: 2 })
    near(tileValues([{ ...thin, unclear: true }])[0]!.value, 2, { by: 0.05 })
  })

  test('comes first where it saves most: more firings, or more to lose', () => {
    const often = { ...asked, subject: 'b', firings: 3 }
    expect(tileValues([asked, often]).map(({ subject }) => subject)).toEqual(['b', 'a'])
    expect(tileValues([asked], { ...LOSSES, slab: 0 })).toEqual([])
    expect(() => tileValues([{ ...asked, lnSd: -1 }])).toThrow('a.lnSd is -1')
  })

  test('a glaze without a tile is as the studio’s tested ones, wide', () => {
    expect(untestedGlaze([])).toEqual({ mean: Math.log(20), sd: 1 })
    near(untestedGlaze([10, 40]).mean, Math.log(20), { by: 1e-12 })
  })
})

describe('the score of a guess', () => {
  const pot = (personMm: number | null, appMm: number, mm: number, more: Partial<Guessed> = {}): Guessed => ({
    roomMm: 10,
    personMm,
    appMm,
    lowMm: 2,
    highMm: 6,
    found: { kind: 'measured', mm },
    ...more,
  })

  test('is in mm, alike for both, held to the wall there is', () => {
    expect(missMm(4, 7, 10)).toBe(3)
    expect(missMm(30, 8, 10)).toBe(2)
    expect(foundMm({ kind: 'none' }, 10)).toBe(0)
    expect(foundMm({ kind: 'shelf' }, 10)).toBe(10)
    const score = guessScore([
      pot(3, 5, 4),
      pot(2, 5, 5),
      pot(null, 5, 1),
      pot(3, 5, 0, { found: { kind: 'some' } }),
    ])
    expect(score).toMatchObject({ both: 2, personMm: 2, appMm: 0.5, told: 3, held: 2, nearer: null })
  })

  test('a range holds what a ruler reads at its edge, and no run where it begins within a millimetre', () => {
    const told = (lowMm: number, highMm: number, mm: number) =>
      guessScore([pot(null, 5, mm, { roomMm: 40, lowMm, highMm })]).held
    expect([told(2.3, 10.8, 2), told(2.6, 10.8, 2), told(1.7, 7.8, 8), told(1.7, 7.4, 8)]).toEqual([
      1, 0, 1, 0,
    ])
    // Nothing runs farther than there is wall.
    expect(guessScore([pot(null, 9, 12, { lowMm: 5, highMm: 9.8 })]).held).toBe(1)
    const none = { found: { kind: 'none' } as const, roomMm: 40, highMm: 9 }
    expect(guessScore([pot(null, 5, 0, { ...none, lowMm: 1 })]).held).toBe(1)
    expect(guessScore([pot(null, 5, 0, { ...none, lowMm: 1.1 })]).held).toBe(0)
  })

  test('tells who is nearer from ten pots on, past twice the standard error', () => {
    const pots = (n: number) => Array.from({ length: n }, (_, i) => pot(4 + (i % 2), 8, 4))
    expect(guessScore(pots(9)).nearer).toBeNull()
    expect(guessScore(pots(10)).nearer).toBe('person')
    const even = Array.from({ length: 10 }, (_, i) => (i % 2 ? pot(4, 6, 4) : pot(6, 4, 4)))
    expect(guessScore(even).nearer).toBeNull()
  })

  test('says that its ranges are too narrow when five of ten hold, not at six', () => {
    const pots = (held: number) => Array.from({ length: 10 }, (_, i) => pot(null, 4, i < held ? 4 : 9))
    expect(guessScore(pots(5)).tooNarrow).toBe(true)
    expect(guessScore(pots(6)).tooNarrow).toBe(false)
    near(chanceOfAtMost(10, 10, 0.8), 1, { by: 1e-12 })
    expect(guessScore([])).toMatchObject({ both: 0, personMm: null, nearer: null, tooNarrow: false })
  })

  test('of a whole range is a third better than of its middle alone: never set one against the other', () => {
    // Gneiting & Raftery 2007, equation 21: of N(0,1) at 0 and at 1.
    near(crpsOf(normalCdf, 0, -12, 12), 0.23369, { by: 1e-5 })
    near(crpsOf(normalCdf, 1, -12, 12), 0.60244, { by: 1e-5 })
    const cdf = (mm: number) => normalCdf(Math.log(mm / 6) / 0.5)
    let [range, middle, sum] = [0, 0, 0]
    for (let z = -4; z <= 4; z += 0.05) {
      const weight = Math.exp(-0.5 * z * z)
      const mm = 6 * Math.exp(0.5 * z)
      sum += weight
      range += weight * crpsOf(cdf, mm, 0, 10)
      middle += weight * missMm(6, mm, 10)
    }
    near(range / sum, 1.4, { by: 0.01 })
    near(middle / sum, 2.08, { by: 0.02 })
  })
})

describe('clear has grounds', () => {
  const none = (firing: string, firstLn: number): Evidence => ({ firing, seen: { kind: 'none' }, firstLn })
  test('of a tile, or of two firings of pots that could have run and did not', () => {
    expect(mayBeClear(true, [], 0)).toBe(true)
    expect(mayBeClear(false, [], 0)).toBe(false)
    expect(mayBeClear(false, [none('1', 0.5), none('1', 0.5)], 0)).toBe(false)
    expect(mayBeClear(false, [none('1', 0.5), none('2', -0.5)], 0)).toBe(true)
    expect(mayBeClear(false, [none('1', 3), none('2', 3)], 0)).toBe(false)
    const ran: Evidence = { firing: '2', seen: { kind: 'measured', mm: 3 }, firstLn: -2 }
    expect(mayBeClear(false, [none('1', 0.5), ran], 0)).toBe(true)
    expect(mayBeClear(false, [none('1', 0.5), { ...ran, seen: { kind: 'shelf' } }], 0)).toBe(false)
  })
})

describe('a pair', () => {
  const fired = (id: string, firing: string, more: Partial<PairFired> = {}): PairFired => ({
    id,
    firing,
    pastFoot: false,
    stuck: false,
    faulty: false,
    crawled: false,
    short: false,
    others: false,
    ...more,
  })
  test('is proved by good pots of two firings, not by many of one', () => {
    expect(pairShown([fired('a', '1'), fired('b', '1'), fired('c', '1')]).is).toBe('untried')
    expect(pairShown([fired('a', '1'), fired('b', '2')])).toEqual({
      is: 'proved',
      good: ['a', 'b'],
      bad: [],
      firings: 2,
    })
  })

  test('is not proved by a pot that ran past its foot line, stuck, was faulty, or fired too cool', () => {
    for (const what of ['pastFoot', 'stuck', 'faulty', 'short'] as const)
      expect(pairShown([fired('a', '1'), fired('b', '2', { [what]: true })]).is).not.toBe('proved')
  })

  test('went wrong with one bad pot, whatever came out well, unless it was another’s run', () => {
    const good = ['1', '2', '3'].map((firing) => fired(firing, firing))
    expect(pairShown([...good, fired('x', '3', { stuck: true })])).toMatchObject({
      is: 'went-wrong',
      bad: ['x'],
    })
    expect(pairShown([...good, fired('x', '3', { pastFoot: true, others: true })]).is).toBe('proved')
  })

  test('went wrong where more of its pots crawled than came out well', () => {
    const crawled = { crawled: true, faulty: true }
    const all = [fired('a', '1', crawled), fired('b', '2', crawled), fired('c', '3')]
    expect(pairShown(all)).toMatchObject({ is: 'went-wrong', good: ['c'], bad: ['a', 'b'] })
    const held = [fired('a', '1', crawled), fired('b', '2'), fired('c', '3')]
    expect(pairShown(held)).toMatchObject({ is: 'proved', good: ['b', 'c'], bad: [] })
  })
})

test('a lesson leads to danger or to relief from a fifth on, or a twentieth where its range leaves what is used', () => {
  const wide = (likely: number) => ({ low: likely - 0.4, likely, high: likely + 0.4 })
  const narrow = (likely: number) => ({ low: likely - 0.05, likely, high: likely + 0.05 })
  expect(leadsTo(0, wide(0.19))).toBe('danger')
  expect(leadsTo(0, wide(-0.19))).toBe('relief')
  expect(leadsTo(0, wide(0.17))).toBe('same')
  expect(leadsTo(0, wide(-0.17))).toBe('same')
  expect(leadsTo(0, narrow(0.1))).toBe('danger')
  expect(leadsTo(0, narrow(-0.1))).toBe('relief')
  expect(leadsTo(0.1, narrow(0.13))).toBe('same')
  expect(leadsTo(0, { low: 0.01, likely: 0.04, high: 0.07 })).toBe('same')
})

describe('heat beside the plan', () => {
  const [cone5, cone6, cone7] = [1186, 1222, 1239]
  test('lies half way between the cone that fell and the next that stands', () => {
    const set = (...is: (ConeStood['is'] | undefined)[]) =>
      overPlanK(
        [cone5, cone6, cone7].flatMap((endC, i): ConeStood[] => (is[i] ? [{ endC, is: is[i] }] : [])),
        cone6,
      )
    expect(set('down', 'down', 'standing')).toBe(8.5)
    expect(set('down', 'standing', 'standing')).toBe(-18)
    expect(set('down', 'bending', 'standing')).toBe(-10)
    expect(set('down', 'down', 'bending')).toBe(7)
    expect(set('down', 'down', 'down')).toBe(17)
    expect(set('standing')).toBe(-56)
    expect(set()).toBeNull()
    expect(set('down')).toBeNull()
    expect(set('down', 'bent')).toBeNull()
    expect(set('down', 'bent', 'standing')).toBe(3.5)
    expect(set('down', 'down', 'bent')).toBe(7)
  })

  test('is what a cone told, drawn to the plan', () => {
    near(heatOf(10, cone6).mean, 0.735 * 0.142, { part: 0.005 })
    near(heatOf(10, cone6).sd, 0.103, { part: 0.005 })
    expect(heatOf(null, cone6)).toEqual({ mean: 0, sd: 0.2 })
  })
})

describe('density by dip', () => {
  const reference: DipReference = { gainG: 8, gramsPerMl: 1.45 }
  test.each([
    [1.1, 1.466],
    [1.25, 1.487],
  ])('a gain of %d times one reference at 1.45 speaks of %d', (times, density) => {
    near(dipDensity(8 * times, [reference], 1.45).likely, density, { by: 0.001 })
  })

  test('narrows with references, and never calls what lies within tolerance', () => {
    const width = (n: number) => {
      const { low, high } = dipDensity(8, Array(n).fill(reference), 1.45)
      return high - low
    }
    expect(width(3)).toBeLessThan(0.9 * width(1))
    expect(dipAlarm(dipDensity(8.4, [reference], 1.45), 1.45, 0.02)).toBeNull()
    expect(dipAlarm(dipDensity(13, [reference], 1.45), 1.45, 0.02)).toBe('thick')
    expect(dipAlarm(dipDensity(5, [reference], 1.45), 1.45, 0.02)).toBe('thin')
    expect(() => dipDensity(8, [], 1.45)).toThrow('references.length is 0')
    expect(() => dipDensity(0, [reference], 1.45)).toThrow('gainG is 0')
  })
})

describe('room memory', () => {
  const touches = (board: string, sittings: number, lnOver: number): WaitSeen[] =>
    Array.from({ length: sittings * 4 }, (_, k) => ({
      sitting: `${Math.floor(k / 4)}`,
      board,
      place: `${k % 4}`,
      lnOver,
    }))

  test.each([
    [1, 0.155],
    [4, 0.424],
    [10, 0.647],
  ])('a lone board of %d touches keeps %d of their mean', (n, kept) => {
    const seen = Array.from({ length: n }, () => ({ sitting: 's', board: 'A', place: '1', lnOver: 1 }))
    const known = { sitting: 1e-6, board: 0.15, place: 1e-6, noise: 0.35 }
    near(roomMemory(seen, known).boards[0]!.ln, kept, { by: 0.001 })
  })

  test('what a damp evening does to all boards is no board’s', () => {
    const seen = [...touches('A', 6, 0.5), ...touches('B', 6, 0.5)]
    for (const { ln, speak } of roomMemory(seen).boards) {
      near(ln, 0, { by: 1e-9 })
      expect(speak).toBe(false)
    }
  })

  test('speaks of a slow board after enough sittings, proposes the fast one from the second', () => {
    const room = (sittings: number) =>
      roomMemory([...touches('A', sittings, -0.2), ...touches('B', sittings, 0.3)])
    expect(room(1).fastest).toBeNull()
    expect(room(2).fastest).toBe('A')
    expect(room(2).boards.map(({ speak }) => speak)).toEqual([false, false])
    expect(room(8).boards.map(({ speak }) => speak)).toEqual([true, true])
    expect(room(8).boards[1]).toMatchObject({ board: 'B', sittings: 8, touches: 32 })
    expect(roomMemory([])).toEqual({ boards: [], fastest: null })
    expect(() => roomMemory([{ sitting: 's', board: 'A', place: '1', lnOver: Number.NaN }])).toThrow(
      'seen[0].lnOver is NaN',
    )
  })
})
