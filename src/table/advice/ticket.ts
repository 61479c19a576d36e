import { type BoardPot, type TileTicket, tileTicket } from '../../engine/melt/learn.ts'
import { pairsProved } from '../fired/pairs.ts'
import { meltCoats } from '../firing/glaze-flow.ts'
import { zonesAtEnd } from '../forecast/hypothetical-dip.ts'
import { profileOf } from '../forecast/shape-inputs.ts'
import { planOf, potsOnTable } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'

export type { TileTicket }

/** A pot as it will go into the kiln: what is on it, then the rest of its plan. */
function boardPot(table: Table, pot: PotState): BoardPot | undefined {
  const zones = zonesAtEnd(table, pot)
  return zones && { profile: profileOf(pot.facts), coats: meltCoats(table, zones).coats }
}

/** The flow tile that should ride along with this board's firing; null when nothing on it is untested. */
export function rideAlong(table: Table): TileTicket | null {
  const seen = new Map<string, BoardPot | undefined>()
  const pots = potsOnTable(table).flatMap((pot) => {
    const { shape, absorption } = pot.facts
    const key = JSON.stringify([shape, absorption, pot.damp?.water, planOf(table, pot), pot.dips])
    if (!seen.has(key)) seen.set(key, boardPot(table, pot))
    return seen.get(key) ?? []
  })
  return tileTicket(pots, pairsProved(table))
}
