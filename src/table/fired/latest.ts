import { coatsOn } from '../model/plan.ts'
import type { PotState } from '../model/state.ts'
import type { JudgedPot } from './results.ts'

/** Results that are reckoned with: later ones say more of today's buckets, and a phone must answer at once. Our choice. */
export const LATEST_RESULTS = 160

const kinds = new WeakMap<PotState, string>()

/** Which glazes a pot has on it, in their order. */
function kindOf({ pot }: JudgedPot): string {
  let kind = kinds.get(pot)
  if (kind === undefined) {
    kind = [...new Set(coatsOn(pot).map(({ bucketId }) => bucketId))].join(' ')
    kinds.set(pot, kind)
  }
  return kind
}

/**
 * The latest of judged pots, in the order given, dealt out in turn to what is glazed alike: however many pots of one kind are
 * judged, those of another are not forgotten. The first to be judged comes first.
 */
export function latestOf(judged: readonly JudgedPot[], most = LATEST_RESULTS): readonly JudgedPot[] {
  if (judged.length <= most) return judged
  const piles = new Map<string, JudgedPot[]>()
  for (const one of judged.toReversed()) {
    const kind = kindOf(one)
    const alike = piles.get(kind)
    if (alike) alike.push(one)
    else piles.set(kind, [one])
  }
  const chosen = new Set<JudgedPot>()
  for (let turn = 0; chosen.size < most; turn++)
    for (const pile of piles.values()) {
      const one = pile[turn]
      if (one && chosen.size < most) chosen.add(one)
    }
  return judged.filter((one) => chosen.has(one))
}
