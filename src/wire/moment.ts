/** The tick: once a quarter second the clock, the order of work and the card are taken together, for all that shows or says them. */

import { batch, computed, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { Clock } from '../device/ports.ts'
import type { Card } from '../table/card/card.ts'
import type { FollowedSchedule } from '../table/card/card-now.ts'
import { type Judge, judged } from '../table/card/judged.ts'
import { type Shown, shownTo } from '../table/card/shown.ts'
import { type Potter, potterOf, viewOf } from '../table/model/potters.ts'
import type { Table } from '../table/model/state.ts'
import type { ScheduleOption } from '../table/order/schedule-options.ts'
import { type Fetched, fetched } from '../ui/fetched.ts'
import type { Jumps } from './clock-set.ts'
import { openPlanning } from './planning.ts'

/** How often what is shown follows the clock; a count follows the screen's own frames. */
const TICK_MS = 250

/** The moment as all see it: its time, the order of work, and the one card. */
export interface Moment {
  /** Table time, ms. */
  readonly now: ReadonlySignal<number>
  readonly frameNow: ReadonlySignal<number>
  readonly potter: Signal<Potter>
  /** The table as the hands see it whose card shows. */
  readonly seen: ReadonlySignal<Table>
  /** Computed once a tick, for screen, voice, notices, track and vibration alike. */
  readonly card: ReadonlySignal<Card>
  /** What the other pair of hands has on its card; undefined where one works alone. */
  readonly elsewhere: ReadonlySignal<Card | undefined>
  /** The order of work that the card follows; undefined while none is told. */
  readonly schedule: ReadonlySignal<FollowedSchedule | undefined>
  readonly scheduleOptions: ReadonlySignal<readonly ScheduleOption[]>
  /** What judges a dip before it starts. */
  readonly judging: Fetched<Judge>
  /** Looks at the clock anew. */
  tick(): void
  /** What tells whether a line is being said: no clock changes its card. */
  hear(saying: () => boolean): void
}

export function openMoment(table: ReadonlySignal<Table>, clock: Clock, { skewMs }: Jumps): Moment {
  const timeNow = () => clock.epochMs() - skewMs()
  const now = signal(timeNow())
  const frameNow = signal(now.peek())
  const planning = openPlanning(table, now)
  const potter = signal<Potter>(0)
  const seen = computed(() => viewOf(table.value, table.value.settings.potters === 2 ? potter.value : 0))
  const judge = signal<Judge | undefined>(undefined)
  const judging = fetched(async () => {
    // No warning without its words.
    const [part] = await Promise.all([
      import('../table/card/engine-judge.ts'),
      import('../screens/bench/lazy-bench.tsx'),
    ])
    judge.value = part.judge
    return part.judge
  })
  let saying = () => false
  let before: readonly Shown[] = []
  const all = computed(() => {
    before = shownTo(before, seen.value, now.value, planning.schedule.value, saying())
    return before
  })
  const shown = computed(() => all.value[potterOf(seen.value)] as Shown)
  const card = computed(() => judged(seen.value, shown.value.card, now.value, judge.value))
  const elsewhere = computed(() => all.value[1 - potterOf(seen.value)]?.card)
  const schedule = computed(() => shown.value.schedule)
  const tick = () =>
    batch(() => {
      now.value = timeNow()
      frameNow.value = now.value
    })
  setInterval(tick, TICK_MS)

  const counting = computed(() => (card.value.kind === 'count' ? card.value.dip : undefined))
  effect(() => {
    const dip = counting.value
    if (!dip) return
    const turns = [dip.underAt - dip.lowerS * 1000, dip.outAt]
    let frame = requestAnimationFrame(function again() {
      frame = requestAnimationFrame(again)
      const at = timeNow()
      // A hit means something else from IN and from OUT on; between them the numeral alone moves.
      if (turns.some((turn) => now.peek() < turn && at >= turn)) tick()
      else frameNow.value = at
    })
    return () => cancelAnimationFrame(frame)
  })
  return {
    now,
    frameNow,
    potter,
    seen,
    card,
    elsewhere,
    schedule,
    scheduleOptions: planning.scheduleOptions,
    judging,
    tick,
    hear(voice) {
      saying = voice
    },
  }
}
