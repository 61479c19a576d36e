import { describe, expect, it } from 'vitest'
import type { Handout } from '../../../shared/nouns.ts'
import { stillCodeOf } from '../../../src/pass/code.ts'
import { packed } from '../../../src/pass/columns.ts'
import { frameText, readFrame } from '../../../src/pass/frame.ts'
import { handoutText, readHandout } from '../../../src/pass/handout.ts'
import { reading } from '../../../src/pass/reading.ts'
import { handoutOf } from '../../../src/table/entry/handout.ts'
import { Play } from '../table/play.ts'

const NOW = 1_772_560_800_000
const table = new Play().act({ do: 'lay-demo' }).table
const read = () => reading({ phone: 'bbbbbbbb', records: () => [] })

describe('a handout', () => {
  const all = handoutOf(table)
  const one = handoutOf(table, 'demo.tideline')

  it('comes back from its code as it was', () => {
    for (const handout of [all, one])
      expect(read().take(handoutText(handout), NOW)).toEqual({ is: 'handout', read: handout })
    expect(all.stacks.length).toBeGreaterThan(one.stacks.length)
    expect(one.stacks.map(({ name }) => name)).toEqual(['Tideline'])
  })

  it('holds the buckets of its stacks and no others, and nothing of pots', () => {
    const used = new Set(one.stacks.flatMap(({ coats }) => coats.map(({ bucketId }) => bucketId)))
    expect(new Set(one.buckets.map(({ bucketId }) => bucketId))).toEqual(used)
    expect(Object.keys(one).sort()).toEqual(['buckets', 'stacks'])
  })

  it('fits a code that a hand reads off a sheet, or has none', () => {
    const sideOf = (handout: Handout) => stillCodeOf(handoutText(handout))?.length
    expect(sideOf(one)).toBeLessThanOrEqual(77)
    expect(sideOf(all)).toBeLessThanOrEqual(97)
    const many = Array.from({ length: 60 }, (_, i) =>
      one.stacks.map((stack) => ({ ...stack, name: `${Math.sin(i)}`, stackId: `${Math.cos(i)}` })),
    )
    expect(sideOf({ ...all, stacks: many.flat() })).toBeUndefined()
  })

  it('of a newer program is told as such, of anything else is none', () => {
    const text = (value: unknown) => packed(new TextEncoder().encode(JSON.stringify(value)))
    expect(readHandout(text({ v: 2, stacks: [], buckets: [] }))).toBe('newer')
    for (const value of [null, 7, {}, { v: '1', stacks: [], buckets: [] }, { v: 1, stacks: {}, buckets: [] }])
      expect(readHandout(text(value))).toBeUndefined()
    expect(readHandout(Uint8Array.of(1, 2, 3))).toBeUndefined()
    const torn = readFrame(handoutText(one))
    if (torn?.kind !== 'handout') throw new Error('no handout')
    const cut = frameText({ kind: 'handout', body: torn.body.slice(0, -9) })
    expect(read().take(cut, NOW)).toEqual({ is: 'nothing' })
  })
})
