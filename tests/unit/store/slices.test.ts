/** Much work pauses often enough that a phone of a sixth of this machine's speed stays at nothing for 50 ms. */
import { expect, test } from 'vitest'
import type { TableEvent } from '../../../shared/events.ts'
import type { JournalRecord } from '../../../shared/record.ts'
import { uniteSteps } from '../../../src/store/union-steps.ts'
import { foldSteps } from '../../../src/table/fold/fold.ts'
import { seenSteps } from '../../../src/table/fold/seen.ts'
import { recordsOf, season } from '../../fixtures/season.ts'

const EVENTS = 50_000
/** A sixth of 50 ms. Before, what is seen of others took 20 at once. */
const LONGEST_MS = 50 / 6
/** What the machine does beside is not in the shortest of so many runs. */
const RUNS = 4

/** Time of the processor, which others on the machine take none of, ms. */
const processorMs = () => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

/** The longest way from pause to pause, each the shortest of several runs, ms. */
function longestMs(begin: () => Iterator<unknown>): number {
  const shortest: number[] = []
  for (let run = 0; run < RUNS; run++) {
    const steps = begin()
    for (let at = 0, done: boolean | undefined = false; !done; at++) {
      const from = processorMs()
      done = steps.next().done
      shortest[at] = Math.min(shortest[at] ?? Number.POSITIVE_INFINITY, processorMs() - from)
    }
  }
  return Math.max(...shortest)
}

const all = recordsOf(season(EVENTS)) as readonly JournalRecord<TableEvent>[]
const fifth = all.filter((_, i) => i % 5 === 0)

test.each([
  ['a journal united with a year', () => uniteSteps(fifth, all, 100)],
  ['a year united with what it has', () => uniteSteps(all, fifth, 100)],
  ['a year on an empty phone', () => uniteSteps([], all, 100)],
  ['a year as another phone sees it', () => seenSteps(all, 'mine')],
  ['a year folded', () => foldSteps(all, 50)],
])('%s: pauses in time', (_, begin) => {
  expect(longestMs(begin)).toBeLessThan(LONGEST_MS)
})
