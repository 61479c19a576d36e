import { useRef, useState } from 'preact/hooks'
import { freshId } from './pattern.tsx'

/** Something that stands on a shelf: two discs about one axis, mm. */
export interface DrawnThing {
  readonly key: string
  readonly label: string
  readonly kind: 'pot' | 'tile' | 'cones'
  readonly xMm: number
  readonly yMm: number
  readonly bellyRadiusMm: number
  readonly footRadiusMm: number
  readonly onSlab: boolean
}

export interface DrawnShelf {
  readonly kind: 'round' | 'halfRound' | 'box' | 'halfBox'
  readonly side: 'whole' | 'left' | 'right'
  readonly widthMm: number
  readonly depthMm: number
}

interface LevelProps {
  readonly round: boolean
  /** The chamber's inside. */
  readonly widthMm: number
  readonly depthMm: number
  readonly shelves: readonly DrawnShelf[]
  readonly posts: readonly { readonly xMm: number; readonly yMm: number }[]
  readonly things: readonly DrawnThing[]
  /** Things too near to another, or to a post at that spot. */
  readonly tight?: readonly (readonly [string, string | Spot])[]
  readonly chosen?: string | undefined
  readonly label: string
  readonly front: string
  /** A tap on a thing, or on the bare shelf. */
  readonly onTap?: (key: string | undefined, at: Spot) => void
  readonly onDrag?: (key: string, at: Spot) => void
  /** Held for 700 ms. */
  readonly onHold?: (key: string) => void
}

interface Spot {
  readonly xMm: number
  readonly yMm: number
}

const HOLD_MS = 700
/** A finger wanders by so much in a tap, px. */
const TAP_PX = 10
const POST_RADIUS_MM = 27
/** Of a chamber with a half shelf so much is drawn beyond the cut, mm. */
const PAST_CUT_MM = 30
/** Room round the shelves for what looks over their edge, and below for the word at the front, mm. */
const EDGE_MM = 14
const FRONT_MM = 32
/** A fingertip that comes down so near a thing's middle means it, px. */
const FINGER_PX = 24

/** Letters in a disc, mm: as large as it holds. */
const lettersMm = (radiusMm: number, text: string): number =>
  Math.max(18, Math.min(radiusMm * 0.95, (radiusMm * 2.85) / Math.max(1, text.length)))

const radiusMm = ({ bellyRadiusMm, footRadiusMm, kind }: DrawnThing): number =>
  Math.max(bellyRadiusMm, kind === 'pot' ? 0 : footRadiusMm)

function shelfPath({ kind, side, widthMm, depthMm }: DrawnShelf): string {
  const [w, d] = [widthMm / 2, depthMm / 2]
  const [from, to] = side === 'left' ? [-w, 0] : side === 'right' ? [0, w] : [-w, w]
  if (kind === 'box' || kind === 'halfBox') return `M${from} ${-d} H${to} V${d} H${from} Z`
  if (side === 'whole') return `M${-w} 0 A${w} ${w} 0 1 1 ${w} 0 A${w} ${w} 0 1 1 ${-w} 0 Z`
  return side === 'left' ? `M0 ${-w} A${w} ${w} 0 0 0 0 ${w} Z` : `M0 ${-w} A${w} ${w} 0 0 1 0 ${w} Z`
}

/** A shelf in its kiln from above, to scale, the front at the bottom. */
export function LevelDrawing(props: LevelProps) {
  const { round, widthMm, depthMm, shelves, posts, things, tight = [], chosen, label, front } = props
  const { onTap, onDrag, onHold } = props
  const [id] = useState(freshId)
  const [moved, setMoved] = useState<{ readonly key: string; readonly at: Spot }>()
  const svg = useRef<SVGSVGElement>(null)
  const held = useRef<
    | {
        readonly pointer: number
        readonly key: string | undefined
        readonly x: number
        readonly y: number
        readonly timer: ReturnType<typeof setTimeout> | undefined
        dragged: boolean
        done: boolean
      }
    | undefined
  >(undefined)
  const half = (...mm: number[]) => Math.max(...mm) / 2 + EDGE_MM
  const w = half(...shelves.map((shelf) => shelf.widthMm))
  const d = half(...shelves.map((shelf) => shelf.depthMm))
  const side = shelves.length === 1 ? shelves[0]?.side : 'whole'
  const left = side === 'right' ? -PAST_CUT_MM : -w
  const right = side === 'left' ? PAST_CUT_MM : w
  const spot = (event: PointerEvent): Spot => {
    const at = svg.current?.getScreenCTM()?.inverse()
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(at)
    return { xMm: point.x, yMm: point.y }
  }
  /** What a finger at a spot means: what it is on, else the nearest that is as good as under it. */
  const keyAt = ({ xMm, yMm }: Spot): string | undefined => {
    const fingerMm = FINGER_PX / (svg.current?.getScreenCTM()?.a ?? 1)
    const near = things
      .map((one) => {
        const far = Math.hypot(one.xMm - xMm, one.yMm - yMm)
        return { one, far, off: Math.max(0, far - Math.max(one.bellyRadiusMm, one.footRadiusMm)) }
      })
      .filter(({ far, off }) => off === 0 || far <= fingerMm)
    return near.sort((a, b) => a.off - b.off || a.far - b.far)[0]?.one.key
  }
  const end = () => {
    clearTimeout(held.current?.timer)
    held.current = undefined
    setMoved(undefined)
  }
  const begin = (event: PointerEvent) => {
    if (!onTap || !event.isPrimary || event.button !== 0) return
    const key = keyAt(spot(event))
    const timer =
      key === undefined
        ? undefined
        : setTimeout(() => {
            if (!held.current || held.current.dragged) return
            held.current.done = true
            onHold?.(key)
          }, HOLD_MS)
    held.current = {
      pointer: event.pointerId,
      key,
      x: event.clientX,
      y: event.clientY,
      timer,
      dragged: false,
      done: false,
    }
    svg.current?.setPointerCapture(event.pointerId)
  }
  const move = (event: PointerEvent) => {
    const now = held.current
    if (now?.pointer !== event.pointerId || now.done || now.key === undefined) return
    if (!now.dragged && Math.hypot(event.clientX - now.x, event.clientY - now.y) < TAP_PX) return
    now.dragged = true
    clearTimeout(now.timer)
    setMoved({ key: now.key, at: spot(event) })
  }
  const lift = (event: PointerEvent) => {
    const now = held.current
    if (now?.pointer !== event.pointerId) return
    const at = spot(event)
    end()
    if (now.done) return
    if (now.dragged && now.key !== undefined) onDrag?.(now.key, at)
    else onTap?.(now.key, at)
  }
  const at = (one: DrawnThing): Spot => (moved?.key === one.key ? moved.at : one)
  // The smaller on top: one that stands wholly in another is still seen, and meant.
  const drawn = things.toSorted((a, b) => radiusMm(b) - radiusMm(a))
  const find = (key: string) => things.find((one) => one.key === key)
  return (
    <svg
      ref={svg}
      class={onTap ? 'level level-live' : 'level'}
      viewBox={`${left} ${-d} ${right - left} ${2 * d + FRONT_MM}`}
      role="img"
      aria-label={label}
      onPointerDown={begin}
      onPointerMove={move}
      onPointerUp={lift}
      onPointerCancel={end}
    >
      <defs>
        <pattern
          id={`${id}p`}
          width="9"
          height="9"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect width="4.5" height="9" fill="var(--ink)" />
        </pattern>
        <pattern
          id={`${id}t`}
          width="12"
          height="12"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(-45)"
        >
          <rect width="6" height="12" fill="var(--brick)" />
        </pattern>
      </defs>
      {round ? (
        <ellipse rx={widthMm / 2} ry={depthMm / 2} class="level-chamber" />
      ) : (
        <rect x={-widthMm / 2} y={-depthMm / 2} width={widthMm} height={depthMm} class="level-chamber" />
      )}
      {shelves.map((shelf, i) => (
        <path key={i} d={shelfPath(shelf)} class="level-shelf" />
      ))}
      {posts.map(({ xMm, yMm }, i) => (
        <circle key={i} cx={xMm} cy={yMm} r={POST_RADIUS_MM} fill={`url(#${id}p)`} class="level-line" />
      ))}
      {drawn.map((one) => {
        const { xMm, yMm } = at(one)
        const r = radiusMm(one)
        const is = one.key === chosen ? 'level-thing is-chosen' : 'level-thing'
        return (
          <g key={one.key} class={is} transform={`translate(${xMm} ${yMm})`} data-thing={one.key}>
            {one.onSlab ? <circle r={one.footRadiusMm} class="level-slab" /> : null}
            {one.kind === 'cones' ? (
              <path d={`M0 ${-r} L${r * 0.87} ${r / 2} H${-r * 0.87} Z`} class="level-body" />
            ) : one.kind === 'tile' ? (
              <rect x={-r * 0.7} y={-r * 0.7} width={r * 1.4} height={r * 1.4} class="level-body" />
            ) : (
              <circle r={r} class="level-body" />
            )}
            <text class="level-text" font-size={lettersMm(r, one.label)} y={lettersMm(r, one.label) * 0.36}>
              {one.label}
            </text>
          </g>
        )
      })}
      {tight.map(([a, b]) => {
        const [one, other] = [find(a), typeof b === 'string' ? find(b) : undefined]
        const to = typeof b === 'string' ? other && at(other) : b
        if (!one || !to) return null
        const from = at(one)
        return (
          <path
            key={`${a} ${to.xMm} ${to.yMm}`}
            d={`M${from.xMm} ${from.yMm} L${to.xMm} ${to.yMm}`}
            stroke={`url(#${id}t)`}
            class="level-tight"
          />
        )
      })}
      <text class="level-front" x={(left + right) / 2} y={d + FRONT_MM * 0.75}>
        ▲ {front}
      </text>
    </svg>
  )
}
