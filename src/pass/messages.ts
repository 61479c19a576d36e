/** Between the page and the worker that looks for codes. */

/** A picture of the camera: red, green, blue and alpha, 8 bits each. */
export interface Look {
  readonly width: number
  readonly height: number
  readonly pixels: ArrayBuffer
}

export interface Seen {
  /** What the code in it says; null where none was found. */
  readonly text: string | null
}
