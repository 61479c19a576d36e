import { describe, expect, it } from 'vitest'
import { rootOf } from '../../../src/engine/numeric/root.ts'

describe('roots', () => {
  it.each([
    ['a line', (x: number) => x - 0.3, 0.3],
    ['a cube, flat at its root', (x: number) => (x - 0.4) ** 3, 0.4],
    ['a hockey stick', (x: number) => (x < 0.9 ? -1e-9 : x - 0.9), 0.9],
    ['a step', (x: number) => (x < 0.7 ? -1 : 1), 0.7],
    ['an exponential', (x: number) => Math.exp(20 * x) - Math.exp(15), 0.75],
  ])('of %s', (_, rising, root) => expect(rootOf(rising, 0, 1)).toBeCloseTo(root, 4))
  it('is the nearer end where there is none', () => {
    expect(rootOf((x) => x + 1, 0, 1)).toBe(0)
    expect(rootOf((x) => x - 2, 0, 1)).toBe(1)
  })
  it('takes few looks at a smooth function', () => {
    let looks = 0
    rootOf(
      (x) => {
        looks++
        return Math.exp(x) - 2
      },
      0,
      3,
    )
    expect(looks).toBeLessThan(25)
  })
})
