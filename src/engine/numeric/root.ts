/** Where a rising function crosses zero. */

const STEPS = 100
/** Relative width at which the bracket is narrow enough: far below any scale or thermometer. */
const NARROW = 1e-12

/**
 * Root of a rising function on [low, high] by false position with halved ends (Illinois: Dowell & Jarratt 1971,
 * BIT 11, 168); the nearer end when there is none.
 */
export function rootOf(rising: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high]
  let [atA, atB] = [rising(a), rising(b)]
  if (atA >= 0) return a
  if (atB <= 0) return b
  const width = NARROW * Math.max(1, Math.abs(low), Math.abs(high))
  let last = 0
  for (let i = 0; i < STEPS && b - a > width; i++) {
    // Every fourth step halves, so that a hockey stick is not crept up on.
    const x = i % 4 === 3 ? (a + b) / 2 : Math.max(a, b - (atB * (b - a)) / (atB - atA))
    const atX = rising(x)
    if (atX === 0) return x
    if (atX < 0) {
      if (last < 0) atB /= 2
      ;[a, atA, last] = [x, atX, -1]
    } else {
      if (last > 0) atA /= 2
      ;[b, atB, last] = [x, atX, 1]
    }
  }
  return Math.max(a, b - (atB * (b - a)) / (atB - atA))
}
