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

/**
 * Lengths that tell a pot's size: one of them, or both. A foot's shadow hides its edge, and a narrow rim is too short to
 * measure the rest by.
 */
export const KNOWN = ['heightMm', 'bellyMm'] as const
export type Known = (typeof KNOWN)[number]
export type Lengths = { readonly [known in Known]?: number | undefined }
