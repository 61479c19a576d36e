import { describe, expect, it } from 'vitest'
import type { Handout } from '../../../shared/nouns.ts'
import { stillCodeOf } from '../../../src/pass/code.ts'
import { packed } from '../../../src/pass/columns.ts'
import { frameText, readFrame } from '../../../src/pass/frame.ts'
import { handoutTexts, readHandout } from '../../../src/pass/handout.ts'
import { reading } from '../../../src/pass/reading.ts'
import { classOf, handoutOf } from '../../../src/table/entry/handout.ts'
import { Play } from '../table/play.ts'

const NOW = 1_772_560_800_000
const table = new Play().act({ do: 'lay-demo' }).table
const read = () => reading({ phone: 'bbbbbbbb', records: () => [] })

describe('a handout', () => {
  const all = handoutOf(table)
  const one = handoutOf(table, 'demo.tideline')

  it('comes back from its code as it was', () => {
    for (const handout of [all, one])
      expect(handoutTexts(handout).map((text) => read().take(text, NOW))).toEqual([
        { is: 'handout', read: handout },
      ])
    expect(all.stacks.length).toBeGreaterThan(one.stacks.length)
    expect(one.stacks.map(({ name }) => name)).toEqual(['Tideline'])
  })

  it('holds the buckets of its stacks and no others, and nothing of pots', () => {
    const used = new Set(one.stacks.flatMap(({ coats }) => coats.map(({ bucketId }) => bucketId)))
    expect(new Set(one.buckets.map(({ bucketId }) => bucketId))).toEqual(used)
    expect(Object.keys(one).sort()).toEqual(['buckets', 'stacks'])
  })

  it('fits codes that a hand reads off a sheet, or has none', () => {
    const sideOf = (handout: Handout) => stillCodeOf(handoutTexts(handout)[0] ?? '')?.length
    expect(sideOf(one)).toBeLessThanOrEqual(77)
    expect(sideOf(all)).toBeLessThanOrEqual(97)
    const many = Array.from({ length: 120 }, (_, i) =>
      one.stacks.map((stack) => ({ ...stack, name: `${Math.sin(i)}`, stackId: `${Math.cos(i)}` })),
    )
    expect(handoutTexts({ ...all, stacks: many.flat() })).toEqual([])
  })

  it('of a newer program is told as such, of anything else is none', () => {
    const text = (value: unknown) => packed(new TextEncoder().encode(JSON.stringify(value)))
    expect(readHandout(text({ v: 3, stacks: [], buckets: [] }))).toBe('newer')
    for (const of of [null, { board: {}, pots: {}, plans: [] }, { board: {}, pots: [] }])
      expect(readHandout(text({ v: 2, stacks: [], buckets: [], class: of }))).toBeUndefined()
    for (const value of [null, 7, {}, { v: '1', stacks: [], buckets: [] }, { v: 1, stacks: {}, buckets: [] }])
      expect(readHandout(text(value))).toBeUndefined()
    expect(readHandout(Uint8Array.of(1, 2, 3))).toBeUndefined()
    const torn = readFrame(handoutTexts(one)[0] ?? '')
    if (torn?.kind !== 'handout') throw new Error('no handout')
    const cut = frameText({ kind: 'handout', body: torn.body.slice(0, -9) })
    expect(read().take(cut, NOW)).toEqual({ is: 'nothing' })
  })
})

describe('a class', () => {
  /** Pots of twelve people on ten boards. */
  const classWith = (count: number): Handout => {
    const { class: of, ...stacks } = classOf(table)
    if (!of) throw new Error('no class')
    const pots = Array.from({ length: count }, (_, i) => ({
      ...(of.pots[i % of.pots.length] as (typeof of.pots)[number]),
      potId: `p.k3r9x1.2-${300 + 7 * (i >> 2)}.${i % 4}`,
      number: 31 + i,
      place: { board: 'ABCDEFGHIJ'[i >> 2] ?? 'K', spot: 1 + (i % 4) },
      whose:
        ['Wren', 'Alder', 'Tamsin', 'Odile', 'Perrin', 'Linnet', 'Rowan', 'Jory', 'Bryn'][i >> 2] ?? 'Fern',
    }))
    return { ...stacks, class: { ...of, pots } }
  }

  it('of twelve pots is one code, of forty a few, read in any order and one of them twice', () => {
    const twelve = handoutTexts(classWith(12))
    expect(twelve.map((text) => (stillCodeOf(text)?.length ?? Infinity) <= 97)).toEqual([true])
    const forty = classWith(40)
    const texts = handoutTexts(forty)
    console.log(`a class of 40 pots: ${texts.length} codes`)
    expect(texts.length).toBeGreaterThan(1)
    expect(texts.length).toBeLessThanOrEqual(4)
    for (const text of texts) expect(stillCodeOf(text)?.length).toBeLessThanOrEqual(77)
    const phone = read()
    const [first = '', ...others] = texts.toReversed()
    for (const text of [first, first, ...others.slice(0, -1)])
      expect(phone.take(text, NOW)).toMatchObject({ is: 'part', of: texts.length })
    expect(phone.take(others.at(-1) ?? '', NOW)).toEqual({ is: 'handout', read: forty })
    // Left, and read once more.
    expect(phone.take(first, NOW + 5000)).toEqual({ is: 'handout', read: forty })
  })

  it('of which a code was damaged is told as such, and read again whole', () => {
    const forty = classWith(40)
    const phone = read()
    const texts = handoutTexts(forty)
    const frame = readFrame(texts[0] ?? '')
    if (frame?.kind !== 'block') throw new Error('no block')
    const torn = frameText({ ...frame, body: frame.body.map((byte) => byte ^ 1) })
    const told = [torn, ...texts.slice(1)].map((text) => phone.take(text, NOW).is)
    expect(told.at(-1)).toBe('damaged')
    expect(texts.map((text) => phone.take(text, NOW)).at(-1)).toEqual({ is: 'handout', read: forty })
  })
})
