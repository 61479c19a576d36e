import type { PlanInput } from '../../src/planner/index.ts'

/**
 * A lower bound on the finish that shares nothing with the planner, for boards of dips of one length on a grid of
 * time, one pair of hands, nothing open. No plan ends by T if the hands' walk (one open bucket, set-ups, age of
 * the stir) and the pots' chains (waits, latest starts for T), each taken by itself, can't be made to agree: for
 * prices u on dipping in bucket b at time t the cheapest walk less the dearest chains is positive.
 * M. Guignard, S. Kim, "Lagrangean decomposition", Mathematical Programming 39 (1987) 215-228; prices improved by
 * the steps of B. T. Polyak, "Minimization of unsmooth functionals", USSR Comp. Math. and Math. Phys. 9 (1969) 14-29.
 */

/** Everything in grid steps. */
interface Table {
  readonly buckets: readonly { readonly open: number; readonly restir: number; readonly fresh: number }[]
  readonly dip: number
  readonly chains: readonly {
    readonly ready: number
    readonly steps: readonly { readonly b: number; readonly after: number }[]
  }[]
}

/** Value of the best for prices `u[b * (T + 1) + t]`; adds to `g` how often it dips in b at t, times `sign`. */
type Side = (u: Float64Array, g: Float64Array) => number

function layTable(input: PlanInput, gridS: number): Table {
  const coats = input.pots.flatMap((pot) => pot.coats)
  const used = input.buckets.filter((bucket) => coats.some((coat) => coat.bucketId === bucket.id))
  const buckets = used.map((bucket) => {
    // Glaze is poured off in every visit to a bucket whose every coat is a collar.
    const pours = coats.every((coat) => coat.bucketId !== bucket.id || coat.collar)
    return {
      open: (bucket.openS + (pours ? bucket.decantS : 0)) / gridS,
      restir: bucket.restirS / gridS,
      fresh: bucket.freshS / gridS,
    }
  })
  const chains = input.pots.map((pot) => ({
    ready: Math.max(0, pot.readyAtS - input.nowS) / gridS,
    steps: pot.coats.map((coat) => ({
      b: used.findIndex((bucket) => bucket.id === coat.bucketId),
      after: Math.max(coat.dipS, coat.outAtS + coat.waitAfterS) / gridS,
    })),
  }))
  return { buckets, dip: coats[0]!.dipS / gridS, chains }
}

const IDLE = 0
const DIP = 1
const STIR = 2
const OPEN = 3

/** The hands' walk that costs least, by dynamic programming over time, open bucket and age of its stir. */
function cheapestWalk({ buckets, dip }: Table, T: number): Side {
  const width = Math.max(...buckets.map((bucket) => bucket.fresh)) + 2
  const size = buckets.length * width
  const value = new Float64Array((T + 2) * size)
  const action = new Int8Array((T + 2) * size)
  const opening = new Int8Array(T + 2)
  const after = (t: number, b: number, age: number) => (t > T ? 0 : value[t * size + b * width + age]!)

  const fill = (u: Float64Array) => {
    for (let t = T; t >= 0; t--) {
      let openCost = 0
      opening[t] = -1
      for (const [b, { open }] of buckets.entries()) {
        const cost = after(t + open, b, 0)
        if (cost >= openCost) continue
        openCost = cost
        opening[t] = b
      }
      for (const [b, { restir, fresh }] of buckets.entries()) {
        const stirCost = after(t + restir, b, 0)
        for (let age = 0; age <= fresh + 1; age++) {
          let cost = after(t + 1, b, Math.min(age + 1, fresh + 1))
          let what = IDLE
          if (openCost < cost) {
            cost = openCost
            what = OPEN
          }
          if (stirCost < cost) {
            cost = stirCost
            what = STIR
          }
          if (age <= fresh && t + dip <= T) {
            const dipCost = u[b * (T + 1) + t]! + after(t + dip, b, Math.min(age + dip, fresh + 1))
            if (dipCost < cost) {
              cost = dipCost
              what = DIP
            }
          }
          value[t * size + b * width + age] = cost
          action[t * size + b * width + age] = what
        }
      }
    }
  }

  return (u, g) => {
    fill(u)
    let total = 0
    let at = { t: T + 1, b: 0, age: 0 }
    for (let t = 0; t <= T; t++) {
      const b = opening[t]!
      const cost = b < 0 ? 0 : after(t + buckets[b]!.open, b, 0)
      if (cost >= total) continue
      total = cost
      at = { t: t + buckets[b]!.open, b, age: 0 }
    }
    while (at.t <= T) {
      const { t, b, age } = at
      const { restir, fresh } = buckets[b]!
      const what = action[t * size + b * width + age]!
      if (what === STIR) at = { t: t + restir, b, age: 0 }
      else if (what === OPEN) at = { t: t + buckets[opening[t]!]!.open, b: opening[t]!, age: 0 }
      else {
        if (what === DIP) g[b * (T + 1) + t]!++
        const spent = what === DIP ? dip : 1
        at = { t: t + spent, b, age: Math.min(age + spent, fresh + 1) }
      }
    }
    return total
  }
}

/** All pots' chains that gain most within their windows, by dynamic programming; null when a window is empty. */
function dearestChains({ buckets, dip, chains }: Table, T: number): Side | null {
  const lines = chains.map(({ ready, steps }) => {
    let t = ready
    const low = steps.map(({ b, after }) => {
      const start = Math.max(t, buckets[b]!.open)
      t = start + after
      return start
    })
    let end = T - dip
    const high = steps
      .map((_, k) => steps.length - 1 - k)
      .map((k) => {
        if (k < steps.length - 1) end -= steps[k]!.after
        return end
      })
      .reverse()
    return { steps, low, high, gain: steps.map(() => new Float64Array(T + 2)) }
  })
  if (lines.some(({ low, high }) => low.some((start, k) => start > high[k]!))) return null
  return (u, g) => {
    let total = 0
    for (const { steps, low, high, gain } of lines) {
      for (let k = steps.length - 1; k >= 0; k--) {
        const { b, after } = steps[k]!
        const from = k === 0 ? low[0]! : low[k - 1]! + steps[k - 1]!.after
        let best = Number.NEGATIVE_INFINITY
        for (let t = high[k]!; t >= from; t--) {
          if (t >= low[k]!) best = Math.max(best, u[b * (T + 1) + t]! + (gain[k + 1]?.[t + after] ?? 0))
          gain[k]![t] = best
        }
      }
      total += gain[0]![low[0]!]!
      let t = low[0]!
      for (const [k, { b, after }] of steps.entries()) {
        t = Math.max(t, low[k]!)
        while (t < high[k]! && gain[k]![t + 1]! >= gain[k]![t]!) t++
        g[b * (T + 1) + t]!--
        t += after
      }
    }
    return total
  }
}

/** Rounds without progress before the steps are shortened, and how much. Tuned. */
const PATIENCE = 100
const SHORTER = 0.8

function impossible(table: Table, T: number, rounds: number): boolean {
  const walk = cheapestWalk(table, T)
  const pots = dearestChains(table, T)
  if (!pots) return true
  const u = new Float64Array(table.buckets.length * (T + 1))
  const g = new Float64Array(u.length)
  let top = Number.NEGATIVE_INFINITY
  let since = 0
  let theta = 1
  for (let round = 0; round < rounds; round++) {
    g.fill(0)
    const value = walk(u, g) - pots(u, g)
    if (value > 1e-6) return true
    const norm = g.reduce((sum, each) => sum + each * each, 0)
    if (norm === 0) return false
    if (value > top) {
      top = value
      since = 0
    } else if (++since === PATIENCE) {
      theta *= SHORTER
      since = 0
    }
    const step = (theta * (1 - value)) / norm
    for (let k = 0; k < u.length; k++) u[k]! += step * g[k]!
  }
  return false
}

/** @returns seconds from now that no plan can beat, at most `knownS`, a finish that some plan has. */
export function relaxedFinish(input: PlanInput, gridS: number, knownS: number, rounds: number): number {
  const table = layTable(input, gridS)
  let low = 0
  let high = knownS / gridS
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (impossible(table, middle, rounds)) low = middle
    else high = middle
  }
  return high * gridS
}
