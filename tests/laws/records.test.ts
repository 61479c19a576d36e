/** Whatever well-formed records a journal holds, in whatever order: they fold, and at any moment to the same table. */

import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Stamped } from '../../shared/events.ts'
import { cardOf } from '../../src/table/card/card-now.ts'
import { fold, foldSteps, step } from '../../src/table/fold/fold.ts'
import type { Table } from '../../src/table/model/state.ts'
import { histories } from '../fixtures/any-record.ts'
import { runsOf } from '../fixtures/runs.ts'

const patient = { timeout: 7_200_000 }

/** Folded as the program does it: hit by hit. */
function played(events: readonly Stamped[], phone: string): Table {
  let table = fold([], phone)
  let from = 0
  for (let to = 1; to <= events.length; to++) {
    if (to < events.length && events[to]?.hit === events[to - 1]?.hit) continue
    table = step(table, events.slice(0, from), events.slice(from, to))
    from = to
  }
  return table
}

/** Folded a few at a time, as what another phone brings. */
function inSteps(events: readonly Stamped[], phone: string): Table {
  const steps = foldSteps(events, phone, 3)
  for (;;) {
    const { done, value } = steps.next()
    if (done) return value
  }
}

const taken = (hit: string, kind: 'taken-back' | 'put-back', after: readonly Stamped[]): Stamped => ({
  id: kind,
  hit: kind,
  at: after.at(-1)?.at ?? 0,
  writer: 'a.9',
  event: { kind, hit },
})

/** But for the mark that a hit was taken back, and for what waits for it. */
const plain = ({ takenBack: _mark, waiting: _waiting, ...table }: Table): Partial<Table> => table

test(
  'any records fold without an error, at once or hit by hit or in steps, on either phone, and show a card',
  patient,
  () => {
    fc.assert(
      fc.property(histories, fc.constantFrom('a', 'b', ''), (events, phone) => {
        const table = fold(events, phone)
        expect(played(events, phone)).toEqual(table)
        expect(inSteps(events, phone)).toEqual(table)
        cardOf(table, (events.at(-1)?.at ?? 0) - table.skewMs)
      }),
      { numRuns: runsOf(300, 1) },
    )
  },
)

test('a hit taken back is as if it had never been, and put back it is again', patient, () => {
  fc.assert(
    fc.property(histories, fc.nat(), (drawnEvents, drawn) => {
      // What takes back or puts back stands by itself: nothing takes it back.
      const events = drawnEvents.filter(({ event }) => !('hit' in event))
      const hits = [...new Set(events.map(({ hit }) => hit))]
      const hit = hits[drawn % hits.length]
      if (hit === undefined) return
      const before = fold(events, 'a')
      const back = [taken(hit, 'taken-back', events)]
      const without = step(before, events, back)
      const never = events.filter((event) => event.hit !== hit)
      expect(plain(without)).toEqual(plain(fold(never, 'a')))
      expect(step(without, [...events, ...back], [taken(hit, 'put-back', events)])).toEqual(before)
      expect(fold(JSON.parse(JSON.stringify([...events, ...back])), 'a')).toEqual(without)
    }),
    { numRuns: runsOf(300, 1) },
  )
})
