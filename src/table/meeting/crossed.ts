/** What two phones did to one coat, or to what a pot is to be dipped in, each in a way of its own. */

import type { CoatFacts } from '../../../shared/nouns.ts'
import { apart, knew } from '../fold/knew.ts'
import type { Meeting } from '../fold/seen.ts'
import type { Ask, Heard, ThingFacts } from '../model/ask.ts'
import { dipOf } from '../model/change.ts'
import { coatsOn, planOf, potsOnTable } from '../model/plan.ts'
import { isSame } from '../model/same.ts'
import type { Table } from '../model/state.ts'
import { open, type Placed, type SaidEvent } from './said.ts'

type Mended = Extract<ThingFacts, { is: 'dip' }> & Placed

/** Two that say the same minute of a dip say the same. */
const MINUTE_MS = 60_000

/** Dips that phones put right apart and otherwise: on which pot, from which bucket, how many seconds, when it was out, each by itself. */
export function mendedApart(table: Table, events: readonly SaidEvent[], met: readonly Meeting[]): Ask[] {
  const mends = new Map<string, Map<string | undefined, Mended>>()
  let skewMs = 0
  for (const [event, said] of events) {
    if (event.kind === 'clock-moved') skewMs += event.byMs
    if (event.kind !== 'dip-corrected') continue
    const { dipId, potId, dry, bucketId, holdS } = event
    const outAt = event.outAt === undefined || said.from ? event.outAt : event.outAt - skewMs
    const fields: readonly Mended['facts'][] = [
      ...(potId === undefined ? [] : [{ dipId, potId, ...(dry ? { dry } : {}) }]),
      ...(bucketId === undefined ? [] : [{ dipId, bucketId }]),
      ...(holdS === undefined ? [] : [{ dipId, holdS }]),
      ...(outAt === undefined ? [] : [{ dipId, outAt }]),
    ]
    for (const facts of fields) {
      const key = Object.keys(facts).slice(0, 2).join() + dipId
      const ways = mends.get(key) ?? new Map<string | undefined, Mended>()
      mends.set(key, ways.set(said.from, { is: 'dip', facts, ...said }))
    }
  }
  return [...mends.values()].flatMap((ways): Ask[] => {
    const said = open(met, [...ways.values()])
    const differ = said.filter((way, i) => said.findIndex(({ facts }) => saysSame(facts, way.facts)) === i)
    const [one] = differ
    const home = one && dipOf(table, one.facts.dipId)?.pot
    return differ.length > 1 && home && !home.gone ? [{ is: 'changed', ways: differ }] : []
  })
}

const saysSame = (one: Mended['facts'], other: Mended['facts']): boolean =>
  one.outAt !== undefined && other.outAt !== undefined
    ? Math.abs(one.outAt - other.outAt) < MINUTE_MS
    : isSame(one, other)

type Stacked = Placed & { readonly stackId: string; readonly isOwn: boolean }
type Planned = Placed & { readonly coats: readonly CoatFacts[] }

/** Pots that one phone gave coats of their own, and another another stack: the one that came last left the other out. */
export function restackedApart(table: Table, events: readonly SaidEvent[], met: readonly Meeting[]): Ask[] {
  const stacks = new Map<string, Stacked[]>()
  const plans = new Map<string, Map<string | undefined, Planned>>()
  for (const [event, said] of events) {
    const isOwn = !(event.handed || event.anew)
    if (event.kind === 'pot-set') {
      const { potId, stackId } = event.pot
      stacks.set(potId, [...(stacks.get(potId) ?? []), { ...said, stackId, isOwn }])
    } else if (event.kind === 'plan-changed' && isOwn) {
      const { potId, coats } = event
      plans.set(potId, (plans.get(potId) ?? new Map()).set(said.from, { ...said, coats }))
    }
  }
  return [...plans].flatMap(([potId, ways]): Ask[] => {
    const [plan, ...others] = open(met, [...ways.values()])
    // Two plans are asked about as they are.
    if (!plan || others.length > 0 || table.pots[potId]?.gone !== false) return []
    const words = stacks.get(potId) ?? []
    const then = words.findLast((word) => knew(met, plan, word))?.stackId
    const stacked = open(met, words).find(
      (word) => word.isOwn && apart(met, plan, word) && word.stackId !== then && table.stacks[word.stackId],
    )
    if (!stacked) return []
    const { coats, ...planned } = plan
    const { stackId, isOwn: _own, ...put } = stacked
    return [
      {
        is: 'changed',
        ways: [
          { is: 'plan', facts: { potId, coats }, ...planned },
          { is: 'restacked', facts: { potId, stackId }, ...put },
        ],
      },
    ]
  })
}

/** Pots that one phone dipped as they were planned, while another planned them otherwise: with a glaze that is not in their plan. */
export function dippedByOld(table: Table, events: readonly SaidEvent[], met: readonly Meeting[]): Heard[] {
  const strays = potsOnTable(table).flatMap((pot) => {
    const plan = planOf(table, pot)
    const on = coatsOn(pot)
    return on.some((dip) => plan[dip.coat]?.bucketId !== dip.bucketId) ? [{ pot, plan, on }] : []
  })
  if (strays.length === 0) return []
  const dips = new Map<string, Placed>()
  const words = new Map<string, Placed[]>()
  const say = (thing: string, said: Placed) => words.set(thing, [...(words.get(thing) ?? []), said])
  for (const [event, said] of events) {
    if (event.kind === 'dipped') dips.set(event.dipId, said)
    else if (event.kind === 'pot-set') say(event.pot.potId, said)
    else if (event.kind === 'plan-changed') say(event.potId, said)
    else if (event.kind === 'stack-set') say(event.stack.stackId, said)
  }
  return strays.flatMap(({ pot: { facts }, plan, on }): Heard[] => {
    const said = [facts.potId, facts.stackId].flatMap((thing) => words.get(thing) ?? [])
    const found = on.flatMap((dip) => {
      const word = dips.get(dip.dipId)
      const other =
        word && plan[dip.coat]?.bucketId !== dip.bucketId && said.findLast((one) => apart(met, one, word))
      return other ? [other] : []
    })[0]
    if (!found) return []
    const { order, ...who } = found
    const coats = on.map(({ bucketId, cover, holdS }) => ({ bucketId, cover, holdS }))
    const { potId } = facts
    return [
      {
        ...who,
        thing: { is: 'plan', facts: { potId, coats: plan } },
        before: { is: 'plan', facts: { potId, coats } },
        key: JSON.stringify(['dipped', potId, order, on.length]),
      },
    ]
  })
}
