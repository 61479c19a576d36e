import type { TableEvent } from '../../../shared/events.ts'
import { type Placed as Known, knew } from '../fold/knew.ts'
import type { Meeting, Written } from '../fold/seen.ts'
import type { Said } from '../model/ask.ts'

/** With its place in the journal. */
export type Placed = Said & Known

/** An event with who said it and when, and its hit. */
export type SaidEvent = readonly [TableEvent, Placed, string]

/** Each event with who said it and when. */
export function* saidIn(events: readonly Written[]): Generator<SaidEvent> {
  let skewMs = 0
  for (const { event, from, at, hit, order = 0 } of events) {
    if (event.kind === 'clock-moved') skewMs += event.byMs
    yield [event, from === undefined ? { at: at - skewMs, order } : { from, at, order }, hit]
  }
}

/** What was said last, and by nobody since who knew of it. */
export const open = <T extends Placed>(met: readonly Meeting[], ways: readonly T[]): readonly T[] =>
  ways.filter((way) => !ways.some((later) => later !== way && knew(met, later, way)))
