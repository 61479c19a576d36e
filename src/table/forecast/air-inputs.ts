import type { AirFacts, Draught } from '../../../shared/nouns.ts'
import { pressureAtAltitudePa } from '../../engine/air/vapour.ts'
import type { Air } from '../../engine/contract.ts'
import { DEFAULT_AIR } from '../model/defaults.ts'
import type { AirSpell, Table } from '../model/state.ts'

/** Air speed at the pots by how it feels, m/s; assumptions bracketed by indoor-air practice. */
const SPEED_MPS: Record<Draught, number> = { still: 0.08, room: 0.15, window: 0.5, fan: 1.5, fanClose: 3 }

/** The day's air in the engine's units. */
export const airOf = (facts: AirFacts): Air => ({
  tempC: facts.tempC,
  rh: facts.rh,
  speedMps: SPEED_MPS[facts.draught],
  pressurePa: pressureAtAltitudePa(facts.altitudeM ?? 0),
  ...(facts.cloth ? { factor: facts.cloth.factor } : {}),
})

/** Pressure of the air that was noted last, Pa. */
export const pressurePa = (table: Table): number => airOf(table.air.at(-1)?.air ?? DEFAULT_AIR).pressurePa

/** The air at a moment: the last said before it, else the first said at all, else an ordinary room. */
export function airAt(spells: readonly AirSpell[], at: number): AirFacts {
  let air = spells[0]?.air ?? DEFAULT_AIR
  for (const spell of spells) if (spell.at <= at) air = spell.air
  return air
}
