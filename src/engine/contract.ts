/**
 * The nouns of the engine: what a pot, an air, a slop and a coat are, and what comes back.
 * Lengths in mm, times of events in minutes on one running clock (any zero), seconds for dips,
 * temperatures in degC, humidity 0 to 1, densities in g/mL, water in mm (= kg/m2 of face).
 */

/** Air around the pots. `speedMps` is the draught at the pot; `pressurePa` the station pressure. */
export interface Air {
  readonly tempC: number
  readonly rh: number
  readonly speedMps: number
  readonly pressurePa: number
  /** Loss of a witness cloth over the loss computed for it (0.1 to 10); left out, 1: nobody weighed one. */
  readonly factor?: number
}

export type Form = 'beaker' | 'bowl' | 'bottle' | 'cup' | 'jar' | 'plate' | 'cylinder' | 'lid'

/**
 * A pot's measures, diameters outside. Omitted measures follow from the form. A lid stands on its seat: `rimMm` is its
 * widest, down there, `footLineMm` the bare edge that touches the jar, and its inside the hollow below.
 */
export interface Shape {
  readonly form: Form
  readonly heightMm: number
  readonly rimMm: number
  readonly bellyMm?: number
  readonly bellyUpMm?: number
  readonly footMm?: number
  readonly wallMm: number
  readonly floorMm?: number
  /** Height of the trimmed line above the shelf: wax below it, no glaze. */
  readonly footLineMm: number
  /** A lidded jar's ledge, mm down the inside from the rim: kept bare. */
  readonly galleryMm?: number
  /** The outside as it was read off a photo, radius and height of points from foot to rim, in place of the form's. */
  readonly outsideMm?: readonly (readonly [number, number])[]
}

/** A point of an outline: radius and height above the shelf. */
export interface OutlinePoint {
  readonly rMm: number
  readonly zMm: number
}

/** Axisymmetric outline: `outer` from foot (z = 0) to rim, `inner` from the inside floor to rim. */
export interface Profile {
  readonly shape: Shape
  readonly outer: readonly OutlinePoint[]
  readonly inner: readonly OutlinePoint[]
}

/** The bisque-fired body. Absorption as mass of water per mass of dry body. */
export interface Body {
  readonly absorption: number
  readonly absorptionTest: 'soak' | 'boil'
  readonly bulkGramsPerMl: number
  readonly sorptivityMmPerSqrtS: number
  /** Sd of its logarithm; omitted, it is known. */
  readonly sorptivitySd?: number
}

/** Glaze slop as it is in the bucket at the dip. */
export interface Slop {
  readonly gramsPerMl: number
  readonly solidsGravity: number
  /** Solids volume fraction of the deposited coat (its packing). */
  readonly cakeSolids: number
  /** Resistance of the coat to water, s/mm2; belongs to the glaze, not to the density. */
  readonly cakeResistanceSPerMm2: number
  /** Calibration of the pick-up from a scratch or a weighing; 1 is uncalibrated. */
  readonly pickUpFactor: number
  /** Standard deviation of its logarithm; omitted, that of a factor nobody has measured. */
  readonly pickUpSd?: number
  /** What clings to a face that can't drink after the drip, wet g/cm2, weighed on a plate; omitted, computed. */
  readonly clingsGramsPerCm2?: number
}

/**
 * What a coat covers.
 * full: outside above the foot line, rim and inside. downTo: rim first, down to a lower edge `edgeUpMm` above
 * the shelf. upTo: foot first, from the foot line up to an upper edge. collar: rim straight in, `depthMm` deep.
 * inside: poured in and out. For downTo and collar the trapped air leaves the inside nearly bare.
 */
export type Cover =
  | { readonly kind: 'full' }
  | { readonly kind: 'downTo'; readonly edgeUpMm: number }
  | { readonly kind: 'upTo'; readonly edgeUpMm: number }
  | { readonly kind: 'collar'; readonly depthMm: number }
  | { readonly kind: 'inside' }

/** One dip (or pour), stamped at OUT, the moment the lift begins. */
export interface Dip {
  readonly kind: 'dip'
  readonly id: string
  readonly atMin: number
  readonly glazeId: string
  readonly slop: Slop
  readonly holdS: number
  readonly cover: Cover
  readonly lowerMmPerS: number
  readonly liftMmPerS: number
  /** Seconds it is held to drip; omitted, the usual. */
  readonly dripS?: number
}

/** What happens to a wall, in any order; the engine sorts by `atMin`. */
export type WallEvent =
  | Dip
  | { readonly kind: 'wipe'; readonly atMin: number; readonly waterMm: number }
  | { readonly kind: 'washOff'; readonly atMin: number }
  /** A finger found it touch-dry, wherever one reaches. */
  | { readonly kind: 'dry'; readonly atMin: number }
  | { readonly kind: 'air'; readonly atMin: number; readonly air: Air }

/** A bisque pot before its first event. `startWater` is the filled part of the pores, 0 dry to 1 full. */
export interface PotWall {
  readonly profile: Profile
  readonly body: Body
  readonly startWater: number
}

/** Moments on the clock of the events, minutes. `Infinity`: never in this air, or later than 7 days. */
export interface Band {
  readonly lower: number
  readonly likely: number
  readonly upper: number
}

export type ZoneName = 'foot' | 'skirt' | 'body' | 'collar' | 'inside'
export type Face = 'outside' | 'inside'

export interface CoatThickness {
  readonly dipId: string
  readonly glazeId: string
  readonly likelyMm: number
  /** Lower and upper estimate: one coat in twenty is thinner, one thicker. */
  readonly lowerMm: number
  readonly upperMm: number
}

/** A stretch of one face between two edges, with the coats on it. Heights above the shelf. */
export interface ZoneForecast {
  readonly name: ZoneName
  readonly face: Face
  readonly fromMm: number
  readonly toMm: number
  readonly coats: readonly CoatThickness[]
  readonly likelyMm: number
  readonly lowerMm: number
  readonly upperMm: number
  /** Filled part of this face's share of the pores, 0 to 1, right after the last event. */
  readonly filled: number
}

export interface PotForecast {
  readonly zones: readonly ZoneForecast[]
  /** No sheen, a fingertip leaves no print; of the slowest zone. */
  readonly touchDry: Band
  /** The wall has room for at least 0.6 of the water the next such coat must shed. */
  readonly thirsty: Band
  readonly kilnDry: Band
  /** Where to touch: the slowest zone that a finger reaches; of the inside its floor, or the stretch next to the rim. */
  readonly touchAt: { readonly zone: ZoneName; readonly face: Face }
}
