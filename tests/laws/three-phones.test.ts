/** Sittings of three phones that meet now and then, clear their tables, lay demos and take each other's plans. */

import fc from 'fast-check'
import { expect, test } from 'vitest'
import { classOf } from '../../src/table/entry/handout.ts'
import type { Action } from '../../src/table/model/action.ts'
import { potsOnTable } from '../../src/table/model/plan.ts'
import type { Table } from '../../src/table/model/state.ts'
import { actionOf, deeds } from '../fixtures/any-action.ts'
import { hall, laidOn, PhoneAtTable } from '../fixtures/phones.ts'
import { runsOf } from '../fixtures/runs.ts'
import '../../src/table/forecast/walls.ts'

const patient = { timeout: 7_200_000 }

/** Pots and dips that a phone has any word of. */
const knownTo = ({ records }: PhoneAtTable): readonly string[] =>
  records.flatMap(({ event }) =>
    event.kind === 'pot-set' ? [event.pot.potId] : event.kind === 'dipped' ? [event.dipId] : [],
  )
/** Pots on the table, each as everybody should have it. */
const asHad = ({ pots }: Table) =>
  new Map(
    Object.values(pots)
      .filter(({ gone }) => !gone)
      .map(({ facts, dips, ownPlan }) => [
        facts.potId,
        {
          facts,
          ownPlan,
          // What was dipped into a demo's bucket is the demo's.
          dips: dips
            .filter(({ bucketId }) => !bucketId.startsWith('demo'))
            .map(({ dipId, bucketId, coat, holdS }) => [dipId, bucketId, coat, Math.round(holdS * 10)]),
        },
      ]),
  )

/** What hardly any sitting draws by itself. */
const seldom = [
  'clear',
  'demo',
  'plan',
  'back',
  undefined,
  undefined,
  undefined,
  undefined,
  undefined,
] as const

const sittings = fc.tuple(
  deeds(10, 26),
  fc.array(
    fc.record({
      on: fc.nat(2),
      reads: fc.constantFrom(undefined, undefined, undefined, 0, 1, 2),
      is: fc.constantFrom(...seldom),
    }),
    { minLength: 26, maxLength: 26 },
  ),
  fc.tuple(fc.integer({ min: -600_000, max: 600_000 }), fc.integer({ min: -7_200_000, max: 7_200_000 })),
)

test(
  'a clear hides nothing that its phone had not read, and what two have is the same to both',
  patient,
  () => {
    const counted = { clears: 0, kept: 0, plans: 0 }
    fc.assert(
      fc.property(sittings, ([done, ways, offMs]) => {
        const room = hall()
        const phones = [
          laidOn(new PhoneAtTable('a', room)),
          new PhoneAtTable('b', room, offMs[0]),
          new PhoneAtTable('c', room, offMs[1]),
        ]
        const phone = (nth: number) => phones[nth] as PhoneAtTable
        phone(1).read(phone(0))
        laidOn(phone(2), 61)
        /** Pots and dips that a phone knew when it cleared its table. */
        const taken = new Map(phones.map((on) => [on, new Set<string>()]))
        const clear = (on: PhoneAtTable, action: Action) => {
          const known = knownTo(on)
          if (on.try(action)) return
          for (const id of known) taken.get(on)?.add(id)
          counted.clears++
        }
        for (const [i, deed] of done.entries()) {
          room.nowMs += deed.afterS * 1000
          const { on: nth = 0, reads, is } = ways[i] ?? {}
          const on = phone(nth)
          if (reads !== undefined && reads !== nth) on.read(phone(reads))
          if (is === 'clear') clear(on, { do: 'clear-table' })
          else if (is === 'demo') clear(on, { do: 'lay-demo' })
          else if (is === 'plan') {
            const from = phone((nth + 1) % 3)
            if (!on.try({ do: 'take-handout', handout: classOf(from.table) })) counted.plans++
          } else if (is === 'back') on.try({ do: 'take-back' })
          else {
            const action = actionOf(on.table, deed, on.now)
            if (action && action.do !== 'meet' && action.do !== 'settle') on.try(action)
          }
        }
        room.nowMs += 60_000
        for (let round = 0; round < 2; round++)
          for (const on of phones) on.read(...phones.filter((other) => other !== on))
        for (const { table } of phones)
          expect(new Set(potsOnTable(table))).toEqual(
            new Set(Object.values(table.pots).filter(({ gone }) => !gone)),
          )
        for (const on of phones) {
          const there = new Set(
            Object.values(on.table.pots).flatMap(({ dips }) => dips.map(({ dipId }) => dipId)),
          )
          for (const dipId of standingDips(on))
            expect({ dipId, there: there.has(dipId) }).toEqual({ dipId, there: true })
        }
        const had = new Map(phones.map((on) => [on, asHad(on.table)]))
        for (const on of phones)
          for (const other of phones) {
            if (on === other) continue
            for (const [potId, theirs] of had.get(other) ?? []) {
              // A demo is of the phone that laid it.
              if (potId.startsWith('demo')) continue
              const mine = had.get(on)?.get(potId)
              const known = taken.get(on)?.has(potId)
              const wholly = !(known || taken.get(other)?.has(potId) || isAnew(other, potId))
              if (!mine)
                expect({
                  on: on.name,
                  potId,
                  hidden: !known && !mayBeGone(potId, taken),
                }).toMatchObject({ hidden: false })
              else {
                if (known) counted.kept++
                const ids = mine.dips.map(([dipId]) => dipId)
                const unread = theirs.dips.filter(([dipId]) => !taken.get(on)?.has(`${dipId}`))
                expect(ids).toEqual(expect.arrayContaining(unread.map(([dipId]) => dipId)))
                if (wholly) expect(mine).toEqual(theirs)
              }
            }
          }
      }),
      { numRuns: runsOf(60, 0.2) },
    )
    expect(counted.clears).toBeGreaterThan(20)
    expect(counted.kept).toBeGreaterThan(2)
    expect(counted.plans).toBeGreaterThan(5)
  },
)

/** Dips of a phone itself since it last cleared its table, that nobody took back or called off. */
function standingDips({ name, records }: PhoneAtTable): readonly string[] {
  const off = new Set<string>()
  for (const { event } of records) {
    if (event.kind === 'taken-back') off.add(event.hit)
    if (event.kind === 'count-cancelled') off.add(event.dipId)
  }
  const own = records.filter(({ writer }) => writer.startsWith(`${name}.`))
  const since = own.findLastIndex(({ event }) => event.kind === 'table-cleared' || event.kind === 'demo-laid')
  return own
    .slice(since + 1)
    .flatMap(({ event, hit }) =>
      event.kind === 'dipped' && !off.has(hit) && !off.has(event.dipId) ? [event.dipId] : [],
    )
}

/** Whether any phone took a plan's word on a pot that stood there otherwise: it goes by that alone. */
const isAnew = ({ records }: PhoneAtTable, potId: string): boolean =>
  records.some(
    ({ event }) =>
      event.anew === true &&
      (event.kind === 'pot-set'
        ? event.pot.potId === potId
        : event.kind === 'plan-changed' && event.potId === potId),
  )

/** Whether a clear of the phone that set a pot may have taken it everywhere: ids begin with the names of their phones. */
const mayBeGone = (potId: string, taken: ReadonlyMap<PhoneAtTable, ReadonlySet<string>>): boolean =>
  [...taken].some(
    ([{ name }, known]) => known.has(potId) && (potId.startsWith(name) || potId.startsWith('handed')),
  )
