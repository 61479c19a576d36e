/** Nouns that are stored in the journal. Lengths mm, seconds, degC, humidity 0 to 1, g/mL, litres, times epoch ms. */

import type { LanguageCode, VoiceLanguage } from './languages.ts'

export type Form = 'beaker' | 'bowl' | 'bottle' | 'cup' | 'jar' | 'plate' | 'cylinder' | 'lid'
/** Forms to choose from; a lid comes with its jar. */
export const FORMS: readonly Form[] = ['beaker', 'bowl', 'bottle', 'cup', 'jar', 'plate', 'cylinder']

/** Fields as the engine's `Shape`; diameters are outside diameters. */
export interface ShapeFacts {
  readonly form: Form
  readonly heightMm: number
  readonly rimMm: number
  readonly bellyMm?: number
  readonly bellyUpMm?: number
  readonly footMm?: number
  readonly wallMm: number
  readonly floorMm?: number
  readonly footLineMm: number
  /** The ledge for a lid, down the inside from the rim: kept bare. */
  readonly galleryMm?: number
  /** The outside as it was read off a photo, radius and height of points from foot to rim, in place of the form's. */
  readonly outsideMm?: readonly (readonly [number, number])[]
}

/** A place on a ware board: `board` A, B, ..., `spot` the place on it, from 1. */
export interface Place {
  readonly board: string
  readonly spot: number
}

export type CoverFacts =
  | { readonly kind: 'full' }
  | { readonly kind: 'downTo'; readonly edgeUpMm: number }
  /** Down to the upper edge of the pot's own skirt. */
  | { readonly kind: 'toSkirt' }
  | { readonly kind: 'upTo'; readonly edgeUpMm: number }
  | { readonly kind: 'collar'; readonly depthMm: number }
  | { readonly kind: 'inside' }
  /** One half of a pot wider than the bucket, held sideways; the other half is a coat of its own. */
  | { readonly kind: 'side' }

export interface CoatFacts {
  readonly bucketId: string
  readonly cover: CoverFacts
  readonly holdS: number
  /** Its seconds are told for a wall that has dried so long since OUT of the coat below, min: it goes on no sooner. */
  readonly afterMin?: number
}

export interface StackFacts {
  readonly stackId: string
  readonly name: string
  readonly coats: readonly CoatFacts[]
}

/** Stacks that are handed on, and the buckets they are dipped in; of a class its pots as well. */
export interface Handout {
  readonly stacks: readonly StackFacts[]
  readonly buckets: readonly BucketFacts[]
  readonly class?: ClassPlan
}

/** Pots without a coat yet, the coats of those that have a plan of their own, and what all of them share. */
export interface ClassPlan {
  readonly board: BoardFacts
  readonly pots: readonly PotFacts[]
  readonly plans: readonly { readonly potId: string; readonly coats: readonly CoatFacts[] }[]
}

export type Pattern = 'hatch' | 'wave' | 'dots' | 'brick' | 'cross' | 'dash' | 'ring' | 'chevron'
export const PATTERNS: readonly Pattern[] = [
  'hatch',
  'wave',
  'dots',
  'brick',
  'cross',
  'dash',
  'ring',
  'chevron',
]

export type Caution = 'lead' | 'cadmium' | 'barium' | 'manganese' | 'other'

/** A bucket with the glaze in it. */
export interface BucketFacts {
  readonly bucketId: string
  readonly name: string
  /** One capital letter, unique at the table. */
  readonly letter: string
  readonly pattern: Pattern
  readonly targetGramsPerMl: number
  readonly toleranceGramsPerMl: number
  readonly solidsGravity: number
  readonly insideMm: number
  readonly litres: number
  readonly heightMm: number
  /** Own limit for this glaze's dry coat on any zone. */
  readonly limitMm: number
  /** A scratch through a 3 s coat on a dry 5 mm tile. */
  readonly pinMm?: number
  /** What clings to a plate that can't drink, dipped at the target and dripped as a pot, wet g/cm2 of both faces. */
  readonly clingsGramsPerCm2?: number
  /** Tiles of one batch, dipped for as long each, when the density had just been weighed: dry gain, g, and that density. */
  readonly dippedTiles?: readonly DippedTile[]
  readonly cautions: readonly Caution[]
}

export interface DippedTile {
  readonly gainG: number
  readonly gramsPerMl: number
}
/** More tell nothing further. */
export const MOST_DIPPED_TILES = 6

export type ConeMake = 'american' | 'seger'

/** How a glaze firing ends: the witness cone that falls, how fast it rises there, how long it is held. */
export interface FiringFacts {
  readonly cone: string
  readonly make: ConeMake
  /** Rise over the last 100 degC, degC/h. */
  readonly riseCPerH: number
  readonly holdMin: number
  /** A top temperature that was given beside the cone: asked about, never reckoned with. */
  readonly topC?: number
}

/** A reading of the kiln's thermometer: minutes from the first one, degC. */
export interface KilnReading {
  readonly atMin: number
  readonly tempC: number
}

/** A dipped stripe of an upright test tile after its firing, mm. */
export interface StripeFacts {
  /** Dry coat before the firing, by the same gauge as on the pots. */
  readonly dryMm: number
  readonly bandMm: number
  /** Mean travel of its lower edge. */
  readonly runMm: number
  readonly longestMm?: number
}

/** A fired flow tile of a glaze, or of a glaze dipped over another. */
export interface TileFacts {
  readonly tileId: string
  readonly bucketId: string
  readonly underId?: string
  readonly firing: FiringFacts
  readonly stripes: readonly StripeFacts[]
}

/** What the kiln has shown of one glaze over another; the other way round is another pair. */
export interface PairFacts {
  readonly overId: string
  readonly underId: string
  /** Firings that came out well, and firings that went wrong. */
  readonly proved: number
  readonly wrong: number
}

/** How bisque comes to the table: dry, damp to the touch, or washed under the tap and full of water. */
export type BisqueWater = 'dry' | 'damp' | 'washed'

export interface PotFacts {
  readonly potId: string
  readonly number: number
  readonly place: Place
  readonly shape: ShapeFacts
  /** Where they differ from the board's. */
  readonly absorption?: number
  readonly bisqueCone?: string
  readonly bisqueWater?: BisqueWater
  readonly stackId: string
  /** The inside is poured with the first coat's glaze before the outside is dipped. */
  readonly pourInsideFirst?: boolean
  /** It is the lid of this pot: two pieces of one number, fired together. */
  readonly lidOf?: string
  /** Name of the person whose pot it is, in a class; a lid is its jar's. */
  readonly whose?: string
}

export type Draught = 'still' | 'room' | 'window' | 'fan' | 'fanClose'
export const DRAUGHTS: readonly Draught[] = ['still', 'room', 'window', 'fan', 'fanClose']

export interface AirFacts {
  readonly tempC: number
  readonly rh: number
  readonly draught: Draught
  /** Above the sea; left out, at it. */
  readonly altitudeM?: number
  /** A damp cloth that hangs, weighed once. `at` is table time, ms. */
  readonly hung?: {
    readonly widthMm: number
    readonly heightMm: number
    readonly grams: number
    readonly at: number
  }
  /** A cloth weighed twice: what it lost in how long, and that over the loss computed then. */
  readonly cloth?: { readonly lostG: number; readonly minutes: number; readonly factor: number }
  /** Pots brought in from the cold, and when, table time ms. */
  readonly cold?: { readonly potC: number; readonly at: number }
}

/** What all pots of the board share unless a pot says otherwise. */
export interface BoardFacts {
  readonly wallMm: number
  readonly footLineMm: number
  readonly bisqueCone: string
  /** Left out, dry. */
  readonly bisqueWater?: BisqueWater
  /** Water taken by the bisque, mass of water per mass of dry body, from a cold soak. */
  readonly absorption: number
  /** How fast it drinks, mm/sqrt s, from two water dips of a tile; left out, assumed. */
  readonly sorptivityMmPerSqrtS?: number
}

export interface Settings {
  readonly units: 'metric' | 'us'
  readonly language: 'phone' | LanguageCode
  readonly theme: 'auto' | 'paper' | 'dim'
  readonly hand: 'right' | 'left'
  readonly sound: 'voice' | 'tones' | 'numerals'
  /** What the voice speaks. */
  readonly spoken: 'phone' | VoiceLanguage
  /** A noisy room: what sounds is shown as a pattern too. */
  readonly noisy: boolean
  readonly leadInS: number
  readonly lowerMmPerS: number
  readonly dripS: number
  readonly staleMin: number
  readonly wax: 'hot' | 'water'
  readonly waxFirst: boolean
  /** What READY means: the sheen has gone, the wall can drink a full coat again, or the room's own minutes are over. */
  readonly readyMeans: 'touch' | 'thirsty' | 'clock'
  /** The room's own minutes from OUT, where READY means the clock: after a first coat, after later ones, to the kiln. */
  readonly firstWaitMin: number
  readonly laterWaitMin: number
  readonly kilnWaitMin: number
  /** Limit for all coats of a zone together. */
  readonly stackLimitMm: number
  readonly collarVesselMm: number
  /** In a class: this phone shows the bench and no other screen. */
  readonly student: boolean
  /** Pairs of hands at this phone. */
  readonly potters: 1 | 2
  /** When the kiln goes on, epoch ms; null without such an hour. */
  readonly kilnOnAt: number | null
  /** Loading the kiln takes so long. */
  readonly loadMin: number
  /** The kiln is held below boiling first: pots are loaded touch-dry instead of dry right through. */
  readonly candle: boolean
}
