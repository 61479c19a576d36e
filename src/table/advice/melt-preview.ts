import type { CoatFacts, FiringFacts, Pattern, PotFacts } from '../../../shared/nouns.ts'
import type { OutlinePoint } from '../../engine/contract.ts'
import type { FootRoom } from '../../engine/melt/melt.ts'
import { type LookAhead, lookAhead, playShares } from '../../engine/melt/melt-preview.ts'
import { footOf } from '../fired/foot.ts'
import { firingOf, flowScale, oneOver } from '../firing/firing.ts'
import { plannedDip, zonesWith } from '../forecast/hypothetical-dip.ts'
import { profileOf } from '../forecast/shape-inputs.ts'
import type { Table } from '../model/state.ts'
import { drafted, type PlanOutlook } from './what-if.ts'

/** How a pot stands after one firing. */
export interface Ending {
  readonly cone: string
  readonly room: FootRoom
  /** A dose comes from tiles of another firing. */
  readonly carried: boolean
}

/** A stack melting on its pot: at the planned firing, and one cone over where there is one. */
export interface MeltPreview {
  readonly outer: readonly OutlinePoint[]
  readonly inner: readonly OutlinePoint[]
  readonly footLineMm: number
  readonly look: LookAhead
  /** Index of the frame at the planned firing; the last one is one cone over. */
  readonly plannedAt: number
  readonly patterns: Readonly<Record<string, Pattern>>
  readonly insideGlaze: string | undefined
  /** The planned firing first. */
  readonly endings: readonly Ending[]
}

/** Flow of one cone over against the planned firing where the series has no hotter cone. Tuned to a usual step. */
const USUAL_OVER = 1.4
const MOST_OVER = 20

/**
 * A whole plan in the kiln, as `frames` frames. Undefined before the plan has been seen to its end, or while nobody
 * has said a firing and no tile was fired.
 */
export function meltPreviewOf(
  table: Table,
  facts: PotFacts,
  coats: readonly CoatFacts[],
  outlook: PlanOutlook,
  frames: number,
): MeltPreview | undefined {
  const firing = firingOf(table)
  const [draft] = drafted(table, facts, coats)
  const last = outlook.coats.at(-1)
  const bucket = last && table.buckets[last.coat.bucketId]
  if (!firing || !bucket) return undefined
  const dip = plannedDip(outlook.coats.length - 1, last.coat, bucket.gramsPerMl, last.atMs)
  const zones = zonesWith(draft, last.before, dip)
  if (!zones) return undefined
  const hotter = oneOver(firing)
  const at = (planned: FiringFacts) => footOf({ ...draft, firing: planned }, last.before, zones)
  const planned = at(firing)
  const endings = [firing, ...(hotter ? [hotter] : [])].map((one): Ending => {
    const { room, carried } = one === firing ? planned : at(one)
    return { cone: one.cone, room, carried }
  })
  const over = (hotter && flowScale(firing, hotter)?.likely) ?? USUAL_OVER
  const shares = playShares(frames, Math.min(MOST_OVER, Math.max(1, over)))
  const profile = profileOf(facts)
  // A lid's hollow is no well.
  const on = planned.input.coats.filter(({ face }) => face === 'outside' || facts.shape.form !== 'lid')
  return {
    outer: profile.outer,
    inner: profile.inner,
    footLineMm: facts.shape.footLineMm,
    look: lookAhead({ profile, coats: on, shares }),
    plannedAt: shares.lastIndexOf(1),
    patterns: Object.fromEntries(
      Object.values(table.buckets).map((b) => [b.facts.bucketId, b.facts.pattern]),
    ),
    insideGlaze: on.find((coat) => coat.face === 'inside' && coat.likelyMm > 0)?.glazeId,
    endings,
  }
}
