/** Times of the water balance on this machine: the whole table, one touch-dry, one learning update. */

import type { PotWall, WallEvent } from '../../src/engine/contract.ts'
import { waitsOf } from '../../src/engine/forecast.ts'
import { DEFAULT_BODY, forecastPot, type Look, learn, UNLEARNED } from '../../src/engine/index.ts'
import { courseOf, runPot } from '../../src/engine/pot.ts'
import { BOARD, stackDips } from '../fixtures/class.ts'
import { air, potOf } from '../fixtures/wall.ts'
import type { Timing } from './melt.ts'

const RUNS = 30

/** Median of `RUNS` after as many to warm up, ms. */
function median(run: () => unknown): number {
  for (let k = 0; k < RUNS; k++) run()
  const times = Array.from({ length: RUNS }, () => {
    const from = performance.now()
    run()
    return performance.now() - from
  })
  return times.sort((a, b) => a - b)[RUNS >> 1]!
}

const ROOM = air(21, 0.45)
const POTS = 40

/** Forty pots of the class, walls all different, three coats each at 20 and 45 minutes. */
function table(): readonly { readonly pot: PotWall; readonly events: readonly WallEvent[] }[] {
  return Array.from({ length: POTS }, (_, k) => {
    const { shape } = BOARD[k % BOARD.length]!
    const pot = potOf({ ...shape, wallMm: shape.wallMm + k / 50 }, { ...DEFAULT_BODY, absorption: 0.12 })
    const events = stackDips(pot, 'Tideline').map((coat, c) => ({ ...coat, atMin: k + [0, 20, 45][c]! }))
    return { pot, events }
  })
}

export function benchEngine(): readonly Timing[] {
  const pots = table()
  const { pot, events } = pots[1]!
  const course = courseOf(pot, events, ROOM)
  const look = (): Look => ({
    kind: 'look',
    id: 'one',
    of: 'touch',
    pot,
    events,
    air0: ROOM,
    dampMin: events.at(-1)!.atMin + 20,
  })
  return [
    {
      name: `forecast of ${POTS} pots with 3 coats`,
      ms: median(() => pots.map((one) => forecastPot(one.pot, one.events, ROOM, UNLEARNED))),
      budgetMs: 50,
    },
    { name: 'one pot to touch-dry', ms: median(() => waitsOf(runPot(course, 1), 'touch')), budgetMs: 0.5 },
    // A new object each time, or the figures kept for the observation would be measured.
    { name: 'one learning update', ms: median(() => learn([look()])), budgetMs: 5 },
  ]
}
