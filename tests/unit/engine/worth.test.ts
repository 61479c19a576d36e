import { describe, expect, test } from 'vitest'
import { type Learned, UNLEARNED, type WaitToCome, worthOf } from '../../../src/engine/index.ts'
import { forecastPot, waitsOf } from '../../../src/engine/wait/forecast.ts'
import { forGlaze, gainSd, learn, type Observation, weighingTells } from '../../../src/engine/wait/learn.ts'
import { TOUCH_SD, unlearnedOn } from '../../../src/engine/wait/learned.ts'
import { readingOf } from '../../../src/engine/wait/worth.ts'
import { bisqueOf, DEFAULT_BODY, dippedBody } from '../../../src/engine/wall/body.ts'
import { courseOf, dryGlazeG, runPot, waterG } from '../../../src/engine/wall/pot.ts'
import { beaker, dip, potOf, ROOM } from '../../fixtures/wall.ts'
import { randomOf } from '../../fixtures/worlds/random.ts'

const wait = (wallMm: number, coats: number, pots = 1): WaitToCome => ({
  id: `${wallMm} ${coats}`,
  pot: potOf(beaker(wallMm)),
  events: Array.from({ length: coats }, (_, k) => dip(`${k}`, 12 * k, 3)),
  air0: ROOM,
  pots,
})
const board = [wait(5, 1, 2), wait(6, 2, 3), wait(8, 2)]

/** ln(wait) of a pot against ln(fill), by straight lines between many runs. */
function logsOf({ pot, events, air0 }: WaitToCome): (fill: number) => number {
  const course = courseOf(pot, events, air0)
  const [least, step, count] = [-0.7, 0.02, 71]
  const at = Array.from({ length: count }, (_, k) =>
    Math.log(Math.max(1 / 60, waitsOf(runPot(course, Math.exp(least + k * step)), 'touch').touchMin)),
  )
  return (fill) => {
    const x = Math.min(count - 1.001, Math.max(0, (fill - least) / step))
    const k = Math.floor(x)
    return at[k]! + (x - k) * (at[k + 1]! - at[k]!)
  }
}

/** Draws of the wait, with the weight that what was seen leaves each: ln(late / early) of the weighted draws. */
function widthOf(draws: readonly { readonly log: number; readonly weight: number }[]): number {
  const sorted = [...draws].sort((a, b) => a.log - b.log)
  const all = sorted.reduce((sum, { weight }) => sum + weight, 0)
  const at = (part: number): number => {
    let sum = 0
    for (const { log, weight } of sorted) {
      sum += weight
      if (sum >= part * all) return log
    }
    return Number.NaN
  }
  return at(0.9) - at(0.1)
}

const DRAWS = 4000
const TRUTHS = 120

/** By brute force: rooms are drawn, each is measured, and its waits are told from draws weighted by what was read. */
function byDraws(learned: Learned, sd: number | undefined): number {
  const random = randomOf(77)
  const waits = board.map((one) => ({ logOf: logsOf(one), pots: one.pots }))
  const rooms = Array.from({ length: DRAWS }, () => ({
    fill: learned.fillMean + learned.fillSd * random.normal(),
    rest: Math.hypot(learned.timeSd, TOUCH_SD) * random.normal(),
  }))
  const pots = waits.reduce((sum, one) => sum + one.pots, 0)
  const told = (weightOf: (fill: number) => number): number =>
    waits.reduce(
      (sum, { logOf, pots: n }) =>
        sum +
        n * widthOf(rooms.map(({ fill, rest }) => ({ log: logOf(fill) + rest, weight: weightOf(fill) }))),
      0,
    ) / pots
  if (sd === undefined) return Math.exp(told(() => 1))
  let sum = 0
  for (let k = 0; k < TRUTHS; k++) {
    const read = learned.fillMean + learned.fillSd * random.normal() + sd * random.normal()
    sum += told((fill) => Math.exp(-0.5 * ((read - fill) / sd) ** 2))
  }
  return Math.exp(sum / TRUTHS)
}

describe('what one measurement would buy', () => {
  test('how far waits are known agrees to 15 % with drawing rooms', () => {
    const { factor } = worthOf(board, UNLEARNED, [])
    expect(factor / byDraws(UNLEARNED, undefined)).toBeGreaterThan(0.85)
    expect(factor / byDraws(UNLEARNED, undefined)).toBeLessThan(1.15)
  })

  test.each([0.05, 0.1, 0.3])(
    'a reading to %d of ln(fill) agrees to 15 % with drawing rooms and measuring each',
    (sd) => {
      const { after } = worthOf(board, UNLEARNED, [{ kind: 'reading', sd }])
      const drawn = byDraws(UNLEARNED, sd)
      expect(after[0]! / drawn).toBeGreaterThan(0.85)
      expect(after[0]! / drawn).toBeLessThan(1.15)
    },
  )

  test('the sharper a reading the more it buys, a useless one nothing', () => {
    const { factor, after } = worthOf(
      board,
      UNLEARNED,
      [0.02, 0.1, 0.3, 10].map((sd) => ({ kind: 'reading' as const, sd })),
    )
    expect([...after].sort((a, b) => a - b)).toEqual(after)
    expect(after[0]!).toBeLessThan(0.75 * factor)
    expect(after[3]! / factor).toBeCloseTo(1, 2)
  })

  test('a touch narrows its neighbours too, and never widens the board', () => {
    const { factor, after } = worthOf(
      board,
      UNLEARNED,
      board.map((_, k) => ({ kind: 'touch' as const, wait: k })),
    )
    for (const one of after) expect(one).toBeLessThan(factor * 0.97)
  })

  /** A board's waits after observations of one of them, other glazes wider: late over early as told then. */
  const toldAfter = (waits: readonly WaitToCome[], glazeId: string, seen: readonly Observation[]): number => {
    const lesson = learn(seen)
    const after = waits.map((one) => {
      const own = one.events.some((event) => event.kind === 'dip' && event.glazeId === glazeId)
      return { ...one, learned: own ? lesson : forGlaze(lesson) }
    })
    return worthOf(after, lesson, []).factor
  }
  const two = board.map((one, k) => (k < 2 ? one : { ...one, events: [dip('o', 0, 3), dip('p', 12, 3)] }))
  const other = two.map((one, k) => ({
    ...one,
    events: one.events.map((event) =>
      k === 2 && event.kind === 'dip' ? { ...event, glazeId: 'other' } : event,
    ),
  }))

  test.each([0, 1, 2])(
    'a touch of wait %d buys what it is said to buy, dry and not yet alike likely',
    (k) => {
      const one = other[k]!
      const last = one.events.at(-1)!
      const glazeId = last.kind === 'dip' ? last.glazeId : ''
      const atMin = forecastPot(one.pot, one.events, one.air0, UNLEARNED).touchDry.likely
      const look = { ...one, kind: 'look', id: 'l', of: 'touch' } as const
      const bought = [{ dryMin: atMin }, { dampMin: atMin }].map((saw) =>
        toldAfter(other, glazeId, [{ ...look, ...saw }]),
      )
      const { after } = worthOf(other, UNLEARNED, [{ kind: 'touch', wait: k }])
      expect(after[0]! / Math.sqrt(bought[0]! * bought[1]!)).toBeGreaterThan(0.93)
      expect(after[0]! / Math.sqrt(bought[0]! * bought[1]!)).toBeLessThan(1.07)
    },
  )

  test.each([0, 1, 2])(
    'a weighing of wait %d buys what it is said to buy, over what the scale may show',
    (k) => {
      const one = other[k]!
      const last = one.events.at(-1)!
      const glazeId = last.kind === 'dip' ? last.glazeId : ''
      const sd = weighingTells(one)
      // The middles of ten even parts of what the scale may show.
      const shows = [-1.64, -1.04, -0.67, -0.39, -0.13, 0.13, 0.39, 0.67, 1.04, 1.64]
      const grams = (fill: number): number => {
        const run = runPot(courseOf(one.pot, one.events, one.air0), Math.exp(fill))
        return waterG(run) + dryGlazeG(run)
      }
      const bought = shows.map((sds) => {
        const gainG = grams(sds * Math.hypot(sd, UNLEARNED.fillSd))
        const weighing = { kind: 'weighing', ...one, id: 'w', atMin: last.atMin, gainG } as const
        return Math.log(toldAfter(other, glazeId, [weighing]))
      })
      const { after } = worthOf(other, UNLEARNED, [{ kind: 'reading', sd, wait: k }])
      const mean = Math.exp(bought.reduce((sum, ln) => sum + ln, 0) / shows.length)
      expect(after[0]! / mean).toBeGreaterThan(0.93)
      expect(after[0]! / mean).toBeLessThan(1.07)
    },
  )

  test('a tile that was dipped tells no more than suction has to do with waits', () => {
    const before = unlearnedOn(DEFAULT_BODY)
    const after = unlearnedOn(dippedBody(DEFAULT_BODY))
    const sd = readingOf(before, after)
    // Two normal readings of one thing: precisions add.
    expect(1 / Math.sqrt(1 / before.fillSd ** 2 + 1 / sd ** 2)).toBeCloseTo(after.fillSd, 9)
    expect(readingOf(before, before)).toBe(10)
    const far = unlearnedOn(bisqueOf(0.06))
    expect(readingOf(far, unlearnedOn(dippedBody(bisqueOf(0.06))))).toBeLessThan(sd)
  })

  test('a wall that fills gains less than it is brought, so its weight tells less', () => {
    const [dry, filling] = [1, 3].map((coats) => weighingTells(wait(4, coats)))
    expect(filling!).toBeGreaterThan(1.3 * dry!)
    const still = { ...wait(6, 0), events: [] }
    expect(weighingTells(still)).toBe(10)
  })

  test('a heavier gain is told better; what makes no sense is refused by name', () => {
    expect(gainSd(80)).toBeLessThan(gainSd(15))
    expect(() => gainSd(0.2)).toThrow(/gainG is 0.2/)
    expect(() => worthOf([], UNLEARNED, [])).toThrow(/waits.length is 0/)
    expect(() => worthOf(board, UNLEARNED, [{ kind: 'touch', wait: 9 }])).toThrow(/wait is 9/)
    expect(() => worthOf(board, UNLEARNED, [{ kind: 'reading', sd: 0 }])).toThrow(/sd is 0/)
  })
})
