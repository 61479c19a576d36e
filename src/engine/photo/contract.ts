/** Nouns of reading an outline off a photo taken from the side. */

/** A point of a picture, px: x to the right, y down. */
export interface Point {
  readonly x: number
  readonly y: number
}

/** What was cut out of a photo, with the pot in it. */
export interface Cut {
  readonly width: number
  readonly height: number
  /** Red, green, blue and opacity of every pixel, row by row. */
  readonly data: Uint8ClampedArray
  /** Where the middle of the whole photo is, in px of the cut. */
  readonly middle: Point
  /** The longer side of the whole photo, in px of the cut. */
  readonly longest: number
}

/** What a hand tapped, in px of the cut. */
export interface Trace {
  /** Up the right side, from the foot to the rim. */
  readonly side: readonly Point[]
  readonly footLeft: Point
  readonly rimLeft: Point
  /** Whether one looks into the pot, over its rim; left out where that cannot be told. */
  readonly looksIn?: boolean
  /** How far a tap may be off: two millimetres of the screen. */
  readonly handPx: number
}

/** The one length that is known: height, rim across, or the widest. A foot's is not asked for: its shadow hides its edge. */
export const KNOWN = ['heightMm', 'rimMm', 'bellyMm'] as const
export type Known = (typeof KNOWN)[number]
