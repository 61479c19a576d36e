/** Stacks and their buckets in one code that stands still: it can be printed too. */

import { strToU8 } from 'fflate'
import type { Handout } from '../../shared/nouns.ts'
import { inflated, packed } from './columns.ts'
import { frameText } from './frame.ts'

const VERSION = 1

/** What a handout's code held, not examined yet. */
export interface ReadHandout {
  readonly stacks: readonly unknown[]
  readonly buckets: readonly unknown[]
}

/** Text of its code. */
export const handoutText = ({ stacks, buckets }: Handout): string =>
  frameText({
    kind: 'handout',
    body: packed(strToU8(JSON.stringify({ v: VERSION, stacks, buckets }))),
  })

/** What the body of such a frame holds; `newer` where a newer program made it, undefined where it is none. */
export function readHandout(body: Uint8Array): ReadHandout | 'newer' | undefined {
  const text = inflated(body)
  if (text === undefined) return undefined
  try {
    const { v, stacks, buckets } = JSON.parse(text) as Record<string, unknown>
    if (typeof v !== 'number') return undefined
    if (v > VERSION) return 'newer'
    return Array.isArray(stacks) && Array.isArray(buckets) ? { stacks, buckets } : undefined
  } catch {
    return undefined
  }
}
