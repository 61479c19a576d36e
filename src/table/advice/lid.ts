import type { ShapeFacts } from '../../../shared/nouns.ts'
import { latestOf } from '../../engine/wait/pieces.ts'
import { type BandMs, forecastOf } from '../forecast/forecast.ts'
import { otherPiece } from '../model/pieces.ts'
import { nextCoat, planOf } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'

/** Common practice, no source: a ledge of some millimetres, and a lid's edge that nothing may glue to it. */
const GALLERY_MM = 6
const EDGE_MM = 4
/** A lid with its knob against its width. Common practice, no source. */
const HIGH_PER_WIDE = 0.42

/** A jar's shape with a ledge for its lid. */
export const withGallery = (jar: ShapeFacts): ShapeFacts => ({ galleryMm: GALLERY_MM, ...jar })

/** The lid that lies on half the wall of this jar's ledge. */
export function lidFor(jar: ShapeFacts): ShapeFacts {
  const rimMm = Math.max(10, Math.round(jar.rimMm - jar.wallMm))
  const heightMm = Math.max(16, Math.round(rimMm * HIGH_PER_WIDE))
  const wallMm = Math.min(jar.wallMm, Math.floor(heightMm / 4))
  return { form: 'lid', heightMm, rimMm, wallMm, floorMm: wallMm, footLineMm: EDGE_MM }
}

/**
 * When a pot and its other piece may go into the kiln, which they do together; undefined before all coats are on. `by`
 * what: dry right through, or the skin alone where the kiln dries the rest.
 */
export function kilnOf(table: Table, pot: PotState, by: 'kiln' | 'ready' = 'kiln'): BandMs | undefined {
  const other = otherPiece(table, pot.facts)
  const bands = [pot, ...(other ? [other] : [])].map((piece) =>
    nextCoat(piece) < planOf(table, piece).length ? undefined : forecastOf(table, piece)?.[by],
  )
  const known = bands.filter((band) => band !== undefined)
  return known.length < bands.length ? undefined : latestOf(known)
}
