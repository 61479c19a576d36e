/** Taking back any hit of a sitting is as if it had never been, and putting it back is exact. */

import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Stamped } from '../../shared/events.ts'
import { fold, step } from '../../src/table/fold/fold.ts'
import type { Table } from '../../src/table/model/state.ts'
import { deeds, isOfKiln, KINDS, laid, loaded, Phone, RARE } from '../fixtures/any-action.ts'
import { runsOf } from '../fixtures/runs.ts'
import { seenBy, tableOf } from '../fixtures/seen-by.ts'

const patient = { timeout: 7_200_000 }

/** But for the marks that a hit was taken back, and what waits for it. */
const plain = ({ takenBack: _mark, waiting: _waiting, ...table }: Table): Partial<Table> => table
const taken = (hit: string, kind: 'taken-back' | 'put-back', after: readonly Stamped[]): Stamped => ({
  id: kind,
  hit: kind,
  at: after.at(-1)?.at ?? 0,
  writer: 'a.9',
  event: { kind, hit },
})

/** What two phones wrote apart falls into place by time, the same on both. */
const joined = (...of: readonly (readonly Stamped[])[]): readonly Stamped[] =>
  [...new Set(of.flat())].sort((a, b) => a.at - b.at || ((a.writer ?? '') < (b.writer ?? '') ? -1 : 1))

/** Any hit of these, taken back and put back, at once and after a reload. */
function exact(events: readonly Stamped[], hit: string, phone: string): void {
  const seen = seenBy(events, phone)
  const before = fold(seen)
  const back = [taken(hit, 'taken-back', events)]
  const without = step(before, seen, back)
  const never = events.filter((event) => event.hit !== hit)
  expect(plain(without)).toEqual(plain(tableOf(never, phone)))
  const put = [taken(hit, 'put-back', events)]
  expect(step(without, [...seen, ...back], put)).toEqual(before)
  expect(tableOf(JSON.parse(JSON.stringify([...events, ...back, ...put])), phone)).toEqual(before)
}

/** Hits that took nothing back and were not taken back. */
function ordinary(events: readonly Stamped[]): readonly string[] {
  const asking = new Set(events.flatMap(({ event, hit }) => ('hit' in event ? [event.hit, hit] : [])))
  return [...new Set(events.map(({ hit }) => hit))].filter((hit) => !asking.has(hit))
}

/** Sittings of two phones from a start on; the kinds of action that were done. */
function sittings(start: readonly Stamped[], atKiln: boolean): ReadonlySet<string> {
  const done = new Set<string>()
  fc.assert(
    fc.property(
      deeds(10, atKiln ? 32 : 20, atKiln),
      deeds(10, 16, atKiln),
      fc.nat(),
      (first, apart, drawn) => {
        const one = new Phone('a', start)
        for (const deed of first) one.do(deed)
        const two = new Phone('b', one.events)
        two.nowMs = one.nowMs
        for (const [i, deed] of apart.entries()) (i % 2 ? two : one).do(deed)
        const together = joined(one.events, two.events)
        for (const phone of [one, two]) for (const kind of phone.done) done.add(kind)
        for (const events of [together, one.events]) {
          const hits = ordinary(seenBy(events, 'a'))
          exact(events, hits[drawn % hits.length] ?? '', 'a')
        }
        expect(tableOf(one.events, 'a')).toEqual(one.table)
      },
    ),
    { numRuns: runsOf(atKiln ? 100 : 60, 0.2) },
  )
  return done
}

test('any hit of any sitting of two pairs of hands and two phones', patient, () => {
  const done = sittings(laid(), false)
  const never = KINDS.filter((kind) => !isOfKiln(kind) && !done.has(kind) && !RARE.includes(kind))
  expect(never).toEqual([])
})

test('any hit at the kiln, of two phones that load the same pots', patient, () => {
  const done = sittings(loaded(), true)
  // A place in dispute comes of two phones joined, which no deed here follows.
  expect(KINDS.filter((kind) => isOfKiln(kind) && !done.has(kind) && kind !== 'settle-place')).toEqual([])
})
