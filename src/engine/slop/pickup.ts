/**
 * How much water a face draws from the slop while it is under, and the coat that leaves behind.
 *
 * Darcy through coat and body in series, as sorptivities (Hall & Hoff; Collier et al. 2007): with B mm of water shed
 * per mm of coat, the slop's own R2 = B / cakeResistance and 1/A2 = 1/S2 + 1/R2. An old dry coat drinks first; then
 * its resistance stands in the way.
 */

/** A face as the slop meets it. Lengths in mm, sorptivity in mm/sqrt s, resistance in s/mm. */
export interface Thirst {
  /** Sorptivity of the body now, its wetness taken off, squared. */
  readonly suction2: number
  /** Water the body can still take, mm. */
  readonly room: number
  /** Empty pores of the coats already on, mm of water. */
  readonly coatRoom: number
  /** Resistance of the coats already on: sum of cake resistance times thickness. */
  readonly resistance: number
}

export interface Draw {
  /** Water drawn into old coats, mm. */
  readonly intoCoats: number
  /** Water drawn into the body, mm. */
  readonly intoBody: number
}

/**
 * Water drawn in `seconds` from a slop with shed water B (`shed`, mm/mm) and cake resistance (s/mm2). Closed form of
 * the series law in two phases; checked against marching it.
 */
export function drawn(face: Thirst, shed: number, cakeResistance: number, seconds: number): Draw {
  const perR2 = cakeResistance / shed
  const { coatRoom, resistance, suction2, room } = face
  let left = seconds
  if (coatRoom > 0) {
    const fillS = coatRoom * (coatRoom * perR2 + resistance)
    if (seconds < fillS) return { intoCoats: coatRoom * Math.sqrt(seconds / fillS), intoBody: 0 }
    left = seconds - fillS
  }
  if (!(suction2 > 0)) return { intoCoats: coatRoom, intoBody: 0 }
  const a = perR2 + 1 / suction2
  const b = coatRoom * perR2 + resistance
  const intoBody = left / (b + Math.sqrt(b * b + a * left) || 1)
  return { intoCoats: coatRoom, intoBody: Math.min(room, intoBody) }
}
