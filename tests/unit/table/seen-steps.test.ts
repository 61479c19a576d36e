/** What is seen of other phones is told in small pieces: a page between them takes taps. */
import { expect, test } from 'vitest'
import { seenFrom, seenSteps } from '../../../src/table/fold/seen.ts'
import { recordsOf, waiting } from '../../fixtures/season.ts'
import { START_MS } from './play.ts'

test('with a pause every hundred records, to the same end', () => {
  const some = recordsOf(waiting(4, START_MS)) as unknown as Parameters<typeof seenFrom>[0]
  const records = Array.from({ length: 40 }, () => some).flat()
  const steps = seenSteps(records, 'own')
  let pauses = 0
  for (;;) {
    const { done, value } = steps.next()
    if (done) {
      expect(value.events).toEqual(seenFrom(records, 'own').events)
      break
    }
    pauses++
  }
  expect(pauses).toBeGreaterThan(records.length / 100)
})
