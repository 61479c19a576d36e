import { useRef, useState } from 'preact/hooks'
import { freshId, PatternDef, type PatternName } from './pattern.tsx'

interface RulerProps {
  /** Bare wall from the edge of the glaze down to the shelf, mm along the wall. */
  readonly roomMm: number
  /** The foot line, mm below that edge; drawn where it lies on the bare wall. */
  readonly footMm?: number | undefined
  /** One mark of the ruler, how many lie between two numbers at the fewest, and what stands at one. */
  readonly scale: {
    readonly markMm: number
    readonly every: readonly number[]
    number(mark: number): string
  }
  /** The last mark that a tap means; beyond it is the shelf. */
  readonly lastMark: number
  /** What lies lowest; a wall of which no glaze is known is left blank. */
  readonly pattern: PatternName | undefined
  /** How far down most of it came; undefined while nobody has said. */
  readonly front: number | 'shelf' | undefined
  readonly drip?: number | 'shelf' | undefined
  readonly width: number
  readonly height: number
  readonly words: {
    readonly foot: string
    readonly shelf: string
    /** Above the wall, where that can be meant. */
    readonly none?: string | undefined
    readonly label: string
  }
  /** A mark on the bare wall, 0 above it, or the shelf. Left out: it is looked at only. */
  readonly onTap?: ((at: number | 'shelf') => void) | undefined
}

/** Glaze above the edge, and shelf below the wall, px: as high as a fingertip. */
const TOP_PX = 40
const SHELF_PX = 52
/** Numbers stand no nearer to each other, px. */
const APART_PX = 34
/** A number so near to the shelf would lie on its line, px. */
const NUMBER_PX = 10
/** Ticks nearer to each other than this are left out, px. */
const TICK_PX = 5
/** A letter of a number, and a number's distance from the wall, px. */
const LETTER_PX = 10
const ASIDE_PX = 21

/** The wall between glaze and shelf, unrolled and enlarged, with its ruler: a tap says how far the melt came. */
export function RunRuler(props: RulerProps) {
  const { roomMm, footMm, scale, lastMark, pattern, front, drip, width, height, words, onTap } = props
  const { markMm, every } = scale
  const [id] = useState(freshId)
  const svg = useRef<SVGSVGElement>(null)
  const perMm = (height - TOP_PX - SHELF_PX) / Math.max(1, roomMm)
  const y = (mm: number) => TOP_PX + Math.min(roomMm, mm) * perMm
  const shelfY = y(roomMm)
  const at = (to: number | 'shelf') => (to === 'shelf' ? shelfY : y(to))
  const whole = Math.floor(roomMm / markMm)
  const step = every.find((marks) => marks * markMm * perMm >= APART_PX) ?? every.at(-1) ?? 1
  const fine = [1, ...every].find((marks) => marks * markMm * perMm >= TICK_PX) ?? step
  const ticks = Array.from({ length: Math.floor(whole / fine) + 1 }, (_, i) => i * fine)
  const numbers = ticks
    .filter((mark) => mark % step === 0 && shelfY - y(mark * markMm) > NUMBER_PX)
    .map((mark) => ({ mark, text: scale.number(mark) }))
  const letters = Math.max(1, ...numbers.map(({ text }) => text.length))
  const wallPx = Math.round(Math.min(width * 0.7, width - ASIDE_PX - letters * LETTER_PX))
  const tap = (event: MouseEvent) => {
    const box = svg.current?.getBoundingClientRect()
    if (!box || !onTap) return
    const down = ((event.clientY - box.top) / box.height) * height
    if (down >= shelfY) onTap('shelf')
    else onTap(Math.max(0, Math.min(lastMark, Math.round((down - TOP_PX) / perMm / markMm))))
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
        d={ticks.map((mark) => `M${wallPx} ${y(mark * markMm)} h${mark % step === 0 ? 16 : 8}`).join(' ')}
        stroke="var(--ink)"
        stroke-width="2"
      />
      {numbers.map(({ mark, text }) => (
        <text key={mark} class="ruler-number" x={wallPx + ASIDE_PX} y={y(mark * markMm) + 6}>
          {text}
        </text>
      ))}
      <rect x="0" y={shelfY} width={width} height={SHELF_PX} fill={`url(#${id}s)`} opacity="0.35" />
      <path d={`M0 ${shelfY} H${width}`} stroke="var(--ink)" stroke-width="5" />
      <Plate x={wallPx / 2} y={shelfY + 27} text={words.shelf} />
      {words.none === undefined ? null : <Plate x={wallPx / 2} y={TOP_PX / 2} text={words.none} />}
    </svg>
  )
}

interface PlateProps {
  /** Its middle, px. */
  readonly x: number
  readonly y: number
  readonly text: string
}

/** What a tap beyond an end of the wall says. */
const Plate = ({ x, y, text }: PlateProps) => (
  <>
    <rect x={x - 36} y={y - 14} width="72" height="28" rx="8" class="ruler-plate" />
    <text class="ruler-end" x={x} y={y + 6}>
      {text}
    </text>
  </>
)
