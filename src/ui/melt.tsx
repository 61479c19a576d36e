import { useState } from 'preact/hooks'
import type { Point } from './outline.tsx'
import { freshId, PatternDef, type PatternName } from './pattern.tsx'

/** Melt on a face at one moment: points from the rim down, and how thick it lies there, mm. */
export interface Film {
  readonly points: readonly Point[]
  readonly thickMm: ArrayLike<number>
}

interface MeltProps {
  /** Outside and inside of the pot, from the foot and from the middle of the floor up to the rim. */
  readonly outer: readonly Point[]
  readonly inner: readonly Point[]
  readonly footLineMm: number
  /** Coats outside in the order they were put on, as far down as they have come. */
  readonly bands: readonly { readonly pattern: PatternName; readonly fromMm: number; readonly toMm: number }[]
  readonly outside: Film
  readonly inside: Film
  readonly insidePattern: PatternName | undefined
  readonly poolDepthMm: number
  /** How many times as thick as it is the melt is drawn. */
  readonly times: number
  readonly width: number
  /** At most: a low pot takes less. */
  readonly height: number
  readonly alarm: boolean
  readonly label: string
}

/** A face pushed off the wall by its melt: outside outwards, inside inwards. */
function pushed({ points, thickMm }: Film, times: number, sign: 1 | -1): Point[] {
  return points.map((p, i) => {
    const [a, b] = [points[i - 1] ?? p, points[i + 1] ?? p]
    const [dr, dz] = [b.rMm - a.rMm, b.zMm - a.zMm]
    const off = ((thickMm[i] ?? 0) * times * sign) / Math.max(1e-9, Math.hypot(dr, dz))
    return { rMm: Math.max(0, p.rMm - dz * off), zMm: p.zMm + dr * off }
  })
}

/**
 * A pot in the kiln, drawn as potters draw: the left half cut open with its wall in ink, the right half from outside.
 * The melt lies on it in its patterns.
 */
export function MeltPot(props: MeltProps) {
  const { outer, inner, footLineMm, bands, outside, inside, insidePattern, poolDepthMm, times } = props
  const { width, alarm, label } = props
  const [id] = useState(freshId)
  const heightMm = outer.at(-1)?.zMm ?? 1
  const widestMm = Math.max(...outer.map((p) => p.rMm)) * 2
  const scale = Math.min((props.height - 12) / heightMm, (width - 28) / widestMm)
  const height = Math.ceil(heightMm * scale) + 12
  const mid = width / 2
  const base = height - 7
  const y = (zMm: number) => base - zMm * scale
  const line = (points: readonly Point[], side: 1 | -1) =>
    points.map((p) => `${(mid + side * p.rMm * scale).toFixed(1)} ${y(p.zMm).toFixed(1)}`).join(' L')
  const film = pushed(outside, times, 1)
  const well = pushed(inside, times, -1)
  const names = [
    ...new Set([...bands.map(({ pattern }) => pattern), ...(insidePattern ? [insidePattern] : [])]),
  ]
  const wall = [...outer, ...[...inner].reverse()]
  const rim = outer.at(-1)?.rMm ?? 0
  const floorMm = inner[0]?.zMm ?? 0
  const lining = `M${line(inside.points, -1)} L${line([...well].reverse(), -1)} Z`
  const pool = inner.filter((p) => p.zMm <= floorMm + poolDepthMm * times)
  return (
    <svg
      class="melt-pot"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={label}
    >
      <defs>
        <clipPath id={`${id}c`}>
          <path d={`M${mid} ${y(heightMm)} L${line(outer.toReversed(), 1)} L${mid} ${base} Z`} />
          <path d={`M${line(outside.points, 1)} L${line(film.toReversed(), 1)} Z`} />
          <path d={`M${line(outside.points, -1)} L${line(film.toReversed(), -1)} Z`} />
        </clipPath>
        {names.map((name) => (
          <PatternDef key={name} id={`${id}${name}`} name={name} />
        ))}
      </defs>
      <g clip-path={`url(#${id}c)`}>
        {bands.map((band, i) => (
          <rect
            key={i}
            x="0"
            width={width}
            y={y(band.toMm)}
            height={Math.max(0, (band.toMm - band.fromMm) * scale + (band.fromMm <= 0 ? 7 : 0))}
            fill={`url(#${id}${band.pattern})`}
          />
        ))}
      </g>
      {insidePattern ? (
        <g fill={`url(#${id}${insidePattern})`}>
          <path d={lining} />
          {pool.length > 1 ? (
            <path d={`M${line(pool, -1)} L${mid} ${y(pool.at(-1)?.zMm ?? floorMm)} Z`} />
          ) : null}
        </g>
      ) : null}
      <path d={`M${line(wall, -1)} L${mid} ${base} Z`} fill="var(--ink)" />
      <path
        d={`M${line(film, 1)} M${line(film, -1)} M${mid + rim * scale} ${y(heightMm)} H${mid} V${base}`}
        fill="none"
        stroke="var(--ink)"
        stroke-width="2"
        stroke-linejoin="round"
      />
      <path
        d={`M2 ${y(footLineMm)} H${width - 2}`}
        fill="none"
        stroke={alarm ? 'var(--brick)' : 'var(--ink)'}
        stroke-width="2"
        stroke-dasharray="7 5"
      />
      <path d={`M0 ${base + 1.5} H${width}`} stroke="var(--ink)" stroke-width="3" />
    </svg>
  )
}
