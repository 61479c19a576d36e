import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { Point } from '../../table/entry/photo-outline.ts'
import type { Box, Picture } from '../app.ts'

/** A finger that moves leaves a point so often, px of the screen. */
const APART_PX = 26
/** The view leaves room for what is said and for the keys. */
const MOST_HIGH = 0.52

interface TraceViewProps {
  readonly picture: Picture
  /** The part of it that shows. */
  readonly part: Box
  readonly label: string
  /** Points on it, in parts of its sides; the first ones are joined. */
  readonly points: readonly Point[]
  readonly joined: number
  readonly box?: Box | undefined
  /** The outline that was found, in parts; dotted where no edge was. */
  readonly outline?: readonly (Point & { readonly sure: boolean })[] | undefined
  /** A finger at a place, in parts of the sides, just down or moved on; how wide the view is, px of the screen. */
  readonly touch?: ((at: Point, down: boolean, widePx: number) => void) | undefined
  readonly lift?: (() => void) | undefined
}

/** A part of a picture with what is traced over it. */
export function TraceView(props: TraceViewProps) {
  const { picture, part, label, points, joined, box, outline, touch, lift } = props
  const room = useRef<HTMLDivElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  const last = useRef<Point | undefined>(undefined)
  const [wide, setWide] = useState(0)
  const tall = ((part.y1 - part.y0) * picture.height) / ((part.x1 - part.x0) * picture.width)
  useLayoutEffect(() => {
    const most = room.current?.clientWidth ?? 0
    setWide(Math.floor(Math.min(most, (innerHeight * MOST_HIGH) / tall)))
  }, [tall])
  const high = Math.round(wide * tall)
  useLayoutEffect(() => {
    const on = canvas.current
    if (!on || wide === 0) return
    on.width = Math.round(wide * devicePixelRatio)
    on.height = Math.round(high * devicePixelRatio)
    picture.draw(on, part)
  }, [picture, part, wide, high])
  const moved = (event: PointerEvent, down: boolean) => {
    if (!touch || (!down && !last.current)) return
    const side = (event.currentTarget as HTMLElement).getBoundingClientRect()
    const [x, y] = [event.clientX - side.left, event.clientY - side.top]
    const from = last.current
    if (!down && from && !box && Math.hypot(x - from.x, y - from.y) < APART_PX) return
    last.current = { x, y }
    touch({ x: x / side.width, y: y / side.height }, down, side.width)
  }
  const up = () => {
    if (last.current) lift?.()
    last.current = undefined
  }
  const at = ({ x, y }: Point) => `${(x * wide).toFixed(1)} ${(y * high).toFixed(1)}`
  return (
    <div ref={room}>
      <div
        class="trace"
        role="img"
        aria-label={label}
        style={{ width: `${wide}px`, height: `${high}px` }}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId)
          moved(event, true)
        }}
        onPointerMove={(event) => moved(event, false)}
        onPointerUp={up}
        onPointerCancel={up}
      >
        <canvas ref={canvas} />
        <svg viewBox={`0 0 ${wide} ${high}`} aria-hidden="true" fill="none">
          {box ? (
            <Twice
              d={`M${at({ x: box.x0, y: box.y0 })} H${box.x1 * wide} V${box.y1 * high} H${box.x0 * wide} Z`}
            />
          ) : null}
          {joined > 1 ? <Twice d={`M${points.slice(0, joined).map(at).join(' L')}`} /> : null}
          {points.map((p) => (
            <Twice key={at(p)} d={`M${at(p)} m-9 0 h18 m-9 -9 v18`} />
          ))}
          {outline ? <Twice d={ways(outline, at)} /> : null}
        </svg>
      </div>
    </div>
  )
}

/** Lines along what is sure, dots elsewhere. */
function ways(outline: readonly (Point & { readonly sure: boolean })[], at: (p: Point) => string): string {
  return outline.map((p, i) => (p.sure && outline[i - 1]?.sure ? `L${at(p)}` : `M${at(p)} h1 h-1`)).join(' ')
}

/** A line that shows on light and on dark. */
const Twice = ({ d }: { readonly d: string }) => (
  <>
    <path d={d} stroke="#fff" stroke-width="5" stroke-linecap="round" stroke-linejoin="round" />
    <path d={d} stroke="#b3200f" stroke-width="2.5" stroke-linecap="round" />
  </>
)
