import { useEffect, useRef, useState } from 'preact/hooks'
import type { Shown } from '../passing.ts'

/** White round a code, modules (ISO/IEC 18004, 6.3.8). */
const QUIET = 4

interface CodeProps {
  readonly shown: Shown
  readonly aSecond: number
  readonly label: string
}

/** The codes, one after the other, black on white whatever the theme, each module a whole number of the screen's dots. */
export function Code({ shown, aSecond, label }: CodeProps) {
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    let index = 0
    const draw = () => {
      if (canvas.current) drawCode(canvas.current, shown.code(index++))
    }
    draw()
    const timer = setInterval(draw, 1000 / aSecond)
    return () => clearInterval(timer)
  }, [shown])
  return <canvas class="codes-code" ref={canvas} role="img" aria-label={label} />
}

interface StillProps {
  readonly rows: readonly (readonly boolean[])[]
  readonly label: string
}

/** One code that stands still, as a drawing: it prints as sharp as it shows. */
export function StillCode({ rows, label }: StillProps) {
  const side = rows.length + 2 * QUIET
  const path = rows
    .flatMap((row, y) => row.flatMap((dark, x) => (dark ? `M${x + QUIET} ${y + QUIET}h1v1h-1z` : [])))
    .join('')
  return (
    <svg class="codes-code" viewBox={`0 0 ${side} ${side}`} role="img" aria-label={label}>
      <rect width={side} height={side} fill="#fff" />
      <path d={path} fill="#000" shape-rendering="crispEdges" />
    </svg>
  )
}

/** So long each of a few codes stands, ms: a slow phone looks twice a second. */
const EACH_MS = 900

interface StillsProps {
  readonly codes: readonly StillProps['rows'][]
  readonly label: string
  /** Which of how many shows. */
  readonly nth: (code: number, of: number) => string
}

/** A few codes that stand still, one after the other on the screen and side by side on paper. */
export function StillCodes({ codes, label, nth }: StillsProps) {
  const [on, setOn] = useState(0)
  useEffect(() => {
    if (codes.length < 2) return
    const timer = setInterval(() => setOn((at) => (at + 1) % codes.length), EACH_MS)
    return () => clearInterval(timer)
  }, [codes])
  return (
    <div class="codes-still">
      {codes.map((rows, i) => (
        <figure key={i} class={i === on % codes.length ? 'is-on' : ''}>
          <StillCode rows={rows} label={label} />
          {codes.length > 1 ? <figcaption class="figures">{nth(i + 1, codes.length)}</figcaption> : null}
        </figure>
      ))}
    </div>
  )
}

function drawCode(canvas: HTMLCanvasElement, rows: readonly (readonly boolean[])[]): void {
  const context = canvas.getContext('2d')
  if (!context) return
  const modules = rows.length + 2 * QUIET
  const dots = Math.max(1, Math.floor((canvas.clientWidth * devicePixelRatio) / modules))
  const side = modules * dots
  if (canvas.width !== side) Object.assign(canvas, { width: side, height: side })
  context.fillStyle = '#fff'
  context.fillRect(0, 0, side, side)
  context.fillStyle = '#000'
  rows.forEach((row, y) => {
    row.forEach((dark, x) => {
      if (dark) context.fillRect((x + QUIET) * dots, (y + QUIET) * dots, dots, dots)
    })
  })
}
