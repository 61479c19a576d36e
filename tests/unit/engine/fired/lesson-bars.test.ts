/**
 * How well a lesson tells, by simulation of studios whose truth is known; what is asked is printed beside what is reached,
 * in full by `npm run prove`.
 */
import { describe, expect, test } from 'vitest'
import { flowLesson, nextPot, type SubjectLesson } from '../../../../src/engine/fired/flow-lesson.ts'
import { type Studio, studioOf, type World } from '../../../fixtures/fired/studios.ts'

const FULL = process.env.PROVE === '1'
const say = (line: string) => {
  if (FULL) console.log(line)
}
const COUNTS = [0, 1, 2, 3, 5, 7, 10] as const
/** Of a slice those alone, a few seconds each. */
const SLICE = FULL ? COUNTS : COUNTS.filter((count) => [1, 3, 10].includes(count))
/** Mean sd of ln factor at those counts that a prototype reached; 10 % more is allowed. */
const SDS: Readonly<Record<World, readonly number[]>> = {
  'single coats': [0.515, 0.38, 0.31, 0.28, 0.23, 0.2, 0.17],
  'steep stacks': [0.515, 0.39, 0.33, 0.29, 0.24, 0.21, 0.19],
}

const holds = ({ low, high }: { readonly low: number; readonly high: number }, ln: number) =>
  ln >= Math.log(low) && ln <= Math.log(high)

interface Told {
  readonly studio: Studio
  readonly lessons: readonly SubjectLesson[]
}

function talliesOf(told: readonly Told[], withNext: boolean) {
  const tally = { n: 0, factor: 0, next: 0, sd: 0, bias: 0 }
  for (const { studio, lessons } of told)
    for (const [s, lesson] of lessons.entries()) {
      const truth = studio.truth[s]!
      tally.n++
      tally.sd += lesson.lnSd
      tally.bias += lesson.lnMean - truth
      if (holds(lesson.factor, truth)) tally.factor++
      if (withNext && holds(nextPot(lesson, { mean: 0, sd: 0.2 }), studio.next[s]!)) tally.next++
    }
  const { n } = tally
  return { factor: tally.factor / n, next: tally.next / n, sd: tally.sd / n, bias: tally.bias / n }
}

const toldBy = (studio: Studio): Told => ({
  studio,
  lessons: flowLesson(studio.results, studio.starts, studio.heats).subjects,
})

describe.each<[World, number]>([
  ['single coats', FULL ? 1000 : 200],
  ['steep stacks', FULL ? 600 : 200],
])('%s, %d studios', (world, studios) => {
  test.each(SLICE.map((count) => [count, SDS[world][COUNTS.indexOf(count)]!] as const))(
    'after %d results',
    (count, sd) => {
      const told = Array.from({ length: studios }, (_, seed) => toldBy(studioOf(1000 + seed, world, count)))
      const of = talliesOf(told, true)
      say(
        `${world}, ${count}: factor ${of.factor.toFixed(3)} (.75 to .86), next ${of.next.toFixed(3)} (.76 to .90), ` +
          `sd ${of.sd.toFixed(3)} (${sd} + 10 %), bias ${of.bias.toFixed(3)} (.03)`,
      )
      // A slice of 200 scatters by 0.025 about the whole's coverage, and by 0.03 in bias.
      const slack = FULL ? 0 : 0.03
      expect(of.factor).toBeGreaterThanOrEqual(0.75 - slack)
      expect(of.factor).toBeLessThanOrEqual(0.86 + slack)
      expect(of.next).toBeGreaterThanOrEqual(0.76 - slack)
      expect(of.next).toBeLessThanOrEqual(0.9 + slack)
      expect(of.sd).toBeLessThanOrEqual(1.1 * sd)
      expect(Math.abs(of.bias)).toBeLessThanOrEqual(0.03 + slack)
    },
  )
})

test('eight subjects of one studio, three pots a firing: firings and the studio are learned from all of them', () => {
  const studios = FULL ? 200 : 30
  const told = Array.from({ length: studios }, (_, seed) =>
    toldBy(studioOf(5000 + seed, 'single coats', 3, { subjects: 8 })),
  )
  const of = talliesOf(told, false)
  say(`eight subjects: factor ${of.factor.toFixed(3)}, sd ${of.sd.toFixed(3)}, bias ${of.bias.toFixed(3)}`)
  expect(of.factor).toBeGreaterThanOrEqual(0.75 - (FULL ? 0 : 0.03))
  expect(of.factor).toBeLessThanOrEqual(0.86 + (FULL ? 0 : 0.03))
  // Alone each would stand at 0.29.
  expect(of.sd).toBeLessThan(0.28)
  expect(Math.abs(of.bias)).toBeLessThanOrEqual(0.03)
})

test('a fill that lasts three firings is not known to the lesson: its ranges hold less', () => {
  const studios = FULL ? 1000 : 250
  const told = Array.from({ length: studios }, (_, seed) =>
    toldBy(studioOf(9000 + seed, 'single coats', 9, { firingsAFill: 3 })),
  )
  const { factor, sd } = talliesOf(told, false)
  say(`nine results of one fill: factor ${factor.toFixed(3)}, sd ${sd.toFixed(3)}`)
  expect(factor).toBeGreaterThanOrEqual(0.65)
})
