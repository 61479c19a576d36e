import { useRef, useState } from 'preact/hooks'
import { freshId, PatternDef, type PatternName } from './pattern.tsx'

interface RulerProps {
  /** Bare wall from the edge of the glaze down to the shelf, mm along the wall. */
  readonly roomMm: number
  /** The foot line, mm below that edge; drawn where it lies on the bare wall. */
  readonly footMm?: number | undefined
  /** What lies lowest; a wall of which no glaze is known is left blank. */
  readonly pattern: PatternName | undefined
  /** How far down most of it came; undefined while nobody has said. */
  readonly front: number | 'shelf' | undefined
  readonly drip?: number | 'shelf' | undefined
  readonly width: number
  readonly height: number
  readonly words: { readonly foot: string; readonly shelf: string; readonly label: string }
  /** A whole mm on the bare wall, 0 above it, or the shelf. Left out: it is looked at only. */
  readonly onTap?: (at: number | 'shelf') => void
}

/** Glaze above the edge, and shelf below the wall, px: as high as a fingertip. */
const TOP_PX = 40
const SHELF_PX = 52
/** Numbers stand no nearer to each other, px. */
const APART_PX = 34
const STEPS_MM = [1, 2, 5, 10, 20, 50, 100]
/** A number so near to the shelf would lie on its line, px. */
const NUMBER_PX = 10
/** Ticks nearer to each other than this are left out, px. */
const TICK_PX = 5

/** The wall between glaze and shelf, unrolled and enlarged, with its ruler: a tap says how far the melt came. */
export function RunRuler(props: RulerProps) {
  const { roomMm, footMm, pattern, front, drip, width, height, words, onTap } = props
  const [id] = useState(freshId)
  const svg = useRef<SVGSVGElement>(null)
  const perMm = (height - TOP_PX - SHELF_PX) / Math.max(1, roomMm)
  const y = (mm: number) => TOP_PX + Math.min(roomMm, mm) * perMm
  const shelfY = y(roomMm)
  const at = (to: number | 'shelf') => (to === 'shelf' ? shelfY : y(to))
  const wallPx = Math.round(width * 0.7)
  const most = Math.floor(roomMm)
  const step = STEPS_MM.find((mm) => mm * perMm >= APART_PX) ?? 100
  const fine = STEPS_MM.find((mm) => mm * perMm >= TICK_PX) ?? step
  const ticks = Array.from({ length: Math.floor(most / fine) + 1 }, (_, i) => i * fine)
  const tap = (event: MouseEvent) => {
    const box = svg.current?.getBoundingClientRect()
    if (!box || !onTap) return
    const down = ((event.clientY - box.top) / box.height) * height
    if (down >= shelfY) onTap('shelf')
    else onTap(Math.max(0, Math.min(most, Math.round((down - TOP_PX) / perMm))))
  }
  const tongue = 30
  const dripX = wallPx * 0.62
  return (
    // A pointer's way to say it: the keys beside it say the same for everybody else.
    // biome-ignore lint/a11y/useKeyWithClickEvents: see above
    <svg
      ref={svg}
      class={onTap ? 'ruler ruler-live' : 'ruler'}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={words.label}
      onClick={onTap ? tap : undefined}
    >
      <defs>
        {pattern ? <PatternDef id={`${id}p`} name={pattern} /> : null}
        <pattern
          id={`${id}s`}
          width="8"
          height="8"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect width="3" height="8" fill="var(--ink)" />
        </pattern>
      </defs>
      <g fill={pattern ? `url(#${id}p)` : 'none'} stroke="var(--ink)" stroke-width="3">
        {drip === undefined || front === 'shelf' ? null : (
          <rect
            x={dripX - tongue / 2}
            y={TOP_PX - 6}
            width={tongue}
            height={at(drip) - TOP_PX + 6}
            rx={tongue / 2}
          />
        )}
        <rect x="1.5" y="-4" width={wallPx - 3} height={(front === undefined ? TOP_PX : at(front)) + 4} />
      </g>
      <path
        d={`M1.5 0 V${shelfY} M${wallPx - 1.5} 0 V${shelfY}`}
        stroke="var(--ink)"
        stroke-width="3"
        fill="none"
      />
      {footMm !== undefined && footMm > 0.5 && footMm < roomMm ? (
        <g>
          <path
            d={`M0 ${y(footMm)} H${wallPx}`}
            stroke="var(--ink)"
            stroke-width="2.5"
            stroke-dasharray="7 5"
          />
          <text class="ruler-word" x="8" y={y(footMm) - 5}>
            {words.foot}
          </text>
        </g>
      ) : null}
      <path
        d={ticks.map((mm) => `M${wallPx} ${y(mm)} h${mm % step === 0 ? 16 : 8}`).join(' ')}
        stroke="var(--ink)"
        stroke-width="2"
      />
      {ticks
        .filter((mm) => mm % step === 0 && shelfY - y(mm) > NUMBER_PX)
        .map((mm) => (
          <text key={mm} class="ruler-number" x={wallPx + 21} y={y(mm) + 6}>
            {mm}
          </text>
        ))}
      <rect x="0" y={shelfY} width={width} height={SHELF_PX} fill={`url(#${id}s)`} opacity="0.35" />
      <path d={`M0 ${shelfY} H${width}`} stroke="var(--ink)" stroke-width="5" />
      <rect x={wallPx / 2 - 36} y={shelfY + 13} width="72" height="28" rx="8" class="ruler-plate" />
      <text class="ruler-shelf" x={wallPx / 2} y={shelfY + 34}>
        {words.shelf}
      </text>
    </svg>
  )
}
