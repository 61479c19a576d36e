/** Unconstrained descent by limited-memory BFGS (J. Nocedal, Math. Comp. 35 (1980) 773), with a backtracking line search. */

/** Pairs of steps remembered. */
const MEMORY = 6
/** A step that brings less of the value than this part is the last. Tuned: what overlaps for good is kicked, not pressed. */
const STUCK = 1e-4
/** A step is taken when it brings so much of what its slope promises (Armijo). */
const ENOUGH = 1e-4

/** Arrays of one size, used again by each descent of that size: a search makes thousands of them. */
interface Room {
  readonly d: Float64Array
  readonly ss: readonly Float64Array[]
  readonly ys: readonly Float64Array[]
  readonly rho: Float64Array
  readonly alpha: Float64Array
  readonly points: readonly [Float64Array, Float64Array, Float64Array]
}
const rooms = new Map<number, Room>()

function roomFor(n: number): Room {
  const known = rooms.get(n)
  if (known) return known
  const array = () => new Float64Array(n)
  const many = () => Array.from({ length: MEMORY }, array)
  const room: Room = {
    d: array(),
    ss: many(),
    ys: many(),
    rho: new Float64Array(MEMORY),
    alpha: new Float64Array(MEMORY),
    points: [array(), array(), array()],
  }
  rooms.set(n, room)
  return room
}

const dot = (a: Float64Array, b: Float64Array): number => {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!
  return sum
}

/**
 * Moves `x` downhill in place and answers the value reached. `f` gives the value at a point and writes its slope; it ends
 * at `steps` steps, where the value falls below `enough`, or where no step along the slope helps.
 */
export function descend(
  f: (x: Float64Array, slope: Float64Array) => number,
  x: Float64Array,
  steps: number,
  enough: number,
): number {
  const n = x.length
  const { d, ss, ys, rho, alpha, points } = roomFor(n)
  let [g, gNew, xNew] = points
  let kept = 0
  let at = x
  let value = f(at, g)
  for (let step = 0; step < steps && value > enough; step++) {
    for (let i = 0; i < n; i++) d[i] = -g[i]!
    const first = Math.max(0, kept - MEMORY)
    for (let k = kept - 1; k >= first; k--) {
      const [s, y] = [ss[k % MEMORY]!, ys[k % MEMORY]!]
      const a = rho[k % MEMORY]! * dot(s, d)
      alpha[k % MEMORY] = a
      for (let i = 0; i < n; i++) d[i]! -= a * y[i]!
    }
    if (kept > 0) {
      const y = ys[(kept - 1) % MEMORY]!
      const scale = 1 / (rho[(kept - 1) % MEMORY]! * dot(y, y))
      for (let i = 0; i < n; i++) d[i]! *= scale
    }
    for (let k = first; k < kept; k++) {
      const [s, y] = [ss[k % MEMORY]!, ys[k % MEMORY]!]
      const b = rho[k % MEMORY]! * dot(y, d)
      for (let i = 0; i < n; i++) d[i]! += s[i]! * (alpha[k % MEMORY]! - b)
    }
    let slope = dot(g, d)
    if (slope >= 0) {
      for (let i = 0; i < n; i++) d[i] = -g[i]!
      slope = -dot(g, g)
      kept = 0
      if (slope === 0) break
    }
    let length = kept === 0 ? 0.25 : 1
    let reached = value
    let took = false
    for (let half = 0; half < 20; half++) {
      for (let i = 0; i < n; i++) xNew[i] = at[i]! + length * d[i]!
      reached = f(xNew, gNew)
      if (reached <= value + ENOUGH * length * slope) {
        took = true
        break
      }
      length /= 2
    }
    if (!took) {
      if (kept === 0) break
      kept = 0
      continue
    }
    const [s, y] = [ss[kept % MEMORY]!, ys[kept % MEMORY]!]
    for (let i = 0; i < n; i++) {
      s[i] = xNew[i]! - at[i]!
      y[i] = gNew[i]! - g[i]!
    }
    const curve = dot(s, y)
    if (curve > 1e-12) {
      rho[kept % MEMORY] = 1 / curve
      kept++
    }
    if (value - reached < STUCK * value) {
      value = reached
      ;[at, xNew] = [xNew, at]
      break
    }
    value = reached
    ;[at, xNew] = [xNew, at]
    ;[g, gNew] = [gNew, g]
  }
  if (at !== x) x.set(at)
  return value
}
