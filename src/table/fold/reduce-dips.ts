import type { TableEvent } from '../../../shared/events.ts'
import { changeDip, dipOf, unpicked, withPot } from '../model/change.ts'
import { coatFrom } from '../model/coat-from.ts'
import { isFresh } from '../model/fresh.ts'
import { nextCoat, planOf } from '../model/plan.ts'
import { movedOn, opened } from '../model/potters.ts'
import type { DipState, PotState, Table } from '../model/state.ts'
import type { Mend } from './ahead.ts'

type DipEvent = Extract<TableEvent, { kind: 'dipped' }>

/** What the clock and the hand made of a dip. */
type Dose = Pick<DipState, 'tappedAt' | 'underAt' | 'outAt' | 'holdS' | 'how' | 'unsure'>

/**
 * The table after a dip that was started, or told afterwards, as it turned out to have been. Which of the pot's coats
 * it was follows from the pot, not from what was thought at START. `skewMs` is that of the clock it was written by.
 */
export function dipped(
  table: Table,
  event: DipEvent,
  hit: string,
  at: number,
  skewMs: number,
  mends: readonly Mend[],
): Table {
  const pot = table.pots[event.potId]
  const bucket = table.buckets[event.bucketId]
  if (!pot || !bucket) return table
  const { bucketId } = event
  const dose = mends.reduce(mended, doseOf(event, at, skewMs))
  const moved = mends.some((mend) => mend.event.kind === 'dip-corrected' && mend.event.potId !== undefined)
  const other = mends.some((mend) => mend.event.kind === 'dip-corrected' && mend.event.bucketId !== undefined)
  const coat = coatFrom(table, pot, bucketId)?.coat ?? (moved ? nextCoat(pot) : event.coat)
  const usedAt = event.told ? dose.outAt : dose.tappedAt
  const dip: DipState = {
    dipId: event.dipId,
    hit,
    coat,
    bucketId,
    plannedBucketId: planOf(table, pot)[coat]?.bucketId ?? bucketId,
    cover: event.cover,
    // Another bucket has a density of its own.
    gramsPerMl: other ? bucket.gramsPerMl : event.gramsPerMl,
    ...dose,
    lowerS: event.lowerS,
    plannedHoldS: event.holdS,
    unstirred: other && !event.told ? !isFresh(table, bucketId, usedAt) : event.unstirred,
    ...(event.hands === 1 ? { hands: 1 as const } : {}),
  }
  const dipping = withPot(unpicked(table), {
    ...pot,
    ...prepared(pot, event, at),
    dips: byOut([...pot.dips, dip]),
  })
  return event.told && movedOn(table, bucketId, usedAt) ? dipping : opened(dipping, bucketId, usedAt)
}

/** A pot that was dipped before anybody took it down had its foot waxed and its dust wiped off. */
function prepared(pot: PotState, { told }: DipEvent, at: number): Partial<PotState> {
  return told ? { waxedAt: pot.waxedAt ?? at, wipedAt: pot.wipedAt ?? at } : {}
}

function doseOf(event: DipEvent, at: number, skewMs: number): Dose {
  const outAt = event.outAt - skewMs
  return {
    tappedAt: at,
    underAt: outAt - event.holdS * 1000,
    outAt,
    holdS: event.holdS,
    how: event.told ? 'told' : 'planned',
    unsure: false,
  }
}

/** The dose after one more thing was said of it. */
function mended(dose: Dose, { event, skewMs }: Mend): Dose {
  switch (event.kind) {
    case 'dose-unsure':
      return { ...dose, unsure: true }
    case 'dose-settled':
      return { ...dose, unsure: false }
    case 'count-stopped': {
      // Lifted before it was under: the count ends there.
      const outAt = event.outAt - skewMs
      return { ...dose, holdS: event.holdS, outAt, underAt: Math.min(dose.underAt, outAt), how: 'measured' }
    }
    case 'dip-corrected': {
      const how = event.by === undefined ? 'corrected' : dose.how
      const holdS = event.holdS ?? dose.holdS
      // A longer hold than planned ends later; a moment that was told moves all of the dip.
      const longer = (holdS - dose.holdS) * 1000
      const outAt = event.outAt === undefined ? dose.outAt + longer : event.outAt - skewMs
      const later = outAt - dose.outAt - longer
      const { tappedAt, underAt } = dose
      return { tappedAt: tappedAt + later, underAt: underAt + later, outAt, holdS, how, unsure: false }
    }
  }
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
  at: number,
): Table {
  return potIds.reduce((t, potId, i) => {
    const pot = t.pots[potId]
    const dipId = dipIds?.[i] ?? pot?.dips.at(-1)?.dipId
    if (!pot || dipId === undefined || dipOf(t, dipId)?.pot !== pot) return t
    return withPot(t, { ...pot, touches: [...pot.touches, { at, dry, dipId }] })
  }, table)
}

/** The table after the coats on a pot were counted, or can't be told any more (null). */
export function coatsCounted(table: Table, pot: PotState, coats: number | null): Table {
  const { coatsCounted: _before, ...rest } = pot
  if (coats === null) return withPot(unpicked(table), { ...rest, uncounted: true })
  // The eye is right: what the record has beyond that never went on.
  const since = pot.washedAt
  const dips = pot.dips.filter((dip) => dip.coat < coats || (since !== undefined && dip.outAt <= since))
  const touches = pot.touches.filter(({ dipId }) => dips.some((dip) => dip.dipId === dipId))
  return withPot(unpicked(table), { ...rest, dips, touches, uncounted: false, coatsCounted: coats })
}
