import { type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { FollowedSchedule } from '../table/card/card-now.ts'
import type { Table } from '../table/model/state.ts'
import type { ScheduleOption } from '../table/order/schedule-options.ts'

/** What the planner says of the table, as far as it has answered. */
export interface Planning {
  readonly schedule: Signal<FollowedSchedule | undefined>
  /** Ways out of being late, by what they gain. */
  readonly scheduleOptions: Signal<readonly ScheduleOption[]>
}

/** The first card is drawn and takes taps before any of this is fetched, ms. */
const AFTER_MS = 1000

/** Keeps an order of work told: fetched and started once the bench is up. Without it the simple rule goes on. */
export function openPlanning(table: ReadonlySignal<Table>, now: ReadonlySignal<number>): Planning {
  const planning: Planning = { schedule: signal(undefined), scheduleOptions: signal([]) }
  setTimeout(() => {
    import('./asking.ts').then(
      ({ keepAsking }) => keepAsking(table, now, planning),
      () => {},
    )
  }, AFTER_MS)
  return planning
}
