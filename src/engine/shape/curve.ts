/** Smooth curves through a few points that never overshoot them. */
import type { OutlinePoint } from '../contract.ts'

/** Tangents of a monotone cubic through y(t) (Fritsch & Carlson 1980, SIAM J. Numer. Anal. 17, 238). */
function tangents(t: readonly number[], y: readonly number[]): number[] {
  const last = t.length - 1
  const slopes = Array.from({ length: last }, (_, i) => (at(y, i + 1) - at(y, i)) / (at(t, i + 1) - at(t, i)))
  const m = t.map((_, i) => {
    if (i === 0) return at(slopes, 0)
    if (i === last) return at(slopes, last - 1)
    const [before, after] = [at(slopes, i - 1), at(slopes, i)]
    return before * after <= 0 ? 0 : (before + after) / 2
  })
  slopes.forEach((slope, i) => {
    if (slope === 0) {
      m[i] = 0
      m[i + 1] = 0
      return
    }
    const [a, b] = [at(m, i) / slope, at(m, i + 1) / slope]
    const size = Math.hypot(a, b)
    if (size > 3) {
      m[i] = (3 * a * slope) / size
      m[i + 1] = (3 * b * slope) / size
    }
  })
  return m
}

/** Element `i`, which must be there. */
export function at<T>(list: readonly T[], i: number): T {
  const found = list[i]
  if (found === undefined) throw new RangeError(`index is ${i}: must be from 0 to ${list.length - 1}`)
  return found
}

function hermite(y0: number, y1: number, m0: number, m1: number, step: number, u: number): number {
  const v = 1 - u
  return (1 + 2 * u) * v * v * y0 + u * v * v * step * m0 + u * u * (3 - 2 * u) * y1 - u * u * v * step * m1
}

/**
 * Points of a smooth curve through `through` (two or more, no two alike in a row), `pieces` straight pieces between
 * each pair. Radius and height are each a monotone cubic of the chord length, so between two points neither leaves
 * the span the two points give it.
 */
export function smooth(through: readonly OutlinePoint[], pieces: number): OutlinePoint[] {
  const t = [0]
  for (let i = 1; i < through.length; i++) {
    const [a, b] = [at(through, i - 1), at(through, i)]
    t.push(at(t, i - 1) + Math.hypot(b.rMm - a.rMm, b.zMm - a.zMm))
  }
  const r = through.map((p) => p.rMm)
  const z = through.map((p) => p.zMm)
  const [mr, mz] = [tangents(t, r), tangents(t, z)]
  const points = [at(through, 0)]
  for (let i = 0; i + 1 < through.length; i++) {
    const step = at(t, i + 1) - at(t, i)
    for (let k = 1; k < pieces; k++) {
      const u = k / pieces
      points.push({
        rMm: hermite(at(r, i), at(r, i + 1), at(mr, i), at(mr, i + 1), step, u),
        zMm: hermite(at(z, i), at(z, i + 1), at(mz, i), at(mz, i + 1), step, u),
      })
    }
    points.push(at(through, i + 1))
  }
  return points
}

/** The same polyline as `count` pieces of equal length; corners within a piece are cut. */
export function evenly(line: readonly OutlinePoint[], count: number): OutlinePoint[] {
  const along = [0]
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [at(line, i - 1), at(line, i)]
    along.push(at(along, i - 1) + Math.hypot(b.rMm - a.rMm, b.zMm - a.zMm))
  }
  const total = at(along, along.length - 1)
  const points: OutlinePoint[] = []
  let i = 1
  for (let k = 0; k < count; k++) {
    const goal = (total * k) / count
    while (i < line.length - 1 && at(along, i) < goal) i++
    const [a, b, from, to] = [at(line, i - 1), at(line, i), at(along, i - 1), at(along, i)]
    const u = to > from ? Math.min(1, (goal - from) / (to - from)) : 1
    points.push({ rMm: a.rMm + u * (b.rMm - a.rMm), zMm: a.zMm + u * (b.zMm - a.zMm) })
  }
  points.push(at(line, line.length - 1))
  return points
}
