import type { TableEvent } from '../../../shared/events.ts'
import { changeDip, unpicked, withPot } from '../model/change.ts'
import { planOf } from '../model/plan.ts'
import { opened, otherView, potterOf } from '../model/potters.ts'
import type { DipState, Table } from '../model/state.ts'

type DipEvent = Extract<TableEvent, { kind: 'dipped' }>

/** The table after a dip that was started, or told afterwards. */
export function dipped(table: Table, event: DipEvent, hit: string, at: number): Table {
  const pot = table.pots[event.potId]
  if (!pot) return table
  const outAt = event.outAt - table.skewMs
  const bucket = table.buckets[event.bucketId]
  const dip: DipState = {
    dipId: event.dipId,
    hit,
    coat: event.coat,
    bucketId: event.bucketId,
    plannedBucketId: planOf(table, pot)[event.coat]?.bucketId ?? event.bucketId,
    ...(bucket?.fill ? { fillId: bucket.fill.fillId } : {}),
    cover: event.cover,
    gramsPerMl: event.gramsPerMl,
    tappedAt: at,
    underAt: outAt - event.holdS * 1000,
    outAt,
    holdS: event.holdS,
    lowerS: event.lowerS,
    plannedHoldS: event.holdS,
    how: event.told ? 'told' : 'planned',
    unstirred: event.unstirred,
    unsure: false,
    ...(event.hands === 1 ? { hands: 1 as const } : {}),
  }
  const dips = byOut([...pot.dips, dip])
  return opened(withPot(unpicked(table), { ...pot, dips }), event.bucketId, at)
}

const byOut = (dips: readonly DipState[]): DipState[] => [...dips].sort((a, b) => a.outAt - b.outAt)

/** The table after a dip was put right: its seconds, its moment, its bucket, or whose it was. */
export function corrected(table: Table, event: Extract<TableEvent, { kind: 'dip-corrected' }>): Table {
  let moved: DipState | undefined
  const mended = changeDip(table, event.dipId, (dip) => {
    const outAt = event.outAt === undefined ? dip.outAt : event.outAt - table.skewMs
    const holdS = event.holdS ?? dip.holdS
    // A longer hold than planned ends later, unless the moment of OUT was told as well.
    const out = event.outAt === undefined ? outAt + (holdS - dip.holdS) * 1000 : outAt
    const bucketId = event.bucketId ?? dip.bucketId
    const gramsPerMl = table.buckets[bucketId]?.gramsPerMl ?? dip.gramsPerMl
    const { hands: _whose, ...same } = dip
    const whose = event.by ?? dip.hands ?? 0
    const next: DipState = {
      ...same,
      holdS,
      outAt: out,
      bucketId,
      gramsPerMl,
      how: event.by === undefined ? 'corrected' : dip.how,
      unsure: false,
      ...(whose === 1 ? { hands: 1 as const } : {}),
    }
    if (event.potId === undefined) return next
    moved = next
    return undefined
  })
  if (event.by !== undefined && event.by !== potterOf(table)) {
    const dip = Object.values(mended.pots).flatMap(
      ({ dips }) => dips.find(({ dipId }) => dipId === event.dipId) ?? [],
    )[0]
    return dip ? otherView(opened(otherView(mended), dip.bucketId, dip.tappedAt)) : mended
  }
  const target = event.potId === undefined ? undefined : mended.pots[event.potId]
  if (!moved || !target) return moved ? table : mended
  return withPot(mended, { ...target, dips: byOut([...target.dips, moved]) })
}
