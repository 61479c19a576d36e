/**
 * Much work pauses often: its longest way from pause to pause is a small part of the whole, on any machine. That a phone
 * of a sixth of this machine's speed stays at nothing for 50 ms is measured in the browser (slices.spec.ts).
 */
import { expect, test } from 'vitest'
import type { TableEvent } from '../../../shared/events.ts'
import type { JournalRecord } from '../../../shared/record.ts'
import { uniteSteps } from '../../../src/store/union-steps.ts'
import { foldSteps } from '../../../src/table/fold/fold.ts'
import { seenSteps } from '../../../src/table/fold/seen.ts'
import { processorMs } from '../../fixtures/patience.ts'
import { recordsOf, season } from '../../fixtures/season.ts'

const EVENTS = 50_000
/** What the machine does beside is not in the shortest of so many runs. */
const RUNS = 4

/** How often the longest way from pause to pause goes into the whole, each way the shortest of several runs. */
function longestInWhole(begin: () => Iterator<unknown>): number {
  const shortest: number[] = []
  for (let run = 0; run < RUNS; run++) {
    const steps = begin()
    for (let at = 0, done: boolean | undefined = false; !done; at++) {
      const from = processorMs()
      done = steps.next().done
      shortest[at] = Math.min(shortest[at] ?? Number.POSITIVE_INFINITY, processorMs() - from)
    }
  }
  return shortest.reduce((whole, ms) => whole + ms, 0) / Math.max(...shortest)
}

const all = recordsOf(season(EVENTS)) as readonly JournalRecord<TableEvent>[]
const fifth = all.filter((_, i) => i % 5 === 0)

// About half of what was measured. What is seen of others took 20 ms of some 350 at once before.
test.each([
  ['a journal united with a year', 18, () => uniteSteps(fifth, all, 100)],
  ['a year united with what it has', 20, () => uniteSteps(all, fifth, 100)],
  ['a year on an empty phone', 7, () => uniteSteps([], all, 100)],
  ['a year as another phone sees it', 28, () => seenSteps(all, 'mine')],
  ['a year folded', 50, () => foldSteps(all, 50)],
] as const)('%s: pauses %i times and more', (_, times, begin) => {
  expect(longestInWhole(begin)).toBeGreaterThan(times)
})
