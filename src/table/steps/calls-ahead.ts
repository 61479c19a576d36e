import { forecastOf, TOGETHER_MS } from '../forecast/forecast.ts'
import { byPlace, lastDip } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { isClocked, nextBucket } from './steps.ts'
import { stepsOf } from './work.ts'

/** Pots that will want a touch, called as one: all go into the same bucket and are due within a minute. */
export interface AheadCall {
  /** When it is due, table time, ms; in the past while nobody has answered. */
  readonly at: number
  readonly bucketId: string
  readonly bucketLetter: string
  readonly pots: readonly PotState[]
}

/** Every ready call that is due or will be if nothing is done meanwhile, soonest first. */
export function callsAhead(table: Table, now: number): readonly AheadCall[] {
  const due = stepsOf(table, now)
    .flatMap(({ pot, step }) => {
      const bucketId = nextBucket(table, pot)
      // A pot in the bucket or the hands waits too: its dry clock needs no further hit.
      const waits = 'dip' in step || (step.is === 'dip' && isClocked(table) && lastDip(pot))
      if (!waits || bucketId === undefined) return []
      const at = 'askAt' in step ? step.askAt : (forecastOf(table, pot)?.ready.likely ?? Number.NaN)
      return Number.isFinite(at) ? [{ pot, at, bucketId }] : []
    })
    .sort((a, b) => a.at - b.at)
  const calls: { at: number; bucketId: string; bucketLetter: string; pots: PotState[] }[] = []
  for (const { pot, at, bucketId } of due) {
    const bucketLetter = table.buckets[bucketId]?.facts.letter
    if (bucketLetter === undefined) continue
    const joins = calls.find((call) => call.bucketId === bucketId && at - call.at <= TOGETHER_MS)
    if (joins) joins.pots.push(pot)
    else calls.push({ at, bucketId, bucketLetter, pots: [pot] })
  }
  for (const { pots } of calls) pots.sort(byPlace)
  return calls
}

/** Waits that are better kept in a calendar than in an app. */
export const LONG_MS = 3_600_000

/** Something a person would put in a calendar: pots due after a long wait, or dry for the kiln. */
export interface LongWait {
  readonly what: 'touch' | 'kiln'
  /** Table time, ms. */
  readonly at: number
  readonly pots: readonly PotState[]
}

/** Waits of over an hour from now, soonest first; of the kiln the moment the last pot of those done is dry. */
export function longWaits(table: Table, now: number): readonly LongWait[] {
  const touches = callsAhead(table, now).map(({ at, pots }): LongWait => ({ what: 'touch', at, pots }))
  const fired = new Set(
    Object.values(table.loads ?? {}).flatMap(({ litAt, things }) =>
      litAt === undefined ? [] : Object.keys(things),
    ),
  )
  const done = stepsOf(table, now).flatMap(({ pot, step }) => {
    if (fired.has(pot.facts.potId) || fired.has(pot.facts.lidOf ?? '')) return []
    const all = step.is === 'kiln' || step.is === 'foot-check' || nextBucket(table, pot) === undefined
    const at = lastDip(pot) && all ? forecastOf(table, pot)?.kiln.likely : undefined
    return at !== undefined && Number.isFinite(at) ? [{ pot, at }] : []
  })
  const kilnAt = Math.max(...done.map(({ at }) => at))
  const kiln: LongWait[] =
    done.length > 0 ? [{ what: 'kiln', at: kilnAt, pots: done.map(({ pot }) => pot) }] : []
  return [...touches, ...kiln].filter(({ at }) => at - now > LONG_MS).sort((a, b) => a.at - b.at)
}
