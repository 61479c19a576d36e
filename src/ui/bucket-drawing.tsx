import { useState } from 'preact/hooks'
import type { Point } from './outline.tsx'
import { freshId, PatternDef, type PatternName } from './pattern.tsx'

/** A pot in the bucket, its lowest point so far above the floor, mm; below 0 it stands on the floor and looks out of it. */
export interface DippedPot {
  readonly outer: readonly Point[]
  readonly lowestMm: number
  readonly way: 'upright' | 'rimDown' | 'onItsSide'
}

interface BucketProps {
  /** Inside. */
  readonly wideMm: number
  readonly heightMm: number
  /** Of the glaze, with the pot in where there is one. */
  readonly levelMm: number
  /** The level once all is dipped: a dashed line. */
  readonly afterMm?: number | undefined
  readonly pattern: PatternName
  readonly pot?: DippedPot | undefined
  /** Box to fit into, px. */
  readonly width: number
  readonly height: number
  readonly label: string
}

const WALL_PX = 4

/** A bucket cut through, to scale: how high the glaze stands, and a pot as deep in it as its dip takes it. */
export function BucketDrawing(props: BucketProps) {
  const { wideMm, heightMm, levelMm, afterMm, pattern, pot, width, height, label } = props
  const [id] = useState(freshId)
  const potPoints = pot ? pointsOf(pot) : []
  const topMm = Math.max(heightMm, ...potPoints.map(({ zMm }) => zMm))
  const aroundMm = Math.max(wideMm, ...potPoints.map(({ xMm }) => Math.abs(xMm) * 2))
  const scale = Math.min((height - 2 * WALL_PX) / topMm, (width - 4 * WALL_PX) / aroundMm)
  const x = (mm: number) => width / 2 + mm * scale
  const y = (mm: number) => height - WALL_PX - mm * scale
  const [left, right] = [x(-wideMm / 2), x(wideMm / 2)]
  return (
    <svg
      class="bucket-drawing"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={label}
    >
      <defs>
        <PatternDef id={id} name={pattern} />
      </defs>
      <rect
        class="bucket-glaze"
        x={left}
        y={y(levelMm)}
        width={right - left}
        height={levelMm * scale}
        fill={`url(#${id})`}
      />
      <path d={`M${left} ${y(levelMm)} H${right}`} stroke="var(--ink)" stroke-width="3" />
      {pot ? (
        <path
          class="bucket-pot"
          d={`M${potPoints.map((p) => `${x(p.xMm).toFixed(1)} ${y(p.zMm).toFixed(1)}`).join(' L')} Z`}
          fill="var(--paper)"
          stroke="var(--ink)"
          stroke-width="3"
          stroke-linejoin="round"
        />
      ) : null}
      {afterMm === undefined ? null : (
        <path
          d={`M${left} ${y(afterMm)} H${right}`}
          stroke="var(--ink)"
          stroke-width="2"
          stroke-dasharray="6 5"
        />
      )}
      <path
        d={`M${left - 6} ${y(heightMm)} H${left} V${y(0)} H${right} V${y(heightMm)} H${right + 6}`}
        fill="none"
        stroke="var(--ink)"
        stroke-width={WALL_PX}
        stroke-linejoin="round"
      />
      <rect
        class="bucket-inside"
        x={left}
        y={y(heightMm)}
        width={right - left}
        height={heightMm * scale}
        fill="none"
      />
    </svg>
  )
}

/** The outline as it is held, from the bucket's axis and floor, mm. */
function pointsOf({ outer, lowestMm, way }: DippedPot): { readonly xMm: number; readonly zMm: number }[] {
  const heightMm = outer.at(-1)?.zMm ?? 0
  const widest = Math.max(...outer.map(({ rMm }) => rMm))
  const round = [
    ...outer.map(({ rMm, zMm }) => ({ rMm, zMm })),
    ...[...outer].reverse().map(({ rMm, zMm }) => ({ rMm: -rMm, zMm })),
  ]
  return round.map(({ rMm, zMm }) =>
    way === 'onItsSide'
      ? { xMm: zMm - heightMm / 2, zMm: lowestMm + widest + rMm }
      : { xMm: rMm, zMm: lowestMm + (way === 'rimDown' ? heightMm - zMm : zMm) },
  )
}
