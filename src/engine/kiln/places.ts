/**
 * Shelf places: level from below, then number. On a round shelf clockwise from the front mark, the outer ring first; on a
 * square one in rows from the front left.
 */
import type { PlacedItem, Shelf } from './contract.ts'

type Standing = Pick<PlacedItem, 'xMm' | 'yMm' | 'bellyRadiusMm' | 'footRadiusMm'>

const reachOf = (one: Standing): number => Math.max(one.bellyRadiusMm, one.footRadiusMm)

/** Degrees clockwise from the front mark, as seen from above: 0 at the front, 90 on the left. */
export function angleDeg(xMm: number, yMm: number): number {
  const deg = (Math.atan2(-xMm, yMm) * 180) / Math.PI
  return deg < -1e-9 ? deg + 360 : Math.max(0, deg)
}

/** Something stands between `one` and the rim, on its way straight out. */
function isBehind(one: Standing, others: readonly Standing[]): boolean {
  const far = Math.hypot(one.xMm, one.yMm)
  if (far < 1e-9) return others.length > 1
  const [ux, uy] = [one.xMm / far, one.yMm / far]
  return others.some((other) => {
    if (other === one) return false
    const along = other.xMm * ux + other.yMm * uy
    return along > far && Math.abs(other.xMm * uy - other.yMm * ux) < reachOf(other)
  })
}

function inRings<T extends Standing>(items: readonly T[]): T[] {
  const ordered: T[] = []
  let left = [...items]
  while (left.length > 0) {
    const ring = left.filter((one) => !isBehind(one, left))
    // Nothing stands farther out than the farthest, so a ring is never empty; two at the very middle would be.
    const taken = ring.length > 0 ? ring : left
    ordered.push(...taken.sort((a, b) => angleDeg(a.xMm, a.yMm) - angleDeg(b.xMm, b.yMm)))
    left = left.filter((one) => !taken.includes(one))
  }
  return ordered
}

function inRows<T extends Standing>(items: readonly T[]): T[] {
  const ordered: T[] = []
  let left = [...items].sort((a, b) => b.yMm - a.yMm || a.xMm - b.xMm)
  while (left[0]) {
    const back = left[0].yMm - reachOf(left[0])
    const row = left.filter((one) => one.yMm > back)
    ordered.push(...row.sort((a, b) => a.xMm - b.xMm || b.yMm - a.yMm))
    left = left.filter((one) => one.yMm <= back)
  }
  return ordered
}

/** What stands on a shelf in the order of its numbers. */
export const inOrder = <T extends Standing>(shelf: Shelf, items: readonly T[]): readonly T[] =>
  shelf.kind === 'round' || shelf.kind === 'halfRound' ? inRings(items) : inRows(items)
