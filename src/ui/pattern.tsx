/** Patterns carry the meaning, hue only supports it. One tile each, drawn in ink on the glaze's own tint. */

export type PatternName = 'hatch' | 'wave' | 'dots' | 'brick' | 'cross' | 'dash' | 'ring' | 'chevron'

const TINT: Readonly<Record<PatternName, string>> = {
  hatch: 'var(--slate)',
  wave: 'var(--blue)',
  dots: 'var(--ochre)',
  brick: 'var(--mauve)',
  cross: 'var(--moss)',
  dash: 'var(--sand)',
  ring: 'var(--rose)',
  chevron: 'var(--steel)',
}

const TILE: Readonly<
  Record<PatternName, { readonly size: number; readonly d: string; readonly fill?: boolean }>
> = {
  hatch: { size: 10, d: 'M-2 2 L2 -2 M0 10 L10 0 M8 12 L12 8' },
  wave: { size: 14, d: 'M0 7 Q3.5 2 7 7 T14 7' },
  dots: {
    size: 10,
    d: 'M2.5 2.5 m-1.6 0 a1.6 1.6 0 1 0 3.2 0 a1.6 1.6 0 1 0 -3.2 0 M7.5 7.5 m-1.6 0 a1.6 1.6 0 1 0 3.2 0 a1.6 1.6 0 1 0 -3.2 0',
    fill: true,
  },
  brick: { size: 14, d: 'M0 0.75 H14 M0 7.75 H14 M3.5 0 V7.5 M10.5 7.5 V14' },
  cross: { size: 12, d: 'M0 0 L12 12 M12 0 L0 12' },
  dash: { size: 12, d: 'M1 3 H7 M7 9 H13 M-5 9 H1' },
  ring: { size: 14, d: 'M7 7 m-4 0 a4 4 0 1 0 8 0 a4 4 0 1 0 -8 0' },
  chevron: { size: 12, d: 'M0 8 L6 3 L12 8' },
}

/** The `<pattern>` of one name, to be put into an svg's `<defs>` under an id of its own. */
export function PatternDef({ id, name }: { readonly id: string; readonly name: PatternName }) {
  const { size, d, fill } = TILE[name]
  return (
    <pattern id={id} width={size} height={size} patternUnits="userSpaceOnUse">
      <rect width={size} height={size} style={{ fill: TINT[name] }} />
      <path
        d={d}
        style={fill ? { fill: 'var(--ink)' } : { fill: 'none', stroke: 'var(--ink)', strokeWidth: 1.6 }}
      />
    </pattern>
  )
}

let lastId = 0
/** An id for svg definitions that no other drawing on the page has. */
export const freshId = (): string => `d${++lastId}`
