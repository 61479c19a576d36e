/** What was answered of coats that two phones dipped, where answers say otherwise of one another. */

import { knew, type Placed, placed } from './knew.ts'
import type { Meeting, Written } from './seen.ts'

/** That a dip went on, or never did; in what it was said, and whether that was an answer. */
interface Word extends Placed {
  readonly on: boolean
  readonly said: Written
  readonly isAnswer: boolean
}

const ON_DIPS: ReadonlySet<string> = new Set(['both-dipped', 'put-back', 'taken-back'])

/** Whether somebody answered which of two dips of a coat went on. */
export const isAnswer = ({ event }: Pick<Written, 'event'>): boolean =>
  event.kind === 'both-dipped' || (event.kind === 'taken-back' && event.wentOn !== undefined)

/**
 * Ids of records without effect, of all that was said of dips: answers that others contradicted, none knowing of the other, until somebody
 * who knows of both says which it is. A dip of which anybody says so that it went on stays, so that no answers, of however
 * many phones, take all of a coat's dips off.
 */
export function contradicted(
  keyed: readonly { readonly stamped: Written }[],
  met: readonly Meeting[],
  stands: (stamped: Written) => boolean,
): ReadonlySet<string> {
  const dips = new Map<string, string[]>()
  for (const {
    stamped: { event, hit },
  } of keyed)
    if (event.kind === 'dipped') dips.set(hit, [...(dips.get(hit) ?? []), event.dipId])
  const words = new Map<string, Word[]>()
  for (const { stamped: said } of keyed) {
    if (!ON_DIPS.has(said.event.kind) || !stands(said)) continue
    for (const [dipId, on] of wordsIn(said, dips))
      words.set(dipId, [...(words.get(dipId) ?? []), { ...placed(said), on, said, isAnswer: isAnswer(said) }])
  }
  const asked = [...words.values()].filter((all) => all.some((word) => word.isAnswer))
  const open = asked.map((all) =>
    all.filter((word) => !all.some((later) => later !== word && knew(met, later, word))),
  )
  const idle = new Set<string>()
  for (const last of open)
    if (last.some(({ on }) => on) && last.some(({ on }) => !on))
      for (const { said } of last) idle.add(said.id)
  for (const [i, all] of asked.entries()) {
    const last = open[i]?.filter(({ said }) => !idle.has(said.id)) ?? []
    const isOff = last.length > 0 && last.every(({ on }) => !on)
    for (const { on, said } of all) if (isOff ? said.event.kind === 'put-back' : !on) idle.add(said.id)
  }
  return idle
}

/** What an event says of dips: each with whether it went on. `dips`: by the hit that logged them. */
function wordsIn(
  { event }: Written,
  dips: ReadonlyMap<string, readonly string[]>,
): readonly (readonly [string, boolean])[] {
  switch (event.kind) {
    case 'both-dipped':
      return event.dipIds.map((dipId) => [dipId, true])
    case 'put-back':
      return (dips.get(event.hit) ?? []).map((dipId) => [dipId, true])
    case 'taken-back': {
      const never = (dips.get(event.hit) ?? []).map((dipId) => [dipId, false] as const)
      return event.wentOn === undefined ? never : [...never, [event.wentOn, true]]
    }
    default:
      return []
  }
}
