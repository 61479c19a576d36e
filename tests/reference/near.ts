import { expect } from 'vitest'

/** Expects `value` within `by` of `wanted`, or within the `part` of it. */
export function near(
  value: number,
  wanted: number,
  within: { readonly by: number } | { readonly part: number },
): void {
  const room = 'by' in within ? within.by : Math.abs(wanted) * within.part
  const off = Math.abs(value - wanted)
  expect(off <= room, `${value} is ${off} from ${wanted}: more than ${room}`).toBe(true)
}
