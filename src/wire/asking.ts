import { effect, type ReadonlySignal } from '@preact/signals'
import type { Ask, Band, Plan, Reply } from '../planner/index.ts'
import { followed } from '../table/card/follow.ts'
import { isKnown, waitsAhead } from '../table/forecast/waits-ahead.ts'
import { potsOnTable } from '../table/model/plan.ts'
import type { Table } from '../table/model/state.ts'
import { awayOf, type Owings, owingOf } from '../table/order/absent.ts'
import { handsLine, lateness, mayBeLate, rangeOf } from '../table/order/hands-line.ts'
import { type Jobs, jobsOf, scheduleFrom } from '../table/order/jobs.ts'
import { loadAt } from '../table/order/load-at.ts'
import { nextTaskEnds } from '../table/order/schedule.ts'
import { byCost, type ScheduleOption, variantsOf } from '../table/order/schedule-options.ts'
import { touchFirst } from '../table/order/touch-first.ts'
import type { Planning } from './planning.ts'

/** Hands that are later than told by this much are asked about again, and no more often, ms. */
const OVERDUE_MS = 60_000
/** A slice of computing on the page's own thread, ms: short of a dropped frame on a slow phone. */
const SLICE_MS = 6
/** A worker that has answered nothing for so long is dead, ms: the next question goes to a new one. */
const DEAD_MS = 5000
/** A way out that gains less isn't worth a line, ms. */
const WORTH_MS = 60_000

/** Runs things soon, one after another; unlike timers these aren't slowed when the page is busy with many. */
function openSoon(): (run: () => void) => void {
  const { port1, port2 } = new MessageChannel()
  const runs: (() => void)[] = []
  port1.onmessage = () => runs.shift()?.()
  return (run) => {
    runs.push(run)
    port2.postMessage(null)
  }
}

/** For whoever looks on: whether the order that is told is that of the table as it is. */
const show = (order: 'asked' | 'told' | 'none') => {
  document.documentElement.dataset.order = order
}

/** Asks the planner after every change of the table, and when the hands are late; tells its answers. */
export function keepAsking(
  table: ReadonlySignal<Table>,
  now: ReadonlySignal<number>,
  planning: Planning,
): void {
  const { schedule, scheduleOptions } = planning
  const soon = openSoon()
  let worker = openWorker()
  let newest = 0
  /** How often the order itself was asked for: ways out of an older one are left. */
  let round = 0
  let answered: (reply: Reply) => void = () => {}
  let waiting = false
  let askedAt = Number.NEGATIVE_INFINITY
  let silentSince: number | undefined
  let owings: Owings = []

  function openWorker(): Worker {
    const opened = new Worker(new URL('../planner/worker.ts', import.meta.url), { type: 'module' })
    opened.onmessage = ({ data }: MessageEvent<Reply>) => {
      silentSince = undefined
      if (data.id === newest) answered(data)
    }
    opened.onerror = () => {
      schedule.value = undefined
      show('none')
    }
    return opened
  }
  const post = ({ input, odds }: Jobs, previous: Plan | null, long: boolean, then: typeof answered) => {
    if (now.peek() - (silentSince ?? now.peek()) > DEAD_MS) {
      worker.terminate()
      worker = openWorker()
      silentSince = undefined
    }
    silentSince ??= now.peek()
    newest++
    answered = then
    worker.postMessage({ id: newest, input, previous, odds, long } satisfies Ask)
  }

  /** Makes the waits to come known, a slice at a time, then goes on unless the table has changed meanwhile. */
  const known = (of: Table, stillWanted: () => boolean, then: () => void): void => {
    const startMs = performance.now()
    const spent = () => performance.now() - startMs > SLICE_MS
    const later = (run: () => void) =>
      soon(() => {
        if (stillWanted()) run()
      })
    for (const pot of potsOnTable(of)) {
      if (isKnown(of, pot, now.peek())) continue
      if (spent()) {
        later(() => known(of, stillWanted, then))
        return
      }
      waitsAhead(of, pot, now.peek())
    }
    if (spent()) later(then)
    else then()
  }

  const ask = () => {
    waiting = false
    const of = table.peek()
    const mine = round
    const wanted = () => round === mine
    known(of, wanted, () => {
      askedAt = now.peek()
      owings = owingOf(of, schedule.peek(), askedAt, owings)
      const jobs = jobsOf(of, askedAt, awayOf(owings, askedAt))
      if (jobs.input.pots.length === 0) {
        schedule.value = undefined
        scheduleOptions.value = []
        newest++
        show('none')
        return
      }
      const previous = schedule.peek()?.plan ?? null
      post(jobs, previous, true, (reply) => {
        if (wanted()) answer(of, jobs, reply, previous !== null)
      })
    })
  }
  const askSoon = () => {
    if (waiting) return
    waiting = true
    round++
    show('asked')
    soon(ask)
  }

  const answer = (of: Table, jobs: Jobs, reply: Reply, begun: boolean) => {
    if (reply.stage === 'refused') {
      console.error(`no order of work: ${reply.message}`)
      schedule.value = undefined
      show('none')
      return
    }
    // The quick first answer keeps an order that was told; without one the search is waited for.
    if (reply.stage === 'first' && !begun) return
    // What was foreseen last holds until the search has ended.
    const foresight = reply.foresight ?? schedule.peek()?.foresight
    schedule.value = {
      ...followed(scheduleFrom(jobs, reply.plan, askedAt, foresight)),
      touch: schedule.peek()?.touch,
    }
    show('told')
    if (reply.stage === 'first') return
    soon(() => {
      const latest = schedule.peek()
      if (table.peek() === of && latest) schedule.value = { ...latest, touch: touchFirst(of, now.peek()) }
    })
    const line = schedule.value && handsLine(of, schedule.value, askedAt)
    if (line?.slackMs !== undefined && (lateness(line) > 0 || mayBeLate(line) > 0)) seekWays(of, line.slackMs)
    else scheduleOptions.value = []
  }

  /** Plans each way out, one after another, until the order is asked for anew. */
  const seekWays = (of: Table, slackMs: number) => {
    const before = schedule.peek()
    if (!before) return
    const variants = [...variantsOf(of, before, now.peek())]
    const found: ScheduleOption[] = []
    const mine = round
    const wanted = () => round === mine
    const next = () => {
      if (!wanted()) return
      const variant = variants.shift()
      if (!variant) {
        scheduleOptions.value = found.sort(byCost)
        return
      }
      known(variant.table, wanted, () => {
        const jobs = jobsOf(variant.table, now.peek())
        const loadS = (loadAt(variant.table, now.peek()) ?? 0) / 1000
        const reached = (finishS: Pick<Band, 'lower' | 'upper'>, dryS: number, lateOdds: number) => {
          const slackS = Math.floor(loadS - dryS)
          const gainMs = slackS * 1000 - slackMs
          const { cut, action, potIds } = variant
          if (gainMs >= WORTH_MS)
            found.push({
              cut,
              action,
              potIds,
              finish: rangeOf(finishS),
              dryAt: dryS * 1000,
              slackMs: slackS * 1000,
              gainMs,
              lateOdds,
            })
          soon(next)
        }
        if (jobs.input.pots.length === 0) {
          const dryS = Math.max(jobs.input.nowS, jobs.input.deadline?.doneDryAtS ?? 0)
          reached({ lower: jobs.input.nowS, upper: jobs.input.nowS }, dryS, Number(dryS > loadS))
          return
        }
        post(jobs, null, false, (reply) => {
          if (reply.stage === 'first') return
          if (reply.stage === 'refused') soon(next)
          else if (reply.foresight) {
            const { finishS, dryAtS, lateOdds } = reply.foresight
            reached(finishS, dryAtS.likely, lateOdds ?? 0)
          }
        })
      })
    }
    next()
  }

  effect(() => {
    table.value
    askSoon()
  })
  effect(() => {
    const due = schedule.value && nextTaskEnds(table.value, schedule.value)
    if (due !== undefined && now.value - due > 0 && now.value - askedAt > OVERDUE_MS) askSoon()
  })
}
