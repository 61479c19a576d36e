/** A law on an even grid of logarithms: weights that sum to 1, each for its step. */

export interface LnGrid {
  readonly ln: Float64Array
  readonly weight: Float64Array
}

/** Where `part` of the law lies below, ln: straight within a step. */
export function quantileOf({ ln, weight }: LnGrid, part: number): number {
  const step = ln[1]! - ln[0]!
  let sum = 0
  for (let i = 0; i < ln.length; i++) {
    const next = sum + weight[i]!
    if (next >= part && weight[i]! > 0) return ln[i]! + step * ((part - sum) / weight[i]! - 0.5)
    sum = next
  }
  return ln.at(-1)!
}

/** The 10, 50 and 90 % points, no longer logarithms. */
export function at10(grid: LnGrid): { readonly low: number; readonly likely: number; readonly high: number } {
  const [low, likely, high] = [0.1, 0.5, 0.9].map((part) => Math.exp(quantileOf(grid, part))) as [
    number,
    number,
    number,
  ]
  return { low, likely, high }
}
