/** How hot a kiln may have been that was read now and then: between two looks it rises, and may be down again. */
import type { LoadState } from '../model/load-state.ts'

const HOUR_MS = 3_600_000
const ROOM_C = 20
/** None rises unread faster than so many times its plan, K an hour, and from cold than this. Assumptions. */
const FASTER = 2
const COLD_RISE = 200
/** What is over the room falls by no more than this part of itself an hour. Assumption. */
const FALLS_PER_H = 1
/** From rising to falling it is turned no sooner, h. Our choice. */
const TURN_H = 1
/** What is read so little lower than before does not fall yet, K. Assumption. */
const HELD_K = 10

/**
 * Whether a kiln may have come to `tempC`, degC, by `by`, table time in ms, whatever was read of it: it rises once and falls
 * once, so that its top was next to the last of its highest readings, in a gap long enough to go there and come down again, or since the last.
 */
export function mayHaveReached({ readings, firing, litAt }: LoadState, tempC: number, by: number): boolean {
  const read = readings.filter(({ at }) => at <= by)
  const last = read.at(-1)
  if (!last) return true
  const perH = FASTER * firing.riseCPerH
  const top = Math.max(...read.map((each) => each.tempC))
  if (top >= tempC || last.tempC + (perH * (by - last.at)) / HOUR_MS >= tempC) return true
  const looks = litAt === undefined ? read : [{ at: litAt, tempC: ROOM_C }, ...read]
  const highest = looks.findLastIndex((each) => each.tempC >= top - HELD_K)
  return looks.slice(1).some((next, i) => {
    const before = looks[i] ?? next
    if (i !== highest - 1 && i !== highest) return false
    const upH = (tempC - before.tempC) / (before.at === litAt ? Math.max(perH, COLD_RISE) : perH)
    const downH = Math.log((tempC - ROOM_C) / Math.max(1, next.tempC - ROOM_C)) / FALLS_PER_H
    return upH + downH + TURN_H <= (next.at - before.at) / HOUR_MS
  })
}
