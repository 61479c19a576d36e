/** One pot on its way to the edges of a photo: least squares, the edges sought anew beside the outline at each step. */
import { factorsOf, solvedBy } from '../numeric/symmetric.ts'
import { Colours } from './colours.ts'
import type { Cut, Point, Trace } from './contract.ts'
import { edgeAt, likeliestWay } from './edges.ts'
import { Equations, HELD_SD, usual } from './usual.ts'
import { AT, MANY, noneSeen, SAMPLES, STRETCHES, see, span } from './view.ts'

/** An edge is found to so many px. */
const EDGE_PX = 0.7
/** What a pot's colour counts beside an edge, a px; what the near rim counts, seen over an edge that is another's. */
const COLOUR = 0.05
const FRONT = 0.4
/** The slope of an outline is taken over so much. */
const TINY = 1e-5
const WHOLE = span(STRETCHES.indexOf('top'))[1]
/** An eye tells an opening of so much of the screen from a line; a hand is off by so much at most, mm. */
const SEEN_MM = 1
const HAND_MM = 2
/** Neither is taken for more than this angle. */
const MOST_SEEN = 0.05

export class Search {
  readonly seen = noneSeen()
  /** How sure the edge under each sample is, 0 to 1, as of the last score. */
  readonly sure = new Float64Array(SAMPLES)
  /** How far the hand's points lie beyond its error, squared and summed up, as of the last step. */
  beyond = 0
  private readonly nx = new Float64Array(SAMPLES)
  private readonly ny = new Float64Array(SAMPLES)
  private readonly moved = Array.from({ length: MANY }, noneSeen)
  private readonly row = new Float64Array(MANY)
  private readonly colours: Colours

  constructor(
    readonly cut: Cut,
    readonly trace: Trace,
    readonly pot: Float64Array,
    /** Height over widest, where both were measured. */
    readonly ratio: number | undefined,
  ) {
    this.colours = new Colours(cut)
  }

  private look(): void {
    see(this.pot, this.cut, this.seen)
    const { x, y } = this.seen
    for (let s = 0; s < STRETCHES.length; s++) {
      const [from, to] = span(s)
      for (let i = from; i < to; i++) {
        const [a, b] = [Math.max(from, i - 1), Math.min(to - 1, i + 1)]
        const [tx, ty] = [x[b]! - x[a]!, y[b]! - y[a]!]
        const size = Math.hypot(tx, ty) || 1
        this.nx[i] = ty / size
        this.ny[i] = -tx / size
      }
    }
  }

  /** Calls with the place `off` px outwards of sample `i`. */
  private beside<T>(i: number, off: number, of: (x: number, y: number) => T): T {
    return of(this.seen.x[i]! + off * this.nx[i]!, this.seen.y[i]! + off * this.ny[i]!)
  }

  private edge(i: number, off: number): number {
    return this.beside(i, off, (x, y) => edgeAt(this.cut, x, y, this.nx[i]!, this.ny[i]!))
  }

  /** Learns the colours well inside of the outline and well outside. */
  learn(): void {
    this.look()
    for (let i = 0; i < WHOLE; i++) {
      if (!this.seen.shows[i]) continue
      for (let far = 1; far <= 3.5; far += 0.1) {
        const off = far * this.trace.handPx
        this.beside(i, -off, (x, y) => this.colours.learn(x, y, true))
        this.beside(i, off, (x, y) => this.colours.learn(x, y, false))
      }
    }
    this.colours.settle()
  }

  private slopes(): void {
    for (let p = 0; p < MANY; p++) {
      const kept = this.pot[p]!
      this.pot[p] = kept + TINY
      see(this.pot, this.cut, this.moved[p]!)
      this.pot[p] = kept
    }
  }

  /** How far each number moves sample `i` along (nx, ny), px. */
  private rowAt(i: number, nx: number, ny: number): Float64Array {
    for (let p = 0; p < MANY; p++) {
      const { x, y } = this.moved[p]!
      this.row[p] = ((x[i]! - this.seen.x[i]!) * nx + (y[i]! - this.seen.y[i]!) * ny) / TINY
    }
    return this.row
  }

  /** The hand's own points: ends at the ends of rim and foot, the others somewhere along the right side. */
  private byHand(to: Equations): void {
    const { side, footLeft, rimLeft, handPx } = this.trace
    const weight = 4 / handPx ** 2
    const [from, after] = span(STRETCHES.indexOf('right'))
    const [leftFrom, leftAfter] = span(STRETCHES.indexOf('left'))
    this.beyond = 0
    const off = (px: number) => {
      this.beyond += Math.max(0, px / handPx - 1.1) ** 2
    }
    const toEnd = (i: number, p: Point) => {
      const [dx, dy] = [p.x - this.seen.x[i]!, p.y - this.seen.y[i]!]
      off(Math.hypot(dx, dy))
      to.add(this.rowAt(i, 1, 0), dx, weight)
      to.add(this.rowAt(i, 0, 1), dy, weight)
    }
    toEnd(after - 1, side[0]!)
    toEnd(from, side[side.length - 1]!)
    toEnd(leftFrom, footLeft)
    toEnd(leftAfter - 1, rimLeft)
    for (const p of side.slice(1, -1)) {
      let nearest = from
      let least = Infinity
      for (let i = from; i < after; i++) {
        const far = Math.hypot(p.x - this.seen.x[i]!, p.y - this.seen.y[i]!)
        if (far >= least) continue
        least = far
        nearest = i
      }
      const [nx, ny] = [this.nx[nearest]!, this.ny[nearest]!]
      const by = (p.x - this.seen.x[nearest]!) * nx + (p.y - this.seen.y[nearest]!) * ny
      off(Math.abs(by))
      to.add(this.rowAt(nearest, nx, ny), by, weight)
    }
  }

  /** The edges within `window` px of the outline, where they are sure enough. */
  private byEdges(to: Equations, window: number): void {
    const half = Math.ceil(window)
    const wide = 2 * half + 1
    const sure = new Float64Array(SAMPLES * wide)
    const likely = new Float64Array(SAMPLES * wide)
    for (let i = 0; i < SAMPLES; i++) {
      if (!this.seen.shows[i]) continue
      let inside = 0
      for (let d = 0; d < wide; d++) {
        const at = i * wide + d
        sure[at] = this.edge(i, d - half)
        if (i < WHOLE) inside += this.beside(i, d - half - 0.5, (x, y) => this.colours.at(x, y))
        likely[at] = sure[at]! + COLOUR * inside
      }
    }
    STRETCHES.forEach((stretch, s) => {
      const [from, after] = span(s)
      let length = 0
      for (let i = from + 1; i < after; i++)
        length += Math.hypot(this.seen.x[i]! - this.seen.x[i - 1]!, this.seen.y[i]! - this.seen.y[i - 1]!)
      const apart = Math.max(1, length / (after - from - 1))
      const way = likeliestWay(likely.subarray(from * wide, after * wide), after - from, wide, apart)
      for (let i = from; i < after; i++) {
        if (!this.seen.shows[i]) continue
        const d = way[i - from]!
        const off = d - half + topOf(sure, i * wide, d, wide)
        const tame = 1 / (1 + (off / Math.max(1.5, window / 2)) ** 2)
        const weight = sure[i * wide + d]! ** 2 * tame * (stretch === 'front' ? FRONT : 1)
        to.add(this.rowAt(i, this.nx[i]!, this.ny[i]!), off, weight / EDGE_PX ** 2)
      }
    })
  }

  /** One step towards the edges within `window` px; without it, towards the hand's points alone. */
  step(window: number | undefined, held: boolean, loose: number): void {
    this.look()
    this.slopes()
    const to = new Equations()
    usual(to, this.pot, held, loose, this.ratio)
    this.byHand(to)
    if (window !== undefined) this.byEdges(to, window)
    const { pot } = this
    solvedBy(factorsOf(to.a, MANY), to.b).forEach((by, p) => {
      pot[p]! += by
    })
    const keep = (i: number, least: number, most: number) => {
      pot[i] = Math.max(least, Math.min(most, pot[i]!))
    }
    keep(AT.pitch, -0.25, 0.25)
    keep(AT.roll, -0.25, 0.25)
    keep(AT.up, -1, 1)
    keep(AT.focal, 0.15, 0.85)
    keep(AT.height, 0.005, 2)
    for (let k = AT.radii; k < MANY; k++) keep(k, 1e-3, 0.8)
    this.keepOpen()
  }

  /** Keeps the camera above or below the rim as far as the eye saw into the pot, or did not. */
  private keepOpen(): void {
    const { pot, trace, cut } = this
    const rimPx = (Math.exp(pot[AT.focal]!) * cut.longest * pot[MANY - 1]!) / 2
    const told = ((SEEN_MM / HAND_MM) * trace.handPx) / 2 / rimPx
    const least = 0.9 * Math.min(MOST_SEEN, told)
    const most = Math.max(MOST_SEEN, 1.1 * told)
    const [low, high] =
      trace.looksIn === undefined ? [-most, most] : trace.looksIn ? [least, Infinity] : [-Infinity, -least]
    const over = pot[AT.up]! - pot[AT.height]!
    const by = Math.max(low, Math.min(high, over)) - over
    // The pot stays where it is seen.
    pot[AT.up]! += by
    pot[AT.pitch]! += by
  }

  /** How well the outline lies on edges, between the pot's colours and those round it, where the hand said. */
  score(): number {
    this.look()
    const best = (i: number) => Math.max(this.edge(i, -1), this.edge(i, 0), this.edge(i, 1))
    const colour = (i: number, off: number) => this.beside(i, off, (x, y) => this.colours.at(x, y))
    let sum = 0
    let told = 0
    let many = 0
    for (let i = 0; i < WHOLE; i++) {
      if (!this.seen.shows[i]) continue
      this.sure[i] = best(i)
      sum += this.sure[i]!
      for (let off = 2; off <= 6; off++) told += (colour(i, -off) - colour(i, off)) / 5
      many++
    }
    const tilt = (this.pot[AT.pitch]! / HELD_SD) ** 2
    return (sum + 0.1 * told) / many + this.frontScore(best) - 0.005 * tilt - 0.3 * this.beyond
  }

  /** What the rim's near edge adds where it lies clear of the far one. */
  private frontScore(best: (i: number) => number): number {
    const [from, after] = span(STRETCHES.indexOf('front'))
    const middle = (after - from - 1) / 2
    const [near, far] = [from + middle, span(STRETCHES.indexOf('top'))[0] + middle]
    const apart = Math.hypot(this.seen.x[near]! - this.seen.x[far]!, this.seen.y[near]! - this.seen.y[far]!)
    if (!this.seen.shows[from] || apart < 6) return 0
    let sum = 0
    for (let i = from + 7; i < after - 7; i++) sum += best(i) / (after - from - 14)
    return 0.2 * (sum - 0.4)
  }
}

/** Where between offsets an edge is surest, from offset `d`: the top of a parabola. */
function topOf(sure: Float64Array, row: number, d: number, wide: number): number {
  if (d === 0 || d === wide - 1) return 0
  const [before, here, after] = [sure[row + d - 1]!, sure[row + d]!, sure[row + d + 1]!]
  const bend = before - 2 * here + after
  return bend < 0 ? Math.max(-0.5, Math.min(0.5, (before - after) / (2 * bend))) : 0
}
