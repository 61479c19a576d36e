import { type RoomMemory, roomMemory, type WaitSeen } from '../../engine/fired/room-memory.ts'
import { lnOverOf } from '../../engine/wait/learn.ts'
import type { PotState, Table } from '../model/state.ts'
import { roomChangedAt } from '../model/taken.ts'
import { lessonFor, type Seen, seenOn } from './learning.ts'

/** Touches that are looked at: a phone must answer at once. */
const LATEST = 120
/** Touches further apart are of two sittings. */
const SITTING_MS = 6 * 3_600_000

interface TouchSeen extends Seen {
  readonly pot: PotState
}

/** Touches of the room as it is that count, oldest first: their coats have waited in no other. */
function touchesOf(table: Table): readonly TouchSeen[] {
  const changedAt = roomChangedAt(table) ?? Number.NEGATIVE_INFINITY
  const counts = (pot: PotState, { observation, lessonId }: Seen): boolean =>
    observation.kind === 'look' &&
    !pot.dropped?.includes(lessonId) &&
    pot.dips.some(({ dipId, outAt }) => dipId === lessonId && outAt >= changedAt)
  return Object.values(table.pots)
    .flatMap((pot) => seenOn(table, pot).flatMap((seen) => (counts(pot, seen) ? [{ ...seen, pot }] : [])))
    .sort((a, b) => a.at - b.at)
    .slice(-LATEST)
}

/**
 * Which board dries faster here, by every touch whose coat was found dry, what its glaze's own lesson tells taken off;
 * since the room changed last.
 */
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
