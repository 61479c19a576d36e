/** A slip that is put right, at once or after any other hits, gives the table of having done it right. */

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Stamped, TableEvent } from '../../shared/events.ts'
import { fold, step } from '../../src/table/fold/fold.ts'
import type { Action } from '../../src/table/model/action.ts'
import { densityAt } from '../../src/table/model/density.ts'
import { isFresh } from '../../src/table/model/fresh.ts'
import { coatsOn, nextCoat, planOf, strayed } from '../../src/table/model/plan.ts'
import type { DipState, PotState, Table } from '../../src/table/model/state.ts'
import { stepOf } from '../../src/table/steps/steps.ts'
import { type Deed, deeds, laid, Phone } from '../fixtures/any-action.ts'
import { runsOf } from '../fixtures/runs.ts'

const patient = { timeout: 7_200_000 }
const SLIP = 'slip'
const MIN_MS = 60_000

type Dipped = Extract<TableEvent, { kind: 'dipped' }>

/** Pots without the marks of a correction. `dry`: whether what START implied of the coat below is looked at. */
const pots = (table: Table, dry: boolean) =>
  Object.values(table.pots).map((pot) => ({
    ...pot,
    touches: dry ? pot.touches : pot.touches.filter(({ hit }) => hit !== SLIP),
    dips: pot.dips.map(({ how: _how, plannedHoldS: _planned, unsure: _asked, ...dip }) => dip),
  }))

/** But for the marks that say it was corrected. */
const unmarked = (table: Table, dry = true) => {
  const { hits: _hits, takenBack: _back, waiting: _waiting, ...rest } = table
  return { ...rest, pots: pots(table, dry) }
}

const start: readonly Stamped[] = laid()

/** After some deeds the hands start a dip; undefined where no pot can be dipped. `again`: of a coat that is on as well. */
function dipping(before: readonly Deed[], drawn: number, again = true): Phone | undefined {
  const phone = new Phone('a', start)
  for (const deed of before) phone.do(deed)
  phone.nowMs += 30_000
  if (phone.table.heldSince !== undefined) phone.act({ do: 'resume' })
  const potIds = Object.keys(phone.table.pots)
  for (const [i] of potIds.entries()) {
    const potId = potIds[(i + drawn) % potIds.length] ?? ''
    if (phone.act({ do: 'start', potId, again, unstirred: true }, 0, SLIP)) return phone
  }
  return undefined
}

interface Slip {
  /** Puts it right; undefined where there is nothing to choose. */
  readonly repair: (table: Table, dip: Dipped, drawn: number) => Action | undefined
  /** The hit as it should have been, from the table before it. */
  readonly right: (hit: readonly Stamped[], before: Table, drawn: number, now: Table) => readonly Stamped[]
}

const dipOf = (hit: readonly Stamped[]): Dipped =>
  hit.map(({ event }) => event).find((event) => event.kind === 'dipped') as Dipped
const being = (hit: readonly Stamped[], change: (dip: Dipped) => Dipped): readonly Stamped[] =>
  hit.map((stamped) =>
    stamped.event.kind === 'dipped' ? { ...stamped, event: change(stamped.event) } : stamped,
  )
const otherPot = (table: Table, dip: Dipped, drawn: number): PotState | undefined => {
  const others = Object.values(table.pots).filter((pot) => !pot.gone && pot.facts.potId !== dip.potId)
  return others[drawn % Math.max(1, others.length)]
}
const otherBucket = (table: Table, dip: Dipped, drawn: number): string | undefined => {
  const others = Object.keys(table.buckets).filter((bucketId) => bucketId !== dip.bucketId)
  return others[drawn % Math.max(1, others.length)]
}
const correction = (now: Table): Stamped['event'] & { readonly potId?: string; readonly bucketId?: string } =>
  asked.get(now) as never
/** What the repair of a table said. */
const asked = new WeakMap<Table, TableEvent>()

const SLIPS: Readonly<Record<string, Slip>> = {
  'another pot': {
    repair: (table, { dipId, ...dip }, drawn) => {
      const pot = otherPot(table, { dipId, ...dip }, drawn)
      return pot && { do: 'was-other-pot', dipId, potId: pot.facts.potId }
    },
    right: (hit, before, _drawn, now) => {
      const potId = correction(now).potId ?? ''
      const pot = before.pots[potId]
      const at = hit[0]?.at ?? 0
      const dry = pot && stepOf(before, pot, at - before.skewMs).is === 'touch'
      return being(hit, (dip) => ({ ...dip, potId }))
        .flatMap((stamped): Stamped[] => {
          if (stamped.event.kind !== 'touched') return [stamped]
          return []
        })
        .flatMap((stamped): Stamped[] =>
          stamped.event.kind === 'dipped' && dry
            ? [{ ...stamped, id: 'dry', event: { kind: 'touched', potIds: [potId], dry: true } }, stamped]
            : [stamped],
        )
    },
  },
  'another bucket': {
    repair: (table, dip, drawn) => {
      const bucketId = otherBucket(table, dip, drawn)
      return bucketId === undefined ? undefined : { do: 'was-other-bucket', dipId: dip.dipId, bucketId }
    },
    right: (hit, before, _drawn, now) => {
      const bucketId = correction(now).bucketId ?? ''
      const bucket = before.buckets[bucketId]
      return being(hit, (dip) => ({
        ...dip,
        bucketId,
        unstirred: !isFresh(before, bucketId, (hit[0]?.at ?? 0) - before.skewMs),
        gramsPerMl: bucket ? densityAt(bucket, dip.outAt - before.skewMs) : dip.gramsPerMl,
      }))
    },
  },
  'another potter': {
    repair: (_, { dipId }) => ({ do: 'was-other-hands', dipId }),
    right: (hit) => being(hit, (dip) => ({ ...dip, hands: 1 })),
  },
  'held too long': {
    repair: (_, { dipId, holdS }, drawn) => ({ do: 'held-exactly', dipId, holdS: holdS + 1 + (drawn % 4) }),
    right: (hit, _before, drawn) => {
      const by = 1 + (drawn % 4)
      return being(hit, (dip) => ({ ...dip, holdS: dip.holdS + by, outAt: dip.outAt + by * 1000 }))
    },
  },
  'cut short': {
    repair: (_, { dipId }) => ({ do: 'held-longer', dipId, byS: -1 }),
    right: (hit) => being(hit, (dip) => ({ ...dip, holdS: dip.holdS - 1, outAt: dip.outAt - 1000 })),
  },
  'hit late': {
    repair: (_, { dipId }, drawn) => ({ do: 'was-earlier', dipId, byMin: 1 + (drawn % 3) }),
    right: (hit, _before, drawn) => {
      const by = (1 + (drawn % 3)) * MIN_MS
      return being(hit, (dip) => ({ ...dip, outAt: dip.outAt - by })).map((stamped) => ({
        ...stamped,
        at: stamped.at - by,
      }))
    },
  },
}

/** Hits after the slip that say nothing of it. */
const speaksOfIt =
  (dipId: string) =>
  ({ event }: Stamped): boolean =>
    ('hit' in event && event.hit === SLIP) ||
    (event.kind === 'dip-corrected' && event.dipId === dipId) ||
    ((event.kind === 'count-stopped' || event.kind === 'count-cancelled') && event.dipId === dipId)

/** Counted as done, a pot gets one coat more: it was told as its first. */
const BEYOND_ITS_PLAN: readonly Deed[] = [{ kind: 'count-coats', a: 3, b: 10, afterS: 1, hands: 0 }]

describe.each(Object.entries(SLIPS))('%s', (_name, { repair, right }) => {
  test('is put right at once, or after anything else', patient, () => {
    let mended = 0
    fc.assert(
      fc.property(deeds(0, 10), deeds(0, 8), fc.nat(11), (first, then, drawn) => {
        const phone = dipping(first, drawn)
        if (!phone) return
        const from = phone.events.findIndex(({ hit }) => hit === SLIP)
        const [earlier, hit] = [phone.events.slice(0, from), phone.events.slice(from)]
        const dip = dipOf(hit)
        phone.nowMs += 15_000
        for (const deed of then) phone.do(deed)
        const later = phone.events.slice(from + hit.length)
        if (later.some(speaksOfIt(dip.dipId))) return
        const action = repair(phone.table, dip, drawn)
        if (!action || !phone.act(action)) return
        const said = phone.events.slice(from + hit.length + later.length)
        const [word] = said
        if (word) asked.set(phone.table, word.event)
        const before = fold(earlier)
        const wanted = [...earlier, ...right(hit, before, drawn, phone.table), ...later]
        // What START said of the coat below is worked out afterwards: air and touches since may tell it otherwise.
        const dry = later.length === 0
        expect(unmarked(phone.table, dry)).toEqual(unmarked(fold(wanted), dry))
        mended++
      }),
      { numRuns: runsOf(40, 0.05), examples: [[BEYOND_ITS_PLAN, [], 3]] },
    )
    expect(mended).toBeGreaterThan(5)
  })
})

test('a count that is called off was never started, whatever follows', patient, () => {
  let mended = 0
  fc.assert(
    fc.property(deeds(0, 10), deeds(0, 8), fc.nat(11), (first, then, drawn) => {
      const phone = dipping(first, drawn)
      if (!phone) return
      const from = phone.events.findIndex(({ hit }) => hit === SLIP)
      const { dipId } = dipOf(phone.events.slice(from))
      phone.nowMs += 1000
      if (!phone.act({ do: 'cancel-count', dipId }, 0, 'off')) return
      for (const deed of then) phone.do(deed)
      if (phone.events.some(({ event }) => 'hit' in event && event.hit === 'off')) return
      const never = phone.events.filter(({ hit }) => hit !== SLIP && hit !== 'off')
      expect(unmarked(phone.table)).toEqual(unmarked(fold(never)))
      mended++
    }),
    { numRuns: runsOf(40, 0.05) },
  )
  expect(mended).toBeGreaterThan(5)
})

test('coats that the eye does not find never went on', patient, () => {
  let mended = 0
  fc.assert(
    fc.property(deeds(0, 12), fc.nat(11), (first, drawn) => {
      const phone = dipping(first, drawn)
      if (!phone) return
      const hit = phone.events.filter((event) => event.hit === SLIP)
      const { potId, dipId } = dipOf(hit)
      const dip = phone.table.pots[potId]?.dips.find((made) => made.dipId === dipId)
      phone.nowMs += 60_000
      if (!dip || !phone.act({ do: 'count-coats', potId, coats: dip.coat })) return
      const count = phone.events.slice(-1)
      const earlier = phone.events.slice(0, phone.events.length - hit.length - 1)
      const never = fold([...earlier, ...count])
      const seen = ({ pots: all }: Table) => {
        const pot = all[potId]
        return [pot?.dips.map((made) => made.dipId), pot?.touches, pot && nextCoat(pot)]
      }
      // A second dip of the same coat is not told from the first by counting.
      if (phone.table.pots[potId]?.dips.some(({ coat }) => coat > dip.coat)) return
      expect(seen(phone.table)).toEqual(seen(never))
      mended++
    }),
    { numRuns: runsOf(40, 0.05) },
  )
  expect(mended).toBeGreaterThan(5)
})

/** A dip as both ways of writing it down have it: told afterwards, nobody timed how it went in. */
const asWritten = ({
  coat,
  bucketId,
  plannedBucketId,
  cover,
  gramsPerMl,
  outAt,
  holdS,
  hands,
}: DipState) => ({
  coat,
  bucketId,
  plannedBucketId,
  cover,
  gramsPerMl,
  outAt,
  holdS,
  hands,
})

/** Whether a later record is about this pot, whose dip the two sittings wrote down at different moments. */
const isAbout =
  (potId: string, dipId: string) =>
  ({ event }: Stamped): boolean =>
    ('potId' in event && event.potId === potId) ||
    ('potIds' in event && event.potIds.includes(potId)) ||
    (event.kind === 'pot-set' && event.pot.potId === potId) ||
    ('dipId' in event && event.dipId === dipId)

/** The foot of a dip, as the next START implies it. */
const isFoot =
  (dipId: string) =>
  ({ event }: Stamped): boolean =>
    (event.kind === 'sponged' || event.kind === 'set-down') && event.dipId === dipId

/** Kinds that change what a later record means: a telling can’t know what the bench was like before them. */
const RESETS: ReadonlySet<TableEvent['kind']> = new Set<TableEvent['kind']>([
  'clock-moved',
  'stack-set',
  'stack-gone',
  'bucket-gone',
  'bucket-set',
  'density-read',
  'filled',
  'taken-back',
  'put-back',
])

test('a dip told afterwards is the dip that START would have made', patient, () => {
  let mended = 0
  fc.assert(
    fc.property(deeds(0, 10), deeds(0, 6), fc.nat(11), (first, then, drawn) => {
      const phone = dipping(first, drawn, false)
      if (!phone) return
      const from = phone.events.findIndex(({ hit }) => hit === SLIP)
      const hit = phone.events.slice(from).filter((event) => event.hit === SLIP)
      const { dipId, potId, outAt } = dipOf(hit)
      phone.nowMs = outAt + 15_000
      for (const deed of then) phone.do(deed)
      const since = phone.events.slice(from + hit.length)
      const later = since.filter((event) => !isFoot(dipId)(event))
      if (later.some(speaksOfIt(dipId)) || later.some(isAbout(potId, dipId))) return
      if (later.some(({ event }) => RESETS.has(event.kind))) return
      const agoMin = Math.ceil((phone.nowMs - outAt) / MIN_MS)
      phone.nowMs = outAt + agoMin * MIN_MS
      const telling = new Phone('a', [...phone.events.slice(0, from), ...later])
      telling.nowMs = phone.nowMs
      if (!telling.act({ do: 'logged', potId, agoMin }, 0, 'told')) return
      const written = ({ pots: all, openBucket, others }: Table) => ({
        dips: all[potId]?.dips.map(asWritten),
        next: all[potId] && nextCoat(all[potId]),
        others: Object.values(all)
          .filter(({ facts }) => facts.potId !== potId)
          // What START implied of the foot before it is told by its own test.
          .map((pot) => ({ ...pot, dips: pot.dips.map(asWritten) })),
        open: [openBucket, others?.openBucket],
      })
      expect(written(telling.table)).toEqual(written(phone.table))
      mended++
    }),
    { numRuns: runsOf(80, 0.05) },
  )
  expect(mended).toBeGreaterThan(5)
})

test('a coat that is washed off never went on, whatever went before', patient, () => {
  let mended = 0
  fc.assert(
    fc.property(deeds(0, 12), fc.nat(11), (first, drawn) => {
      const phone = dipping(first, drawn)
      if (!phone) return
      const { potId } = dipOf(phone.events.filter(({ hit }) => hit === SLIP))
      const never = new Phone(
        'a',
        phone.events.filter(({ hit }) => hit !== SLIP),
      )
      phone.nowMs += 60_000
      never.nowMs = phone.nowMs
      for (const one of [phone, never]) if (!one.act({ do: 'wash-off', potId }, 0, 'wash')) return
      const seen = (table: Table) => {
        const pot = table.pots[potId]
        if (!pot) return undefined
        return {
          on: coatsOn(pot),
          next: nextCoat(pot),
          plan: planOf(table, pot),
          strayed: strayed(table, pot),
          // Wetter by the coat that was on it, it drinks again later; in the end it is where the other is.
          nextWeek: stepOf(table, pot, phone.nowMs - table.skewMs + 7 * 24 * 60 * MIN_MS).is,
        }
      }
      expect(seen(phone.table)).toEqual(seen(never.table))
      mended++
    }),
    { numRuns: runsOf(40, 0.05) },
  )
  expect(mended).toBeGreaterThan(5)
})

/** What says it one way and what says it the other, each as one hit. */
const SAME: Readonly<
  Record<string, (table: Table, pot: PotState, drawn: number) => readonly [Action[], Action[]]>
> = {
  'left out, or planned without': (table, pot, drawn) => {
    const { potId } = pot.facts
    const coat = nextCoat(pot) + (drawn % 2)
    const coats = planOf(table, pot).filter((_, i) => i !== coat)
    return [[{ do: 'leave-out', coats: [{ potId, coat }] }], [{ do: 'set-plan', potId, coats }]]
  },
  'poured first, or so from the start': (_table, pot) => {
    const { potId } = pot.facts
    return [[{ do: 'pour-inside', potId }], [{ do: 'set-pot', pot: { ...pot.facts, pourInsideFirst: true } }]]
  },
  'kept back and taken up again': (_table, pot) => {
    const { potId } = pot.facts
    const put = (later: boolean): Action => ({ do: 'put-off', potIds: [potId], later })
    return [[put(true), put(false)], [put(false)]]
  },
  'called away': (table) =>
    table.heldSince === undefined ? [[{ do: 'hold' }, { do: 'resume' }], []] : [[], []],
  'on a slab and off it': (_table, pot) => {
    const put = (slab: boolean): Action => ({ do: 'set-slab', potId: pot.facts.potId, slab })
    return [[put(true), put(false)], [put(false)]]
  },
  'chosen in another’s place': (_table, pot, drawn) => {
    const { potId } = pot.facts
    return [
      [
        { do: 'pick', potId: ['demo.31', 'demo.32', 'demo.34'][drawn % 3] ?? potId },
        { do: 'pick', potId },
      ],
      [{ do: 'pick', potId }],
    ]
  },
}

test.each(Object.entries(SAME))('%s: the same table', (_name, both) => {
  let mended = 0
  fc.assert(
    fc.property(deeds(0, 14), fc.nat(11), (first, drawn) => {
      const phone = new Phone('a', start)
      for (const deed of first) phone.do(deed)
      const standing = Object.values(phone.table.pots).filter(({ gone }) => !gone)
      const pot = standing[drawn % Math.max(1, standing.length)]
      if (!pot) return
      const ends = both(phone.table, pot, drawn).map((actions) => {
        const other = new Phone('a', phone.events)
        other.nowMs = phone.nowMs
        return actions.every((action, i) => other.act(action, 0, `one ${i}`)) ? other : undefined
      })
      const [one, two] = ends
      if (!one || !two || one.events.length === phone.events.length) return
      expect({ ...unmarked(one.table), pan: undefined }).toEqual({ ...unmarked(two.table), pan: undefined })
      mended++
    }),
    { numRuns: runsOf(40, 0.05) },
  )
  expect(mended).toBeGreaterThan(5)
})

test('another stack asks for what is still to come, and for nothing that is on', patient, () => {
  let mended = 0
  fc.assert(
    fc.property(deeds(0, 14), fc.nat(11), (first, drawn) => {
      const phone = new Phone('a', start)
      for (const deed of first) phone.do(deed)
      const pot = Object.values(phone.table.pots).filter(({ gone }) => !gone)[drawn % 3]
      const stackIds = Object.keys(phone.table.stacks)
      const stackId = stackIds[drawn % Math.max(1, stackIds.length)]
      if (!pot || stackId === undefined) return
      const { potId } = pot.facts
      const bare: PotState = {
        ...pot,
        ownPlan: undefined,
        begunPlan: undefined,
        facts: { ...pot.facts, stackId },
      }
      const whole = planOf(phone.table, bare)
      if (!phone.act({ do: 'restack', potId, stackId })) return
      const after = phone.table.pots[potId] as PotState
      expect(nextCoat(after)).toBe(nextCoat(pot))
      expect(planOf(phone.table, after).slice(nextCoat(pot))).toEqual(whole.slice(nextCoat(pot)))
      if (nextCoat(after) <= planOf(phone.table, after).length)
        expect(strayed(phone.table, after)).toBeUndefined()
      mended++
    }),
    { numRuns: runsOf(40, 0.05) },
  )
  expect(mended).toBeGreaterThan(5)
})

test('each hit folds as all of them do', () => {
  const phone = new Phone('a', start)
  expect(step(fold(start.slice(0, -1)), start.slice(0, -1), start.slice(-1))).toEqual(phone.table)
})
