import { describe, expect, test } from 'vitest'
import { type Learned, UNLEARNED, type WaitToCome, worthOf } from '../../../src/engine/index.ts'
import { waitsOf } from '../../../src/engine/wait/forecast.ts'
import { gainSd } from '../../../src/engine/wait/learn.ts'
import { TOUCH_SD, unlearnedOn } from '../../../src/engine/wait/learned.ts'
import { readingOf } from '../../../src/engine/wait/worth.ts'
import { bisqueOf, DEFAULT_BODY, dippedBody } from '../../../src/engine/wall/body.ts'
import { courseOf, runPot } from '../../../src/engine/wall/pot.ts'
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

  test('a heavier gain is told better; what makes no sense is refused by name', () => {
    expect(gainSd(80)).toBeLessThan(gainSd(15))
    expect(() => gainSd(0.2)).toThrow(/gainG is 0.2/)
    expect(() => worthOf([], UNLEARNED, [])).toThrow(/waits.length is 0/)
    expect(() => worthOf(board, UNLEARNED, [{ kind: 'touch', wait: 9 }])).toThrow(/wait is 9/)
    expect(() => worthOf(board, UNLEARNED, [{ kind: 'reading', sd: 0 }])).toThrow(/sd is 0/)
  })
})
