import type { Stamped, TableEvent } from '../../../shared/events.ts'
import { changeDip, dipOf, unpicked, withPot } from '../model/change.ts'
import { coatFrom } from '../model/coat-from.ts'
import { densityAt } from '../model/density.ts'
import { isFresh } from '../model/fresh.ts'
import { nextCoat, planOf } from '../model/plan.ts'
import { dippedInto } from '../model/potters.ts'
import type { DipState, PotState, Table } from '../model/state.ts'
import { dipTimesAfter, type Mend } from './dip-times.ts'

type DipEvent = Extract<TableEvent, { kind: 'dipped' }>

/**
 * The table after a dip that was started, or told afterwards, as it turned out to have been. Which of the pot's coats
 * it was follows from the pot, not from what was thought at START. `skewMs` is that of the clock it was written by.
 */
export function dipped(
  table: Table,
  { hit, from }: Stamped,
  event: DipEvent,
  at: number,
  skewMs: number,
  mends: readonly Mend[],
): Table {
  const pot = table.pots[event.potId]
  const bucket = table.buckets[event.bucketId]
  if (!pot || !bucket) return table
  const { bucketId } = event
  const { movedMs: _moved, ...dose } = dipTimesAfter(event, skewMs, mends)
  const other = mends.some((mend) => mend.event.kind === 'dip-corrected' && mend.event.bucketId !== undefined)
  const coat = coatFrom(table, pot, bucketId)?.coat ?? nextCoat(pot)
  const usedAt = event.told ? dose.outAt : at
  const unstirred = other && !event.told ? !isFresh(table, bucketId, usedAt) : event.unstirred
  const { stirredAt } = bucket
  const dip: DipState = {
    dipId: event.dipId,
    hit,
    coat,
    bucketId,
    plannedBucketId: planOf(table, pot)[coat]?.bucketId ?? bucketId,
    cover: event.cover,
    // Another bucket has a density of its own.
    gramsPerMl: other ? densityAt(bucket, dose.outAt) : event.gramsPerMl,
    tappedAt: at,
    ...dose,
    lowerS: event.lowerS,
    plannedHoldS: event.holdS,
    unstirred,
    ...(unstirred && stirredAt !== undefined ? { stirredAgoMs: usedAt - stirredAt } : {}),
    ...(from ? { hands: 2 } : event.hands === 1 ? { hands: 1 } : {}),
  }
  const dipping = withPot(unpicked(table), {
    ...pot,
    ...prepared(pot, event, usedAt),
    dips: byOut([...pot.dips, dip]),
  })
  return dippedInto(dipping, bucketId, usedAt, event.told === true)
}

/** So long before a dip that was logged afterwards its foot was waxed and its dust wiped off, ms: wax had set, damp had left. */
const PREPARED_MS = 10 * 60_000

/** A pot that was dipped before anybody took it down had its foot waxed and its dust wiped off. */
function prepared(pot: PotState, { told }: DipEvent, at: number): Partial<PotState> {
  return told ? { waxedAt: pot.waxedAt ?? at - PREPARED_MS, wipedAt: pot.wipedAt ?? at - PREPARED_MS } : {}
}

const byOut = (dips: readonly DipState[]): DipState[] => [...dips].sort((a, b) => a.outAt - b.outAt)

/** The table after a foot was sponged, or its pot set down. */
export function footDone(
  table: Table,
  event: Extract<TableEvent, { kind: 'sponged' | 'set-down' }>,
  at: number,
): Table {
  const done = event.kind === 'sponged' ? { spongedAt: at } : { setDownAt: at }
  const dipId = event.dipId ?? table.pots[event.potId]?.dips.at(-1)?.dipId
  return dipId === undefined ? table : changeDip(table, dipId, (dip) => ({ ...dip, ...done }))
}

/** The table after coats were touched: each counts for the pot it is on. */
export function touched(
  table: Table,
  { potIds, dipIds, dry }: Extract<TableEvent, { kind: 'touched' }>,
  hit: string,
  at: number,
): Table {
  return potIds.reduce((t, potId, i) => {
    const pot = t.pots[potId]
    const dipId = dipIds?.[i] ?? pot?.dips.at(-1)?.dipId
    if (!pot || dipId === undefined || dipOf(t, dipId)?.pot !== pot) return t
    return withPot(t, { ...pot, touches: [...pot.touches, { at, dry, dipId, hit }] })
  }, table)
}

/** The table after the coats on a pot were counted, or can't be told any more (null). */
export function coatsCounted(table: Table, pot: PotState, coats: number | null): Table {
  const { coatsCounted: _before, ...rest } = pot
  if (coats === null) return withPot(unpicked(table), { ...rest, uncounted: true })
  // The eye is right: what the record has beyond that never went on.
  const since = pot.washedAt
  const dips = pot.dips.filter((dip) => dip.coat < coats || (since !== undefined && dip.outAt <= since))
  const gone = pot.dips.filter((dip) => !dips.includes(dip))
  // Their touches go with them, and what their START said of the coat below.
  const touches = pot.touches.filter(
    (touch) => !gone.some((dip) => dip.dipId === touch.dipId || dip.hit === touch.hit),
  )
  return withPot(unpicked(table), { ...rest, dips, touches, uncounted: false, coatsCounted: coats })
}
