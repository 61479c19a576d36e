import { useState } from 'preact/hooks'
import type { Drawing } from '../../table/forecast/drawing.ts'
import { freshId, PatternDef } from '../../ui/pattern.tsx'

interface FilmProps {
  readonly drawing: Drawing
  /** Part of the last band that is on, from its lower end up, or from the rim down. */
  readonly grown: number
  readonly fromRim: boolean
  /** How wet the wall is, 0 to 1: inked over. */
  readonly wet: number
  /** Where the lowest glaze ends by now, mm above the shelf; undefined: where it was dipped to. */
  readonly frontMm: number | undefined
  /** It stands on a shelf of the kiln. */
  readonly onShelf: boolean
  readonly label: string
}

const SIZE = { width: 300, height: 320 }
const SHELF = 14

/** One moment of a story: the pot to scale, its coats so far, how wet, how far melted. */
export function FilmDrawing({ drawing, grown, fromRim, wet, frontMm, onShelf, label }: FilmProps) {
  const [id] = useState(freshId)
  const { outer, footLineMm, bands } = drawing
  const heightMm = outer.at(-1)?.zMm ?? 1
  const widestMm = Math.max(...outer.map(({ rMm }) => rMm)) * 2
  const scale = Math.min((SIZE.height - SHELF - 12) / heightMm, (SIZE.width - 24) / widestMm)
  const x = (rMm: number) => SIZE.width / 2 + rMm * scale
  const y = (zMm: number) => SIZE.height - SHELF - zMm * scale
  const right = outer.map(({ rMm, zMm }) => `${x(rMm).toFixed(1)} ${y(zMm).toFixed(1)}`)
  const left = outer.toReversed().map(({ rMm, zMm }) => `${x(-rMm).toFixed(1)} ${y(zMm).toFixed(1)}`)
  const path = `M${right.join(' L')} L${left.join(' L')} Z`
  const lowest = Math.min(...bands.map(({ fromMm }) => fromMm))
  const drawn = bands.map((band, i) => {
    const span = (band.toMm - band.fromMm) * (i === bands.length - 1 ? grown : 1)
    const fromMm = fromRim && i === bands.length - 1 ? band.toMm - span : band.fromMm
    const toMm = fromMm + span
    return { ...band, toMm, fromMm: band.fromMm === lowest ? Math.min(fromMm, frontMm ?? fromMm) : fromMm }
  })
  const halfWidth = widestMm / 2
  const box = ({ fromMm, toMm, across = [-1, 1] }: (typeof drawn)[number]) => ({
    x: x(across[0] * halfWidth),
    y: y(toMm),
    width: (across[1] - across[0]) * halfWidth * scale,
    height: Math.max(0, (toMm - fromMm) * scale),
  })
  return (
    <svg class="film-pot" viewBox={`0 0 ${SIZE.width} ${SIZE.height}`} role="img" aria-label={label}>
      <defs>
        <clipPath id={`${id}c`}>
          <path d={path} />
        </clipPath>
        {[...new Set(bands.map(({ pattern }) => pattern))].map((name) => (
          <PatternDef key={name} id={`${id}${name}`} name={name} />
        ))}
      </defs>
      <g clip-path={`url(#${id}c)`}>
        {drawn.map((band, i) => (
          <rect key={i} {...box(band)} fill={`url(#${id}${band.pattern})`} />
        ))}
        {wet > 0 ? (
          <g opacity={0.5 * wet}>
            {drawn.map((band, i) => (
              <rect key={i} {...box(band)} />
            ))}
          </g>
        ) : null}
      </g>
      <path d={path} fill="none" stroke="var(--ink)" stroke-width="4" stroke-linejoin="round" />
      <path
        d={`M2 ${y(footLineMm)} H${SIZE.width - 2}`}
        stroke="var(--ink)"
        stroke-width="2.5"
        stroke-dasharray="7 5"
      />
      {onShelf ? <rect x="0" y={y(0) + 2} width={SIZE.width} height={SHELF - 2} fill="var(--ink)" /> : null}
    </svg>
  )
}
