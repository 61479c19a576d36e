/** Whatever well-formed records a journal holds, in whatever order: they fold, and at any moment to the same table. */

import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Stamped } from '../../shared/events.ts'
import { cardOf } from '../../src/table/card/card-now.ts'
import { fold, foldSteps, step } from '../../src/table/fold/fold.ts'
import { seenFrom } from '../../src/table/fold/seen.ts'
import type { Table } from '../../src/table/model/state.ts'
import { histories } from '../fixtures/any-record.ts'
import { runsOf } from '../fixtures/runs.ts'
import { seenBy, tableOf } from '../fixtures/seen-by.ts'

const patient = { timeout: 7_200_000 }

/** Folded as the program does it: hit by hit. */
function played(events: readonly Stamped[]): Table {
  let table = fold([])
  let from = 0
  for (let to = 1; to <= events.length; to++) {
    if (to < events.length && events[to]?.hit === events[to - 1]?.hit) continue
    table = step(table, events.slice(0, from), events.slice(from, to))
    from = to
  }
  return table
}

/** Folded a few at a time, as what another phone brings. */
function inSteps(events: readonly Stamped[]): Table {
  const steps = foldSteps(events, 3)
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
        const seen = seenBy(events, phone)
        const table = fold(seen)
        expect(played(seen)).toEqual(table)
        expect(inSteps(seen)).toEqual(table)
        cardOf(table, (events.at(-1)?.at ?? 0) - table.skewMs)
      }),
      { numRuns: runsOf(300, 1) },
    )
  },
)

test('a hit taken back is as if it had never been, and put back it is again', patient, () => {
  let gone = 0
  fc.assert(
    fc.property(histories, fc.nat(), (drawnEvents, drawn) => {
      // What takes back or puts back stands by itself, and so does what tells phones apart: nothing takes it back.
      const events = drawnEvents.filter(({ event }) => !('hit' in event || 'phone' in event))
      const hits = [...new Set(seenBy(events, 'a').map(({ hit }) => hit))]
      const hit = hits[drawn % hits.length]
      if (hit === undefined) return
      const { events: seen, goesOn } = seenFrom(events, 'a')
      const before = fold(seen)
      const back = [taken(hit, 'taken-back', events)]
      // Where it may change what is seen of other phones, all is seen anew.
      if (!goesOn(back, before.skewMs)) return
      gone++
      const without = step(before, seen, back)
      const never = events.filter((event) => event.hit !== hit)
      expect(plain(without)).toEqual(plain(tableOf(never, 'a')))
      expect(step(without, [...seen, ...back], [taken(hit, 'put-back', events)])).toEqual(before)
      expect(fold([...seen, ...back])).toEqual(without)
    }),
    { numRuns: runsOf(300, 1) },
  )
  expect(gone).toBeGreaterThan(50)
})
