import type { PatternName } from './pattern.tsx'
import { PatternBand } from './swatch.tsx'

interface GaugeProps {
  readonly target: number
  /** The band reaches so far to both sides. */
  readonly tolerance: number
  /** Without one there is no needle. */
  readonly reading: number | undefined
  readonly pattern: PatternName
  readonly text: (value: number) => string
  readonly less: string
  readonly more: string
}

/** The band is at least a part of the scale, and what is read never at its very end. */
const SPANS = 4
const PAST = 1.15

/** A reading as a needle over the band where it should be. */
export function Gauge({ target, tolerance, reading, pattern, text, less, more }: GaugeProps) {
  const off = reading === undefined ? 0 : reading - target
  const span = Math.max(SPANS * tolerance, Math.abs(off) * PAST)
  const at = (from: number) => `${(50 + (from / span) * 50).toFixed(2)}%`
  return (
    <div class="gauge figures" aria-hidden="true">
      <div class="gauge-line">
        <span class="gauge-band" style={{ left: at(-tolerance), right: at(-tolerance) }}>
          <PatternBand pattern={pattern} />
        </span>
        {reading === undefined ? null : (
          <span class="gauge-needle" style={{ left: at(off) }}>
            <svg viewBox="0 0 24 44" width="24" height="44" aria-hidden="true">
              <path d="M2 0 H22 L12 20 Z" fill="var(--ink)" />
              <path d="M12 10 V44" stroke="var(--ink)" stroke-width="4" />
            </svg>
          </span>
        )}
      </div>
      <div class="gauge-says">
        <span>{less}</span>
        <strong>
          {text(target - tolerance)}–{text(target + tolerance)}
        </strong>
        <span>{more}</span>
      </div>
    </div>
  )
}
