import type { Point } from './outline.tsx'

interface GlyphProps {
  readonly outer: readonly Point[]
  /** Box to fit into, px. */
  readonly width: number
  readonly height: number
  /** Px per mm; without it the pot fills the box. */
  readonly scale?: number
}

/** The bare outline of a pot standing on the lower edge of its box. Several of one scale can be compared. */
export function PotGlyph({ outer, width, height, scale }: GlyphProps) {
  const by = scale ?? scaleFor(outer, width, height)
  const x = (rMm: number) => (width / 2 + rMm * by).toFixed(1)
  const y = (zMm: number) => (height - 2.5 - zMm * by).toFixed(1)
  const right = outer.map((p) => `${x(p.rMm)} ${y(p.zMm)}`)
  const left = [...outer].reverse().map((p) => `${x(-p.rMm)} ${y(p.zMm)}`)
  return (
    <svg class="glyph" width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      <path
        d={`M${right.join(' L')} L${left.join(' L')} Z`}
        fill="none"
        stroke="currentColor"
        stroke-width="3"
        stroke-linejoin="round"
      />
    </svg>
  )
}

/** Px per mm at which this outline fills a box. */
export function scaleFor(outer: readonly Point[], width: number, height: number): number {
  const heightMm = outer.at(-1)?.zMm ?? 1
  const widestMm = Math.max(...outer.map((p) => p.rMm)) * 2
  return Math.min((height - 5) / heightMm, (width - 4) / widestMm)
}
