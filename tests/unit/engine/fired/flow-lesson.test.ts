/** The lesson of the fire on its own terms: rows computed once from the stated model, and what it must never do. */
import { describe, expect, test } from 'vitest'
import {
  type Factor,
  flowLesson,
  type HeatSeen,
  nextPot,
  type TaughtResult,
} from '../../../../src/engine/fired/flow-lesson.ts'
import type { LnK } from '../../../../src/engine/fired/run-curve.ts'
import { near } from '../../../reference/near.ts'

/** With the studio's own 0.25 a subject that is known to 0.515. */
const START = { subject: 'a', mean: 0, sd: Math.sqrt(0.515 ** 2 - 0.25 ** 2) }
const times = (k: number): LnK => ({ kind: 'point', ln: Math.log(k), sd: 0 })
const under = (k: number): LnK => ({ kind: 'range', low: Number.NEGATIVE_INFINITY, high: Math.log(k) })
const over = (k: number): LnK => ({ kind: 'range', low: Math.log(k), high: Number.POSITIVE_INFINITY })

const resultsOf = (seen: readonly (readonly [heat: string, lnK: LnK])[], subject = 'a'): TaughtResult[] =>
  seen.map(([heat, lnK], i) => ({ id: `${subject} ${i}`, subject, heat, fill: 'one', lnK }))
const heatsOf = (results: readonly TaughtResult[], sd: number): HeatSeen[] =>
  [...new Set(results.map(({ heat }) => heat))].map((heat) => ({ heat, mean: 0, sd }))
const learned = (seen: readonly (readonly [heat: string, lnK: LnK])[], sd = 0.12) => {
  const results = resultsOf(seen)
  return flowLesson(results, [START], heatsOf(results, sd)).subjects[0]!
}
const each = (n: number, of: LnK) => Array.from({ length: n }, (_, i) => [`${i}`, of] as const)
const one = (n: number, of: LnK) => Array.from({ length: n }, () => ['f', of] as const)

describe('the stated model, factor at 10, 50 and 90 %', () => {
  test.each<[string, readonly (readonly [string, LnK])[], number, readonly [number, number, number], number]>(
    [
      ['no result', [], 0.12, [0.517, 1, 1.935], 0.01],
      ['three as told, of three firings', each(3, times(1)), 0.12, [0.8, 1, 1.25], 0.02],
      ['a fourth at five times', [...each(3, times(1)), ['x', times(5)]], 0.12, [0.87, 1.09, 1.39], 0.02],
      ['ten at 1.3 of one firing', one(10, times(1.3)), 0.12, [1.06, 1.27, 1.53], 0.02],
      ['the same, no cone seen', one(10, times(1.3)), 0.2, [0.96, 1.25, 1.61], 0.02],
      ['ten at 1.3 of ten firings', each(10, times(1.3)), 0.12, [1.14, 1.28, 1.45], 0.02],
      ['on the shelf, where it was told to reach it', each(1, over(1)), 0.12, [0.85, 1.36, 2.32], 0.02],
      ['on the shelf at half the room', each(1, over(0.5)), 0.12, [0.63, 1.09, 2.02], 0.02],
      ['on the shelf at twice the room', each(1, over(2)), 0.12, [1.14, 1.89, 3.03], 0.02],
      ['none, told 6 mm', each(1, under(1 / 6)), 0.12, [0.22, 0.44, 0.98], 0.03],
      ['none, told 1 mm', each(1, under(1)), 0.12, [0.43, 0.73, 1.17], 0.03],
      ['none, told 0.3 mm', each(1, under(1 / 0.3)), 0.12, [0.51, 0.98, 1.82], 0.03],
    ],
  )('%s', (_, seen, sd, [low, likely, high], part) => {
    const { factor } = learned(seen, sd)
    near(factor.low, low, { part })
    near(factor.likely, likely, { part })
    near(factor.high, high, { part })
  })
})

describe('a lesson', () => {
  test('of many of one firing stays wider than of as many firings', () => {
    expect(learned(one(10, times(1.3)), 0.2).lnSd).toBeGreaterThan(
      1.4 * learned(each(10, times(1.3)), 0.2).lnSd,
    )
  })

  test('moves little by one odd pot, and by an ordinary one as much as it should', () => {
    const odd = learned([...each(3, times(1)), ['x', times(20)]])
    expect(odd.factor.likely).toBeLessThan(1.08)
    expect(learned([...each(3, times(1)), ['x', times(1.5)]]).factor.likely).toBeGreaterThan(1.06)
  })

  test('takes a hot firing for what the cones said of it', () => {
    const results = resultsOf([['hot', times(1.2)]])
    const told = flowLesson(results, [START], [{ heat: 'hot', mean: Math.log(1.2), sd: 0.05 }]).subjects[0]!
    near(told.factor.likely, 1, { by: 0.01 })
  })

  test('of one glaze reaches the others through the studio, less', () => {
    const results = resultsOf(each(6, times(2)))
    const starts = [START, { ...START, subject: 'b' }]
    const { subjects, studio } = flowLesson(results, starts, heatsOf(results, 0.12))
    const [a, b] = subjects
    expect(a!.lnMean).toBeGreaterThan(0.6)
    expect(b!.lnMean).toBeGreaterThan(0.1)
    expect(b!.lnMean).toBeLessThan(a!.lnMean / 3)
    expect(b!.results).toEqual([])
    near(studio.mean, b!.lnMean, { by: 0.005 })
  })

  test('learns a firing from all that stood in it: what others of it did is not put down to a glaze', () => {
    const others = ['b', 'c', 'd', 'e'].flatMap((subject) =>
      [0, 1].flatMap((k) =>
        resultsOf(
          [
            ['hot', times(1.6)],
            [`h${subject}${k}`, times(1)],
          ],
          subject,
        ),
      ),
    )
    const named = others.map((result, i) => ({ ...result, id: `${i}` }))
    const mine = resultsOf([['hot', times(1.6)]])
    const starts = ['a', 'b', 'c', 'd', 'e'].map((subject) => ({ ...START, subject }))
    const alone = flowLesson(mine, starts, heatsOf(mine, 0.2)).subjects[0]!
    const all = [...mine, ...named]
    const together = flowLesson(all, starts, heatsOf(all, 0.2)).subjects[0]!
    expect(together.lnMean).toBeLessThan(alone.lnMean - 0.04)
  })

  test('says so where two fills of one bucket run half as far again apart', () => {
    const results = [...resultsOf(each(3, times(1))), ...resultsOf(each(3, times(2.2)), 'b')].map(
      (result, i) => ({ ...result, id: `${i}`, subject: 'a', fill: result.subject }),
    )
    const heats = heatsOf(results, 0.12)
    expect(flowLesson(results, [START], heats).subjects[0]!.fillsDiffer).toBe(true)
    const alike = results.map((result) => ({ ...result, fill: 'b' }))
    expect(flowLesson(alike, [START], heats).subjects[0]!.fillsDiffer).toBe(false)
  })

  test('tells the next pot wider than its factor, about the firing that is planned', () => {
    const lesson = learned(each(5, times(1.3)))
    const next = nextPot(lesson, { mean: 0, sd: 0.2 })
    const ratio = ({ low, high }: Factor) => high / low
    expect(ratio(next)).toBeGreaterThan(1.3 * ratio(lesson.factor))
    near(next.likely, lesson.factor.likely, { part: 0.01 })
    near(nextPot(lesson, { mean: 0.3, sd: 0.2 }).likely, next.likely * Math.exp(0.3), { part: 0.01 })
  })

  test('refuses what it cannot mean', () => {
    const result: TaughtResult = { id: 'p', subject: 'a', heat: 'f', fill: 'one', lnK: times(1) }
    const heat = [{ heat: 'f', mean: 0, sd: 0.2 }]
    expect(() => flowLesson([{ ...result, subject: 'z' }], [START], heat)).toThrow('p.subject is z')
    expect(() => flowLesson([result], [START], [])).toThrow('p.heat is f')
    expect(() =>
      flowLesson([{ ...result, lnK: { ...times(1), ln: Number.NaN } as LnK }], [START], heat),
    ).toThrow('p.ln is NaN: must be from -20 to 20')
    expect(() => flowLesson([{ ...result, lnK: { kind: 'range', low: 1, high: 1 } }], [START], heat)).toThrow(
      'p.high is 1: must be above p.low, 1',
    )
    expect(() => flowLesson([], [{ ...START, sd: 0 }], [])).toThrow('a.sd is 0')
  })
})
