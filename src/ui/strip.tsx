import { useState } from 'preact/hooks'
import { freshId, PatternDef, type PatternName } from './pattern.tsx'

interface StripProps {
  readonly bands: readonly { readonly pattern: PatternName; readonly on: boolean }[]
  readonly width: number
}

const HIGH = 16
const GAP = 3
/** A band that is narrower can't be told from its neighbour. */
const NARROWEST = 12

/** The coats of a pot side by side: those on in their patterns, those to come as empty boxes. */
export function BandStrip({ bands, width }: StripProps) {
  const [id] = useState(freshId)
  const wide = Math.max(NARROWEST, (width - GAP * (bands.length - 1)) / Math.max(3, bands.length))
  return (
    <svg class="band-strip" width={width} height={HIGH} viewBox={`0 0 ${width} ${HIGH}`} aria-hidden="true">
      <defs>
        {[...new Set(bands.map((band) => band.pattern))].map((name) => (
          <PatternDef key={name} id={`${id}${name}`} name={name} />
        ))}
      </defs>
      {bands.map((band, i) => (
        <rect
          key={i}
          x={i * (wide + GAP) + 1.25}
          y="1.25"
          width={wide - 2.5}
          height={HIGH - 2.5}
          fill={band.on ? `url(#${id}${band.pattern})` : 'none'}
          stroke="currentColor"
          stroke-width="2.5"
        />
      ))}
    </svg>
  )
}
