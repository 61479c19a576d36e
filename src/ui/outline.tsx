import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { freshId, PatternDef, type PatternName } from './pattern.tsx'

/** A point of the outside, mm from the axis and above the shelf, foot first. */
export interface Point {
  readonly rMm: number
  readonly zMm: number
}

export interface OutlineBand {
  readonly pattern: PatternName
  readonly fromMm: number
  readonly toMm: number
  /** Not on yet: drawn faint, with a dashed edge. */
  readonly planned: boolean
  /** Left and right end against the widest radius, -1 to 1; left out, all of it. */
  readonly across?: readonly [number, number]
}

interface OutlineProps {
  readonly outer: readonly Point[]
  readonly footLineMm: number
  /** In the order they were, or will be, put on. */
  readonly bands: readonly OutlineBand[]
  readonly width: number
  readonly height: number
  /** The foot line is a concern: drawn in the warning colour. */
  readonly alarm?: boolean | undefined
  readonly label: string
  /** What lies on the wall besides coats; `x` of a part of the radius at a height above the shelf, `y` of that, mm. */
  readonly on?:
    | ((x: (part: number, zMm: number) => number, y: (zMm: number) => number) => ComponentChildren)
    | undefined
}

/**
 * A pot drawn to scale from its own measures, its coats as patterned bands, the foot line dashed. It stands on the floor
 * of its box and fills it as far as its shape does.
 */
export function PotOutline(props: OutlineProps) {
  const { outer, footLineMm, bands, width, height, alarm, label, on } = props
  const [id] = useState(freshId)
  const heightMm = outer.at(-1)?.zMm ?? 1
  const widestMm = Math.max(...outer.map((p) => p.rMm)) * 2
  const scale = Math.min((height - 8) / heightMm, (width - 12) / widestMm)
  const wide = widestMm * scale + 12
  const high = heightMm * scale + 8
  const x = (rMm: number) => wide / 2 + rMm * scale
  const y = (zMm: number) => high - 5 - zMm * scale
  const right = outer.map((p) => `${x(p.rMm).toFixed(1)} ${y(p.zMm).toFixed(1)}`)
  const left = [...outer].reverse().map((p) => `${x(-p.rMm).toFixed(1)} ${y(p.zMm).toFixed(1)}`)
  const path = `M${right.join(' L')} L${left.join(' L')} Z`
  const names = [...new Set(bands.map((band) => band.pattern))]
  const box = ({ fromMm, toMm, across = [-1, 1] }: OutlineBand) => ({
    x: x((across[0] * widestMm) / 2),
    y: y(toMm),
    height: Math.max(0, (toMm - fromMm) * scale),
    width: ((across[1] - across[0]) * widestMm * scale) / 2,
  })
  return (
    <svg
      class="outline"
      width={width}
      height={height}
      viewBox={`0 0 ${wide} ${high}`}
      preserveAspectRatio="xMidYMax"
      role="img"
      aria-label={label}
    >
      <defs>
        <clipPath id={`${id}c`}>
          <path d={path} />
        </clipPath>
        {names.map((name) => (
          <PatternDef key={name} id={`${id}${name}`} name={name} />
        ))}
      </defs>
      <g clip-path={`url(#${id}c)`}>
        {bands
          .filter((band) => !band.planned)
          .map((band, i) => (
            <rect key={i} {...box(band)} fill={`url(#${id}${band.pattern})`} />
          ))}
        {bands
          .filter((band) => band.planned)
          .map((band, i) => (
            <g key={i} class="coming">
              <rect {...box(band)} fill={`url(#${id}${band.pattern})`} opacity="0.5" />
              <path
                d={`M0 ${y(band.fromMm)} H${wide} M0 ${y(band.toMm)} H${wide}`}
                fill="none"
                stroke="var(--ink)"
                stroke-width="3"
                stroke-dasharray="7 5"
              />
            </g>
          ))}
        {bands.map(({ across, fromMm, toMm }, i) =>
          across ? (
            <path
              key={`edge${i}`}
              d={`M${x(((across[0] > -1 ? across[0] : across[1]) * widestMm) / 2)} ${y(fromMm)} V${y(toMm)}`}
              stroke="var(--ink)"
              stroke-width="2"
            />
          ) : null,
        )}
        {on?.((part, zMm) => x(part * (outer.find((p) => p.rMm && p.zMm >= zMm)?.rMm ?? 0)), y)}
      </g>
      <path d={path} fill="none" stroke="var(--ink)" stroke-width="3.5" stroke-linejoin="round" />
      <path
        d={`M0 ${y(footLineMm)} H${wide}`}
        stroke={alarm ? 'var(--brick)' : 'var(--ink)'}
        stroke-width="4.5"
        stroke-dasharray="10 5"
      />
    </svg>
  )
}
