import { useState } from 'preact/hooks'
import type { OutlineBand, Point } from './outline.tsx'
import { freshId, PatternDef } from './pattern.tsx'

interface MarkProps {
  readonly outer: readonly Point[]
  readonly bands: readonly OutlineBand[]
  /** Box to stand in, px. */
  readonly width: number
  readonly height: number
}

const STROKE = 2.5

/** A pot as small as on a tile: its outline on paper, the coats that are on it in their patterns. */
export function PotMark({ outer, bands, width, height }: MarkProps) {
  const [id] = useState(freshId)
  const heightMm = outer.at(-1)?.zMm ?? 1
  const widestMm = Math.max(...outer.map((p) => p.rMm)) * 2
  const scale = Math.min((height - STROKE) / heightMm, (width - STROKE) / widestMm)
  const x = (rMm: number) => (width / 2 + rMm * scale).toFixed(1)
  const y = (zMm: number) => (height - STROKE / 2 - zMm * scale).toFixed(1)
  const right = outer.map((p) => `${x(p.rMm)} ${y(p.zMm)}`)
  const left = [...outer].reverse().map((p) => `${x(-p.rMm)} ${y(p.zMm)}`)
  const path = `M${right.join(' L')} L${left.join(' L')} Z`
  return (
    <svg
      class="pot-mark"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      preserveAspectRatio="xMidYMax"
      aria-hidden="true"
    >
      <defs>
        <clipPath id={id}>
          <path d={path} />
        </clipPath>
        {[...new Set(bands.map((band) => band.pattern))].map((name) => (
          <PatternDef key={name} id={`${id}${name}`} name={name} />
        ))}
      </defs>
      <path d={path} fill="var(--paper)" />
      <g clip-path={`url(#${id})`}>
        {bands.map(({ pattern, fromMm, toMm, across = [-1, 1] }, i) => (
          <rect
            key={i}
            x={x((across[0] * widestMm) / 2)}
            y={y(toMm)}
            width={((across[1] - across[0]) * widestMm * scale) / 2}
            height={Math.max(0, (toMm - fromMm) * scale)}
            fill={`url(#${id}${pattern})`}
          />
        ))}
      </g>
      <path d={path} fill="none" stroke="var(--ink)" stroke-width={STROKE} stroke-linejoin="round" />
    </svg>
  )
}
