import { signal } from '@preact/signals'
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { type Ask, makeDesk, type Reply } from '../../../src/planner/messages.ts'
import { keepAsking } from '../../../src/wire/asking.ts'
import type { Planning } from '../../../src/wire/planning.ts'
import { twelve, WHOLE_MINUTES } from '../../fixtures/twelve.ts'
import { Play } from '../table/play.ts'

const MINUTE_MS = 60_000

let dataset: { order?: string }
/** Questions that came to the worker and were not answered yet. */
let waiting: Ask[]
/** The worker's whole answer, at once. */
let answer: (ask: Ask) => void

beforeEach(() => {
  dataset = {}
  waiting = []
  const steps: (() => void)[] = []
  vi.stubGlobal('document', { documentElement: { dataset } })
  vi.stubGlobal(
    'Worker',
    class {
      onmessage: (event: { data: Reply }) => void = () => {}
      private readonly desk = makeDesk(
        (data) => this.onmessage({ data }),
        (run) => steps.push(run),
        () => {},
      )
      constructor() {
        answer = (ask) => {
          this.desk(ask)
          for (let step = steps.shift(); step; step = steps.shift()) step()
        }
      }
      postMessage(ask: Ask) {
        waiting.push(ask)
      }
      terminate() {}
    },
  )
})
afterEach(() => vi.unstubAllGlobals())

/** Twelve pots of one coat whose kiln is too soon for them: ways out are asked about one after another. */
function lateTable(): Play {
  const play = new Play()
  for (const [i, events] of twelve(['GB'], 1).entries()) play.append(events, `laid-${i}`)
  const settings = {
    ...WHOLE_MINUTES,
    firstWaitMin: 127,
    kilnWaitMin: 240,
    kilnOnAt: play.nowMs + 380 * MINUTE_MS,
    loadMin: 30,
  }
  play.append([{ kind: 'settings-set', settings }], 'settings')
  return play
}

const asked = async (): Promise<Ask> => {
  await vi.waitFor(() => expect(waiting).not.toEqual([]), { timeout: 5000 })
  return waiting.shift() as Ask
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 50))

it('a way out that is still asked about never stands before what the table or late hands ask', async () => {
  const play = lateTable()
  const [table, now] = [signal(play.table), signal(play.nowMs)]
  const planning: Planning = { schedule: signal(undefined), scheduleOptions: signal([]) }
  keepAsking(table, now, planning)
  answer(await asked())
  // The first way out is answered just as late hands ask again.
  const way = await asked()
  expect(dataset.order).toBe('told')
  now.value += 30 * MINUTE_MS
  expect(dataset.order).toBe('asked')
  answer(way)
  await settled()
  for (let ask = waiting.shift(); ask; ask = waiting.shift()) answer(ask)
  await vi.waitFor(() => expect(dataset.order).toBe('told'), { timeout: 5000 })
})
