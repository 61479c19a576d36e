import { type RoomMemory, roomMemory, type WaitSeen } from '../../engine/fired/room-memory.ts'
import { lnOverOf } from '../../engine/wait/learn.ts'
import type { PotState, Table } from '../model/state.ts'
import { lessonFor, type Seen, seenOn } from './learning.ts'

/** Touches that are looked at: a phone must answer at once. */
const LATEST = 120
/** Touches further apart are of two sittings. */
const SITTING_MS = 6 * 3_600_000

interface TouchSeen extends Seen {
  readonly pot: PotState
}

/** Touches of the room that count, oldest first. */
function touchesOf(table: Table): readonly TouchSeen[] {
  return Object.values(table.pots)
    .flatMap((pot) =>
      seenOn(table, pot).flatMap((seen) =>
        seen.observation.kind === 'look' && !pot.dropped?.includes(seen.lessonId) ? [{ ...seen, pot }] : [],
      ),
    )
    .sort((a, b) => a.at - b.at)
    .slice(-LATEST)
}

/** Which board dries faster here, by every touch whose coat was found dry, what its glaze's own lesson tells taken off. */
export function boardsOf(table: Table): RoomMemory {
  let sitting = 0
  let before = Number.NEGATIVE_INFINITY
  const waits = touchesOf(table).flatMap(({ at, observation, bucketId, pot }): WaitSeen[] => {
    if (at - before > SITTING_MS) sitting++
    before = at
    const lnOver = observation.kind === 'look' ? lnOverOf(observation, lessonFor(table, bucketId)) : null
    const { board, spot } = pot.facts.place
    return lnOver === null ? [] : [{ sitting: `${sitting}`, board, place: `${spot}`, lnOver }]
  })
  return roomMemory(waits)
}
