import { useRef, useState } from 'preact/hooks'
import { freshId } from './pattern.tsx'
import './plot.css'

/** Filled: fixed beforehand. The arrows are for what lies beyond an edge, the bar for what was seen and not measured. */
export type MarkShape = 'dot' | 'ring' | 'square' | 'up' | 'down' | 'bar'

export interface PlotMark {
  /** In the axis' own unit; minus or plus infinity stands in the lane beyond its end. */
  readonly x: number
  readonly y: number
  readonly shape: MarkShape
  /** What it might have been: along x, or along y. */
  readonly reach?: { readonly along: 'x' | 'y'; readonly from: number; readonly to: number }
  /** A letter above it. */
  readonly letter?: string
}

export interface Axis {
  readonly from: number
  readonly to: number
  readonly ticks: readonly { readonly at: number; readonly text: string }[]
  /** What is measured, with its unit. */
  readonly label: string
  /** Names of the lanes before and beyond; left out, there is none. */
  readonly lanes?: readonly [before: string, beyond: string]
}

export interface PlotBand {
  readonly pattern: 'hatch' | 'solid'
  readonly points: readonly { readonly x: number; readonly low: number; readonly high: number }[]
}

interface PlotProps {
  readonly x: Axis
  readonly y: Axis
  readonly marks: readonly PlotMark[]
  readonly bands?: readonly PlotBand[]
  /** Dashed; each a row of points. */
  readonly lines?: readonly (readonly (readonly [x: number, y: number])[])[]
  /** Index of the mark that is told below. */
  readonly picked: number | undefined
  readonly onPick: (index: number | undefined) => void
  readonly label: string
}

const WIDTH = 340
const HEIGHT = 320
const LANE = 30
const LEFT = 46
const RIGHT = 12
const TOP = 26
const BOTTOM = 50
/** A tap this far from every mark picks none, in the drawing's units. */
const NEAR = 60
/** With more marks than this only the picked one shows how far it might have been. */
const REACHES = 40
/** Parts of one that never repeat: marks that fall on one spot in a lane lie side by side. */
const [SPREAD_X, SPREAD_Y] = [0.7548776662, 0.5698402909]

/** From a value to its place; what is beyond an end lies in the lane there, spread by its number. */
function scaleOf({ from, to, lanes }: Axis, start: number, end: number, spread: number) {
  const lane = lanes ? Math.sign(end - start) * LANE : 0
  const [first, last] = [start + lane, end - lane]
  const at = (value: number) => first + ((value - from) / (to - from || 1)) * (last - first)
  const place = (value: number, n: number): number => {
    const by = (((n + 1) * spread) % 1) - 0.5
    if (value === Number.NEGATIVE_INFINITY) return (start + first) / 2 + by * LANE * 0.7
    if (value === Number.POSITIVE_INFINITY) return (last + end) / 2 + by * LANE * 0.7
    return at(Math.max(from, Math.min(to, value)))
  }
  return { at, place, first, last }
}

/** The path of a mark, drawn with a line of its own width. */
function markPath(shape: MarkShape, x: number, y: number, r: number): string {
  switch (shape) {
    case 'dot':
    case 'ring':
      return `M${x - r} ${y} a${r} ${r} 0 1 0 ${2 * r} 0 a${r} ${r} 0 1 0 ${-2 * r} 0`
    case 'square':
      return `M${x - r} ${y - r} h${2 * r} v${2 * r} h${-2 * r} Z`
    case 'up':
      return `M${x - r} ${y + r} h${2 * r} L${x} ${y - r} Z`
    case 'down':
      return `M${x - r} ${y - r} h${2 * r} L${x} ${y + r} Z`
    case 'bar':
      return `M${x} ${y - r} V${y + r} M${x - r} ${y - r} h${2 * r} M${x - r} ${y + r} h${2 * r}`
  }
}

const FILLED: readonly MarkShape[] = ['dot', 'square', 'up', 'down']
const SHAPES: readonly MarkShape[] = ['ring', 'bar', 'down', 'up', 'square', 'dot']

/** Marks in ink on two axes: a tap picks the nearest. All marks of a shape are one path, a thousand of them too. */
export function Plot({ x, y, marks, bands = [], lines = [], picked, onPick, label }: PlotProps) {
  const [id] = useState(freshId)
  const svg = useRef<SVGSVGElement>(null)
  const across = scaleOf(x, LEFT, WIDTH - RIGHT, SPREAD_X)
  const up = scaleOf(y, HEIGHT - BOTTOM, TOP, SPREAD_Y)
  const spot = (mark: PlotMark, n: number) => ({ px: across.place(mark.x, n), py: up.place(mark.y, n) })
  const spots = marks.map(spot)
  const r = marks.length > 300 ? 3.5 : marks.length > 60 ? 4.5 : 5.5
  const tap = (event: MouseEvent) => {
    const to = svg.current?.getScreenCTM()?.inverse()
    if (!to) return
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(to)
    const far = (i: number) => Math.hypot((spots[i]?.px ?? 1e9) - at.x, (spots[i]?.py ?? 1e9) - at.y)
    const nearest = spots.reduce((best, _, i) => (far(i) < far(best) ? i : best), 0)
    onPick(far(nearest) <= NEAR ? nearest : undefined)
  }
  const reaches = marks.flatMap(({ reach }, i) => {
    const from = spots[i]
    if (!reach || !from || (marks.length > REACHES && i !== picked)) return []
    const [a, b] = [reach.from, reach.to]
    return reach.along === 'x'
      ? [`M${across.place(a, i)} ${from.py} H${across.place(b, i)}`]
      : [`M${from.px} ${up.place(a, i)} V${up.place(b, i)}`]
  })
  const chosen = picked === undefined ? undefined : spots[picked]
  const path = (points: readonly (readonly [number, number])[]) =>
    points
      .map(([px, py], i) => `${i === 0 ? 'M' : 'L'}${across.at(px).toFixed(1)} ${up.at(py).toFixed(1)}`)
      .join(' ')
  return (
    // A pointer's way to pick one: the table below has them all for everybody else.
    // biome-ignore lint/a11y/useKeyWithClickEvents: see above
    <svg
      ref={svg}
      class="plot"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={label}
      onClick={tap}
    >
      <defs>
        <pattern id={id} width="9" height="9" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="1.6" height="9" fill="var(--ink)" />
        </pattern>
      </defs>
      {bands.map(({ pattern, points }, i) => (
        <path
          key={i}
          d={`${path(points.map((p) => [p.x, p.high]))} ${path(points.toReversed().map((p) => [p.x, p.low])).replace('M', 'L')} Z`}
          fill={pattern === 'solid' ? 'var(--ink)' : `url(#${id})`}
          fill-opacity={pattern === 'solid' ? 0.18 : 1}
          stroke={pattern === 'solid' ? 'var(--ink)' : 'none'}
          stroke-width="1.5"
        />
      ))}
      {x.lanes || y.lanes ? (
        <path
          d={[
            ...(x.lanes ? [across.first, across.last].map((at) => `M${at} ${TOP} V${HEIGHT - BOTTOM}`) : []),
            ...(y.lanes ? [up.first, up.last].map((at) => `M${LEFT} ${at} H${WIDTH - RIGHT}`) : []),
          ].join(' ')}
          class="plot-lane"
        />
      ) : null}
      <path d={lines.map(path).join(' ')} class="plot-line" />
      <path d={`M${LEFT} ${TOP} V${HEIGHT - BOTTOM} H${WIDTH - RIGHT}`} class="plot-axis" />
      <path
        d={[
          ...x.ticks.map(({ at }) => `M${across.at(at)} ${HEIGHT - BOTTOM} v6`),
          ...y.ticks.map(({ at }) => `M${LEFT} ${up.at(at)} h-6`),
        ].join(' ')}
        class="plot-axis"
      />
      {x.ticks.map(({ at, text }) => (
        <text
          key={`x${at}`}
          class="plot-number"
          x={across.at(at)}
          y={HEIGHT - BOTTOM + 20}
          text-anchor="middle"
        >
          {text}
        </text>
      ))}
      {y.ticks.map(({ at, text }) => (
        <text key={`y${at}`} class="plot-number" x={LEFT - 9} y={up.at(at) + 5} text-anchor="end">
          {text}
        </text>
      ))}
      {x.lanes?.map((name, i) => (
        <text
          key={name}
          class="plot-word"
          x={i === 0 ? LEFT + 1 : WIDTH - RIGHT}
          y={HEIGHT - BOTTOM + 20}
          text-anchor={i === 0 ? 'start' : 'end'}
        >
          {name}
        </text>
      ))}
      {y.lanes?.map((name, i) => (
        <text
          key={name}
          class="plot-word"
          x={LEFT - 5}
          y={(i === 0 ? HEIGHT - BOTTOM - LANE / 2 : TOP + LANE / 2) + 5}
          text-anchor="end"
        >
          {name}
        </text>
      ))}
      <text class="plot-name" x={WIDTH - RIGHT} y={HEIGHT - 8} text-anchor="end">
        {x.label} →
      </text>
      <text class="plot-name" x="2" y="14">
        ↑ {y.label}
      </text>
      {reaches.length > 0 ? <path d={reaches.join(' ')} class="plot-reach" /> : null}
      {SHAPES.map((shape) => (
        <path
          key={shape}
          class={FILLED.includes(shape) ? 'plot-filled' : 'plot-open'}
          d={spots
            .flatMap(({ px, py }, i) => (marks[i]?.shape === shape ? [markPath(shape, px, py, r)] : []))
            .join(' ')}
        />
      ))}
      {marks.map(({ letter }, i) =>
        letter === undefined ? null : (
          <text
            key={i}
            class="plot-letter"
            x={spots[i]?.px}
            y={(spots[i]?.py ?? 0) - r - 4}
            text-anchor="middle"
          >
            {letter}
          </text>
        ),
      )}
      {chosen ? <circle cx={chosen.px} cy={chosen.py} r={r + 7} class="plot-chosen" /> : null}
    </svg>
  )
}

/** Round steps for an axis from 0 or `from` to at least `to`, at most `most` of them. */
export function ticksTo(from: number, to: number, most: number, steps: readonly number[]): readonly number[] {
  const step = steps.find((one) => (to - from) / one <= most) ?? to - from
  const first = Math.ceil(from / step - 1e-9)
  return Array.from(
    { length: Math.max(1, Math.floor(to / step + 1e-9) - first + 1) },
    (_, i) => (first + i) * step,
  )
}
