/** Stacks with their buckets, or a class, in codes that stand still: they can be printed too. */

import { strToU8 } from 'fflate'
import type { ClassPlan, Handout } from '../../shared/nouns.ts'
import { blockAt, blocksOf } from './blocks.ts'
import { inflated, packed } from './columns.ts'
import { BLOCK_EXTRA, frameText, sumOf } from './frame.ts'

/** Of stacks alone, and of a class. */
const VERSION = { stacks: 1, class: 2 } as const

/** Letters of the largest code that stands still (version 20, level L), and of each where one does not do (15, M). */
const ONE_LETTERS = 1249
const EACH_LETTERS = 600
/** More codes than these nobody reads one by one. */
const CODES_MOST = 6

/** Base45: three letters for two bytes. */
const EACH_BYTES = Math.floor(EACH_LETTERS / 3) * 2 - BLOCK_EXTRA

/** What a handout's code held, not examined yet. */
export interface ReadHandout {
  readonly stacks: readonly unknown[]
  readonly buckets: readonly unknown[]
  readonly class?: { readonly [K in keyof ClassPlan]: K extends 'board' ? unknown : readonly unknown[] }
}

/** Texts of its codes: one that holds all, else a few, of which a reader wants each once; none where it is too much. */
export function handoutTexts({ stacks, buckets, class: of }: Handout): readonly string[] {
  const v = of ? VERSION.class : VERSION.stacks
  const body = packed(strToU8(JSON.stringify({ v, stacks, buckets, class: of })))
  const whole = frameText({ kind: 'handout', body })
  if (whole.length <= ONE_LETTERS) return [whole]
  const count = blocksOf(body.length, EACH_BYTES)
  if (count > CODES_MOST) return []
  const each = Math.ceil(body.length / count)
  const sum = sumOf(body)
  return Array.from({ length: count }, (_, index) =>
    frameText({ kind: 'block', of: sum, length: body.length, index, body: blockAt(body, each, index) }),
  )
}

/** What such bytes hold; `newer` where a newer program made it, undefined where it is none. */
export function readHandout(body: Uint8Array): ReadHandout | 'newer' | undefined {
  const text = inflated(body)
  if (text === undefined) return undefined
  try {
    const { v, stacks, buckets, class: of } = JSON.parse(text) as Record<string, unknown>
    if (typeof v !== 'number') return undefined
    if (v > VERSION.class) return 'newer'
    if (!Array.isArray(stacks) || !Array.isArray(buckets)) return undefined
    if (of === undefined) return { stacks, buckets }
    const { board, pots, plans } = of as Record<string, unknown>
    return Array.isArray(pots) && Array.isArray(plans)
      ? { stacks, buckets, class: { board, pots, plans } }
      : undefined
  } catch {
    return undefined
  }
}
