import type { Foresight, Plan, Reason } from '../../planner/types.ts'
import { nextCoat } from '../model/plan.ts'
import type { Potter } from '../model/potters.ts'
import { potterOf } from '../model/potters.ts'
import type { Table } from '../model/state.ts'

/** An order of work as it was told, with what is needed to read it at a later table. */
export interface Schedule {
  readonly plan: Plan
  /** How it may come out; undefined of a quick first answer. */
  readonly foresight?: Foresight
  /** Table time at which it was asked for, ms. */
  readonly askedAt: number
  /** Index in each pot's plan of the first coat it was asked with. */
  readonly firstCoat: Readonly<Record<string, number>>
  /** From OUT of each pot's last coat until it is dry enough to load, as it was asked, seconds. */
  readonly kilnDryS: Readonly<Record<string, number>>
  /** How much later than at once each pair of hands was expected, ms; empty when nobody was away. */
  readonly awayMs: readonly number[]
  /** The pot whose touch would narrow most of the other waits, and how many. */
  readonly touch?: { readonly potId: string; readonly others: number }
}

interface When {
  readonly potter: Potter
  /** Table time, ms. */
  readonly startAt: number
  readonly endAt: number
  readonly reason: Reason
}

/** One thing for the hands to do, in the table's own terms. */
export type Task = When &
  (
    | {
        readonly is: 'dip'
        readonly potId: string
        readonly coat: number
        readonly bucketId: string
        /** How long the pot is held back on purpose, ms. */
        readonly heldMs: number
      }
    | { readonly is: 'open' | 'restir'; readonly bucketId: string; readonly decant: boolean }
    | { readonly is: 'wax' | 'wipe'; readonly potId: string }
  )

const lines = new WeakMap<Schedule, readonly Task[]>()

/** All tasks of a schedule, in order. */
function allTasks(schedule: Schedule): readonly Task[] {
  const before = lines.get(schedule)
  if (before) return before
  const tasks = schedule.plan.actions.map((action): Task => {
    const when: When = {
      potter: action.potter === 1 ? 1 : 0,
      startAt: action.startS * 1000,
      endAt: action.endS * 1000,
      reason: action.reason,
    }
    switch (action.kind) {
      case 'dip': {
        const { potId, bucketId, heldS } = action
        const coat = (schedule.firstCoat[potId] ?? 0) + action.coat
        return { ...when, is: 'dip', potId, bucketId, coat, heldMs: heldS * 1000 }
      }
      case 'open':
      case 'restir':
        return { ...when, is: action.kind, bucketId: action.bucketId, decant: action.decant }
      default:
        return { ...when, is: action.kind, potId: action.potId }
    }
  })
  const late = setUpsLate(tasks)
  lines.set(schedule, late)
  return late
}

/**
 * Glaze settles from its stir on, so a set-up is done as late as the next task of the same hands allows: never minutes
 * before a dip that they then wait for.
 */
function setUpsLate(tasks: readonly Task[]): readonly Task[] {
  const nextStartAt: (number | undefined)[] = []
  return tasks
    .toReversed()
    .map((task): Task => {
      const next = nextStartAt[task.potter]
      const laterMs = task.is === 'open' || task.is === 'restir' ? Math.max(0, (next ?? 0) - task.endAt) : 0
      const startAt = task.startAt + laterMs
      nextStartAt[task.potter] = startAt
      if (laterMs === 0) return task
      const reason = task.reason === 'stirInWait' ? 'inWait' : task.reason
      return { ...task, startAt, endAt: task.endAt + laterMs, reason }
    })
    .toReversed()
}

/** Whether a task was done since it was told. A set-up counts as done once its bucket was stirred here since. */
function isDone(table: Table, schedule: Schedule, task: Task): boolean {
  switch (task.is) {
    case 'open':
    case 'restir': {
      const stirredAt = table.buckets[task.bucketId]?.stirredAt ?? Number.NEGATIVE_INFINITY
      const poured = !task.decant || table.collar?.bucketId === task.bucketId
      return table.openBucket === task.bucketId && stirredAt > schedule.askedAt && poured
    }
    case 'dip': {
      const pot = table.pots[task.potId]
      return !pot || pot.gone || pot.later === true || nextCoat(pot) > task.coat
    }
    case 'wax':
      return table.pots[task.potId]?.waxedAt !== undefined
    case 'wipe':
      return table.pots[task.potId]?.wipedAt !== undefined
  }
}

/** What is left of the order told for the hands that see the table, the next first. */
export function tasksOf(table: Table, schedule: Schedule): readonly Task[] {
  const mine = allTasks(schedule).filter((task) => task.potter === potterOf(table))
  let led = false
  return mine.filter((task) => {
    // Only the leading set-up can have been done: a later one is of its own time.
    const isSetUp = task.is === 'open' || task.is === 'restir'
    if (isSetUp && led) return true
    const done = isDone(table, schedule, task)
    if (isSetUp || !done) led = true
    return !done
  })
}

/** Whether the order told still has something for anybody. */
export const isAnyLeft = (table: Table, schedule: Schedule): boolean =>
  allTasks(schedule).some((task) => !isDone(table, schedule, task))

/** When the first thing left for anybody was to be done, table time ms; undefined when nothing is left. */
export function nextTaskEnds(table: Table, schedule: Schedule): number | undefined {
  return allTasks(schedule).find((task) => !isDone(table, schedule, task))?.endAt
}
