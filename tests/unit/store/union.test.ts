import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compareRecords } from '../../../shared/record.ts'
import { unite } from '../../../src/store/union.ts'
import { uniteSteps } from '../../../src/store/union-steps.ts'
import { hitOf, journals, RUNS } from './sample.ts'

type Records = ReturnType<typeof hitOf>
const join = (...parts: readonly Records[]) =>
  parts.reduce<Records>((ours, theirs) => [...unite(ours, theirs).records], [])

describe.each([
  ['journals of honest phones', false],
  ['journals in which one id has two contents', true],
])('union of %s', (_, forged) => {
  const journal = journals(forged)

  test('is commutative', () => {
    fc.assert(
      fc.property(journal, journal, (a, b) => {
        expect(join(a, b)).toEqual(join(b, a))
      }),
      { numRuns: RUNS },
    )
  })

  test('is associative', () => {
    fc.assert(
      fc.property(journal, journal, journal, (a, b, c) => {
        expect(join(join(a, b), c)).toEqual(join(a, join(b, c)))
      }),
      { numRuns: RUNS },
    )
  })

  test('is idempotent', () => {
    fc.assert(
      fc.property(journal, journal, (a, b) => {
        const once = join(a, b)
        expect(join(once, b)).toEqual(once)
        expect(join(once, once)).toEqual(once)
        expect(unite(once, b).added).toEqual([])
      }),
      { numRuns: RUNS },
    )
  })

  test('is the same in steps', () => {
    fc.assert(
      fc.property(journal, journal, fc.integer({ min: 1, max: 9 }), (a, b, each) => {
        const ours = join(a)
        const steps = uniteSteps(ours, b, each)
        let step = steps.next()
        while (!step.done) step = steps.next()
        expect(step.value).toEqual(unite(ours, b))
      }),
      { numRuns: RUNS },
    )
  })

  test('holds every id of both, once, in the order of the fold', () => {
    fc.assert(
      fc.property(journal, journal, (a, b) => {
        const united = join(a, b)
        const ids = united.map((record) => record.id)
        expect(new Set(ids)).toEqual(new Set([...a, ...b].map((record) => record.id)))
        expect(ids).toHaveLength(new Set(ids).size)
        expect(united).toEqual([...united].sort(compareRecords))
      }),
      { numRuns: RUNS },
    )
  })
})

test('tells what was new, and what lost against another content', () => {
  const ours = [...hitOf('a', 1, 1), ...hitOf('b', 1, 2)]
  const other = { ...ours[0]!, sum: ours[0]!.sum ^ 1 }
  const { added, displaced } = unite(ours, [...ours, ...hitOf('c', 1, 1), other])
  expect(added.filter((record) => record.writer === 'c')).toHaveLength(1)
  expect(displaced).toHaveLength(1)
})
