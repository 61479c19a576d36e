import { useState } from 'preact/hooks'
import { freshId, PatternDef, type PatternName } from './pattern.tsx'

interface SwatchProps {
  readonly pattern: PatternName
  readonly letter: string
  /** Side in px. */
  readonly size: number
}

/** A bucket's mark: its pattern with its letter on a plate of paper. */
export function Swatch({ pattern, letter, size }: SwatchProps) {
  const [id] = useState(freshId)
  return (
    <svg class="swatch" width={size} height={size} viewBox="0 0 48 48" aria-hidden="true">
      <defs>
        <PatternDef id={id} name={pattern} />
      </defs>
      <rect
        x="1.5"
        y="1.5"
        width="45"
        height="45"
        rx="8"
        fill={`url(#${id})`}
        stroke="var(--ink)"
        stroke-width="3"
      />
      <circle cx="24" cy="24" r="13.5" fill="var(--paper)" stroke="var(--ink)" stroke-width="2.5" />
      <text x="24" y="31" text-anchor="middle" font-size="20" font-weight="800" fill="var(--ink)">
        {letter}
      </text>
    </svg>
  )
}

/** A band of a pattern that fills its box, for the glance from two metres. */
export function PatternBand({ pattern }: { readonly pattern: PatternName }) {
  const [id] = useState(freshId)
  return (
    <svg class="pattern-band" aria-hidden="true" width="100%" height="100%">
      <defs>
        <PatternDef id={id} name={pattern} />
      </defs>
      <rect width="100%" height="100%" fill={`url(#${id})`} />
    </svg>
  )
}
