import { CONE_STANDS, type ConeStand } from '../../../shared/load.ts'
import type { FiringFacts } from '../../../shared/nouns.ts'
import { coneFallsMin, type Offset, offsetOf, WITHIN_C } from '../../engine/melt/cone-watch.ts'
import { endOf } from '../firing/firing.ts'
import type { BandMs } from '../forecast/forecast.ts'
import type { LoadState } from '../model/load-state.ts'
import type { Table } from '../model/state.ts'
import { after, logOf } from './heat-log.ts'
import { bendOf, seriesOf, standsOf } from './loads.ts'

const MIN_MS = 60_000
/** From its first bend until a cone lies. A supplier of cones says 15 to 25 min; from memory. */
const BENDS_MS = { least: 15 * MIN_MS, most: 25 * MIN_MS }
/** A cone that stands when it is due is looked at again so soon: from its first bend it lies in no less than {@link BENDS_MS}. Our choice. */
const AGAIN_MS = 10 * MIN_MS

/** How much hotter this kiln is than it shows, as the person took it; undefined where nobody did. */
const takenOffset = (table: Table, kilnId: string): Offset | undefined => {
  const taken = table.offsets?.[kilnId]
  return taken && { mean: taken.offsetC, sd: offsetOf(Array.from({ length: taken.of }, () => 0)).sd }
}

/**
 * When the cone of a load falls, table time, ms; undefined while that cannot be told. Once it is seen to bend, that tells
 * it and no reading does.
 */
export function coneAhead(table: Table, load: LoadState): BandMs | undefined {
  const { firing, readings, offAt } = load
  const bend = bendOf(load)
  if (bend) {
    const upper = bend.at + BENDS_MS.most
    const lower = Math.max(bend.at, (bend.stoodAt ?? bend.at - BENDS_MS.most) + BENDS_MS.least)
    return { lower, likely: (lower + upper) / 2, upper }
  }
  const rising = readings.filter(({ at }) => offAt === undefined || at <= offAt)
  const end = endOf(firing)
  const last = rising.at(-1)
  if (!last || !end || firing.make !== 'american') return undefined
  const falls = coneFallsMin(logOf(rising), firing.cone, end.tempC, takenOffset(table, load.kiln.kilnId))
  return falls ? after(last.at, falls) : undefined
}

/** When a cone that stood when it may have fallen is looked at again, table time, ms; undefined where it was not so seen. */
export function lookAgainAt(load: LoadState, { lower }: BandMs): number | undefined {
  const look = standsOf(load)
  return look && look.at >= lower ? look.at + AGAIN_MS : undefined
}

/**
 * When somebody is called to a cone, table time, ms: when it may have fallen; where nobody knows since when it bends, when
 * it is likely to have. Who has looked since is called a while later.
 */
export function coneCallAt(load: LoadState, { lower, likely }: BandMs): number {
  const bend = bendOf(load)
  const first = bend && bend.stoodAt === undefined ? likely : lower
  const looked = load.cones.findLast(({ cone }) => cone === load.firing.cone)
  return looked && looked.at >= first ? looked.at + (bend ? AGAIN_MS / 2 : AGAIN_MS) : first
}

export { CONE_STANDS, type ConeStand, WITHIN_C }

/** The cones of a set: the guide before the wanted one, it, and the guard after it, where the series has them. */
export function besideCones(firing: FiringFacts): readonly string[] {
  const all = seriesOf(firing)
  const at = all.indexOf(firing.cone)
  return at < 0 ? [firing.cone] : all.slice(Math.max(0, at - 1), at + 2)
}
