import type { Card } from '../../table/card/card.ts'
import { useApp } from '../app.ts'
import './noise.css'

/** How long a beat is seen. */
export const BEAT_SEEN_MS = 350
const LEAD_BEATS_MS = [-2000, -1000, 0]

/** What is shown in a noisy room: a beat's short stripes, OUT's standing ones, or those of a call. */
export type Noise = 'beat' | 'out' | 'call'

/** What sounds at table time `now`, as a pattern. At most two begin within a second: three flashes are too many. */
export function noiseAt(card: Card, now: number): Noise | undefined {
  if (card.kind === 'ready') return 'call'
  if (card.kind === 'out') return 'out'
  if (card.kind !== 'count') return undefined
  const { underAt, lowerS, outAt } = card.dip
  const inAt = underAt - lowerS * 1000
  const seen = (from: number): boolean => now >= from && now < from + BEAT_SEEN_MS
  if (LEAD_BEATS_MS.some((ms) => seen(inAt + ms))) return 'beat'
  const beat = underAt + 1000 * Math.floor((now - underAt) / 1000)
  const apart = beat > underAt && outAt - beat > BEAT_SEEN_MS
  return apart && seen(beat) ? 'beat' : undefined
}

/** Stripes at the screen's edge for what a drill drowns. Still where the person wants less motion. */
export function NoisePattern({ card }: { readonly card: Card }) {
  const { frameNow } = useApp()
  const noise = noiseAt(card, frameNow.value)
  return noise ? <span class={`noise noise-${noise}`} aria-hidden="true" /> : null
}
