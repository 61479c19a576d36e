import type { ZoneForecast } from '../../engine/contract.ts'
import { type FootRoom, type FootRoomInput, footRoom } from '../../engine/melt/melt.ts'
import { meltCoats } from '../firing/glaze-flow.ts'
import { profileOf } from '../forecast/shape-inputs.ts'
import type { PotState, Table } from '../model/state.ts'
import { pairsProved } from './pairs.ts'

export interface Foot {
  readonly input: FootRoomInput
  readonly room: FootRoom
  /** A dose comes from tiles of another firing. */
  readonly carried: boolean
}

/** Foot room of a pot whose zones stand like this, in the firing to come. */
export function footOf(table: Table, pot: PotState, zones: readonly ZoneForecast[]): Foot {
  const { coats, marginFactor, carried } = meltCoats(table, zones)
  const input = {
    profile: profileOf(pot.facts),
    coats,
    footLineMm: pot.facts.shape.footLineMm,
    marginFactor,
    provedPairs: pairsProved(table),
  }
  return { input, room: footRoom(input), carried }
}
