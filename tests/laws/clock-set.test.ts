/**
 * Whatever is done at the table, at the kiln and before the open lid: where the phone's clock is set in between, and the
 * app sees it, every moment, card and answer is as on a phone whose clock was left alone.
 */
import '../../src/table/forecast/walls.ts'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { loadCalls } from '../../src/table/load/calls.ts'
import { coneAhead } from '../../src/table/load/fire.ts'
import { loadsOf, stageOf } from '../../src/table/load/loads.ts'
import type { Table } from '../../src/table/model/state.ts'
import { type Deed, deeds, laid, loaded, Phone } from '../fixtures/any-action.ts'
import { runsOf } from '../fixtures/runs.ts'

const HOUR_MS = 3_600_000
const JUMPS = [HOUR_MS, -HOUR_MS, 48 * HOUR_MS, -48 * HOUR_MS, 300_000, -300_000]

/** But for how far the clock was set. */
const steady = ({ skewMs: _set, ...table }: Table): Partial<Table> => table

let sets = 0
/** The clock is set, and the app has seen it. */
function setClock(phone: Phone, byMs: number): void {
  phone.nowMs += byMs
  phone.act({ do: 'clock-moved', byMs }, 0, `set.${sets++}`)
}

test.each([
  ['at the bench', false],
  ['at the kiln and the open lid', true],
] as const)('%s', { timeout: 7_200_000 }, (_where, atKiln) => {
  const start = atKiln ? loaded() : laid()
  fc.assert(
    fc.property(
      deeds(10, 40, atKiln),
      fc.array(fc.record({ before: fc.nat(39), byMs: fc.constantFrom(...JUMPS) }), {
        minLength: 1,
        maxLength: 4,
      }),
      (done, jumps) => {
        const [left, set] = [new Phone('a', start), new Phone('a', start)]
        for (const [i, deed] of done.entries()) {
          for (const { before, byMs } of jumps) if (before === i) setClock(set, byMs)
          for (const phone of [left, set]) phone.do(deed as Deed)
          expect(steady(set.table)).toEqual(steady(left.table))
        }
        const at = (phone: Phone) => {
          const now = phone.nowMs - phone.table.skewMs
          return loadsOf(phone.table).map((load) =>
            stageOf(phone.table, load, now, coneAhead(phone.table, load)?.lower),
          )
        }
        expect(at(set)).toEqual(at(left))
        expect(loadCalls(set.table)).toEqual(loadCalls(left.table))
      },
    ),
    { numRuns: runsOf(60, 0.2) },
  )
})
