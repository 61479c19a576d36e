/** What a run is put down to: a glaze by itself, or one glaze lying straight on another. The order matters. */

import { type CoatOnWall, coatsOn } from '../melt/coats.ts'

/** `under` is null for a glaze by itself. */
export interface Subject {
  readonly under: string | null
  readonly over: string
}

/** One name a subject, to compare and to keep by. */
export const subjectKey = ({ under, over }: Subject): string => JSON.stringify([under, over])

/** The glaze under a coat, null on the bare wall or on its own kind: of the coats before it, the last that shares its height. */
function underOf(coats: readonly CoatOnWall[], i: number): string | null {
  const coat = coats[i]!
  const below = coats
    .slice(0, i)
    .findLast((other) => other.fromMm < coat.toMm - 1e-6 && other.toMm > coat.fromMm + 1e-6)
  return below && below.glazeId !== coat.glazeId ? below.glazeId : null
}

/** The outside's coats, each with its subject. `coats` in the order they were put on, cut where what is under them changes. */
export function subjectCoats(
  coats: readonly CoatOnWall[],
): readonly { readonly coat: CoatOnWall; readonly subject: Subject }[] {
  const outside = coatsOn(coats, 'outside')
  return outside.map((coat, i) => ({ coat, subject: { under: underOf(outside, i), over: coat.glazeId } }))
}

/** Every subject of a pot's outside, each once, in the order they were put on. */
export const subjectsOn = (coats: readonly CoatOnWall[]): readonly Subject[] => [
  ...new Map(subjectCoats(coats).map(({ subject }) => [subjectKey(subject), subject])).values(),
]
