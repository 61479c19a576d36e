import fc from 'fast-check'
import { strToU8 } from 'fflate'
import { describe, expect, it } from 'vitest'
import { type AnyEvent, compareRecords, type JournalRecord, MOST_APART_MS } from '../../../shared/record.ts'
import { toBase45 } from '../../../src/pass/base45.ts'
import { packed } from '../../../src/pass/columns.ts'
import { frameText, sumOf } from '../../../src/pass/frame.ts'
import { BLOCKS_MOST, reading, type Told } from '../../../src/pass/reading.ts'
import { SIZES, showing } from '../../../src/pass/showing.ts'
import { unite } from '../../../src/store/union.ts'
import { asKept } from '../../fixtures/passed.ts'

type Row = JournalRecord<AnyEvent>
const NOW = 1_772_600_000_000
const [ours, theirs] = [asKept(300, 1), asKept(240, 2)]

/** A phone that shows and reads, its clock `aheadMs` beyond the time told. */
class Phone {
  readonly read
  constructor(
    readonly name: string,
    public records: readonly Row[],
    readonly aheadMs = 0,
  ) {
    this.read = reading({ phone: name, records: () => this.records })
  }
  show(size: keyof typeof SIZES = 'fine', other = this.read.met) {
    return showing({ phone: this.name, records: this.records, size, other, nowMs: NOW + this.aheadMs })
  }
  /** Reads what `other` shows until it has all, from code `from` on; how many codes that took, and what came. */
  reads(
    other: Phone,
    { from = 0, lost = (_: number): boolean => false, most = 5000, size = 'fine' as keyof typeof SIZES } = {},
  ) {
    const shown = other.show(size)
    let told: Told = { is: 'nothing' }
    let codes = 0
    for (; codes < most && told.is !== 'whole' && told.is !== 'known' && told.is !== 'clock'; codes++) {
      const clock = NOW + codes * 125
      if (lost(codes)) continue
      told = this.read.take(shown.code(from + codes, clock + other.aheadMs), clock + this.aheadMs)
    }
    if (told.is === 'whole') this.records = unite(this.records, told.records).records
    return { codes, told }
  }
}

const ids = ({ records }: Phone) => records.map(({ id }) => id)
const phones = (a: readonly Row[] = ours, b: readonly Row[] = theirs) =>
  [new Phone('aaaaaaaa', a), new Phone('bbbbbbbb', b)] as const

describe('two phones', () => {
  it('have the same after one showed, and the other showed back what that one lacks', () => {
    const [a, b] = phones()
    const { told } = b.reads(a)
    expect(told).toMatchObject({ is: 'whole', records: ours, met: { phone: 'aaaaaaaa', aheadMs: 0 } })
    expect(b.read.isClosed()).toBe(true)
    expect(b.read.theyLack()).toHaveLength(theirs.length)
    expect(b.show().records).toBe(theirs.length)
    a.reads(b)
    expect(ids(a)).toEqual(ids(b))
    expect(ids(a)).toHaveLength(ours.length + theirs.length)
    expect(a.read.theyLack()).toEqual([])
    // Once more: nothing new, told at the first code.
    expect(b.reads(a)).toMatchObject({ codes: 1, told: { is: 'known' } })
    expect(b.show().records).toBe(0)
  })

  it('pass what is new since they met, whatever got lost and whenever one joins', () => {
    // Hits are passed whole.
    const until = ours.findIndex(({ hit }, i) => i >= 250 && hit !== ours[i - 1]?.hit)
    const [a, b] = phones(ours, ours.slice(0, until))
    b.read.take(a.show().code(0, NOW), NOW)
    a.read.take(b.show().code(0, NOW), NOW)
    expect(a.show().records).toBe(ours.length - until)
    expect(a.show().codes).toBeLessThan(10)
    const { codes } = b.reads(a, { from: 1001, lost: (code) => code % 3 === 0 })
    expect(codes).toBeLessThan(20)
    expect(ids(b)).toEqual(ids(a))
  })

  it('agree after any showing and reading of any histories, in codes of both sizes', () => {
    const all = [...ours, ...theirs].sort(compareRecords)
    const some = fc.subarray(all).map((records) => [...records].sort(compareRecords))
    const isLost = fc
      .array(fc.boolean(), { minLength: 7, maxLength: 7 })
      .filter((lost) => lost.includes(false))
    fc.assert(
      fc.property(some, some, isLost, fc.integer({ min: 0, max: 3000 }), (one, two, gone, from) => {
        const [a, b] = phones(one, two)
        const lost = (code: number) => gone[code % 7] === true
        b.reads(a, { from, lost, size: 'coarse' })
        a.reads(b, { from, lost })
        const union = [...new Set([...one, ...two])].sort(compareRecords).map(({ id }) => id)
        expect(ids(a)).toEqual(union)
        expect(ids(b)).toEqual(union)
      }),
      { numRuns: 25 },
    )
  })

  it('go on where they broke off, for ten minutes', () => {
    const [a, b] = phones()
    const shown = a.show()
    const half = Math.floor(shown.codes / 2)
    const read = (code: number, nowMs: number) => b.read.take(shown.code(code, nowMs), nowMs)
    const first = Array.from({ length: half }, (_, code) => read(code, NOW))
    const known = first.filter(({ is }) => is === 'part').length
    expect(known).toBeGreaterThan(1)
    expect(read(half + (half % 4 === 0 ? 1 : 0), NOW + 500_000)).toMatchObject({
      is: 'part',
      known: known + 1,
    })
    expect(read(half + 2, NOW + 1_200_000)).toMatchObject({ is: 'part', known: 1 })
  })

  it('that were read whole before one said who it is wait for that', () => {
    const [a, b] = phones()
    const shown = a.show()
    const told = Array.from({ length: shown.codes + 4 }, (_, code) => code)
      .filter((code) => code % 4 !== 0)
      .map((code) => b.read.take(shown.code(code, NOW), NOW))
    expect(told.at(-1)).toMatchObject({ is: 'part' })
    expect(told.some(({ is }) => is === 'whole')).toBe(false)
    expect(b.read.take(shown.code(0, NOW), NOW)).toMatchObject({ is: 'whole', records: ours })
    expect(b.read.take(shown.code(4, NOW), NOW)).toMatchObject({ is: 'hello' })
  })

  it.each([1, 12, 40, 300])(
    'are told apart where %i records of the second are seen before it said who it is',
    (count) => {
      const reader = new Phone('tttttttt', asKept(40, 9))
      const y = new Phone('yyyyyyyy', asKept(30, 1))
      const x = new Phone('xxxxxxxx', asKept(count, 2), -3_600_000)
      reader.reads(y)
      reader.read.begin()
      const { told } = reader.reads(x, { from: 1 })
      expect(told).toMatchObject({ is: 'whole', met: { phone: 'xxxxxxxx', aheadMs: -3_600_000 } })
      expect(reader.read.met?.phone).toBe('xxxxxxxx')
      expect(reader.read.isClosed()).toBe(true)
    },
  )

  it('are told apart where one was left half read for the other', () => {
    const reader = new Phone('tttttttt', [])
    const [x, y] = [new Phone('xxxxxxxx', ours), new Phone('yyyyyyyy', theirs)]
    const shown = x.show()
    for (let code = 1; code < 4; code++) reader.read.take(shown.code(code, NOW), NOW)
    expect(reader.reads(y).told).toMatchObject({ is: 'whole', met: { phone: 'yyyyyyyy' } })
    // Its own word on who it is is the last code that is read.
    let told: Told = { is: 'nothing' }
    for (let code = 4; code < 400 && told.is !== 'whole'; code++)
      if (code % 4 !== 0 || code > 100) told = reader.read.take(shown.code(code, NOW), NOW)
    expect(told).toMatchObject({ is: 'whole', records: ours, met: { phone: 'xxxxxxxx' } })
  })

  it('take as many codes as are told, where none is lost', () => {
    for (const count of [1, 12, 40, 300]) {
      const [a, b] = phones(asKept(count, 2), [])
      expect(b.reads(a).codes).toBeLessThanOrEqual(a.show(undefined, undefined).codes)
    }
  })

  it('that met once say so again at each code of what was read', () => {
    const [a, b] = phones()
    b.reads(a)
    expect(b.read.take(a.show().code(1, NOW), NOW)).toMatchObject({ is: 'whole', met: { phone: 'aaaaaaaa' } })
  })

  it('that are apart by their clocks know by how much, and refuse more than a day', () => {
    const [a, b] = [new Phone('aaaaaaaa', ours, 600_000), new Phone('bbbbbbbb', theirs)]
    b.reads(a)
    expect(b.read.met?.aheadMs).toBe(600_000)
    const wrong = new Phone('cccccccc', ours, -MOST_APART_MS - 1000)
    expect(new Phone('dddddddd', theirs).reads(wrong).told).toEqual({
      is: 'clock',
      aheadMs: -MOST_APART_MS - 1000,
    })
  })

  it('show the latest sitting of a long journal first, and the rest to a phone that said what it has', () => {
    const year = asKept(15_000, 3)
    const at = (year.at(-1)?.at ?? 0) + 60_000
    const a = showing({ phone: 'aaaaaaaa', records: year, size: 'fine', nowMs: at })
    expect(a.part).toBe(true)
    expect(a.records).toBeGreaterThan(50)
    expect(a.records).toBeLessThan(400)
    const asked = showing({ phone: 'aaaaaaaa', records: year, size: 'fine', nowMs: at, other: { heads: [] } })
    expect([asked.records, asked.part]).toEqual([year.length, false])
    console.log(`a year of ${year.length} records: ${asked.codes} codes`)
  })
})

describe('codes', () => {
  it('hold what their size can', () => {
    for (const size of ['fine', 'coarse'] as const) {
      const shown = new Phone('aaaaaaaa', ours).show(size)
      for (let code = 0; code < shown.codes + 8; code++)
        expect(shown.code(code, NOW).length).toBeLessThanOrEqual(SIZES[size].letters)
    }
  })

  it('of something else, of this phone itself, or damaged, change nothing', () => {
    const [a, b] = phones()
    const own = a.show().code(0, NOW)
    expect(a.read.take(own, NOW)).toEqual({ is: 'own' })
    for (const text of [
      '',
      'HTTPS://EXAMPLE.ORG',
      toBase45(Uint8Array.of(0xb2, 9, 9, 9)),
      frameText({ kind: 'handout', body: Uint8Array.of(1) }),
      frameText({ kind: 'hello', body: Uint8Array.of(1) }),
    ])
      expect(b.read.take(text, NOW)).toEqual({ is: 'nothing' })
    const bytes = new Uint8Array(300).fill(7)
    const block = { kind: 'block', of: 1, length: 300, index: 0, body: bytes } as const
    expect(b.read.take(frameText(block), NOW)).toEqual({ is: 'damaged' })
    const huge = { ...block, length: BLOCKS_MOST + 1, body: Uint8Array.of(1) }
    expect(b.read.take(frameText(huge), NOW)).toEqual({ is: 'nothing' })
    expect(b.read.met).toBeUndefined()
    expect(b.read.isClosed()).toBe(false)
    expect(b.reads(a).told.is).toBe('whole')
  })

  it('that make nothing clear nothing else that was read', () => {
    const [a, b] = phones()
    const shown = a.show()
    const read = (code: number) => b.read.take(shown.code(code, NOW), NOW)
    for (const code of [1, 2, 3]) read(code)
    const other = { kind: 'block', of: 1, length: 30, index: 0, body: new Uint8Array(30).fill(7) } as const
    expect(b.read.take(frameText(other), NOW)).toEqual({ is: 'damaged' })
    expect(read(5)).toMatchObject({ is: 'part', known: 4 })
  })

  it('of a newer program are told as such', () => {
    const bytes = packed(strToU8(JSON.stringify({ v: 2, writers: [], rows: {} })))
    const text = frameText({ kind: 'block', of: sumOf(bytes), length: bytes.length, index: 0, body: bytes })
    const { read } = new Phone('bbbbbbbb', [])
    for (let look = 0; look < 2; look++) expect(read.take(text, NOW)).toEqual({ is: 'newer' })
  })

  it('of another showing in between do not mix with the first', () => {
    const [a, b] = phones()
    const c = new Phone('cccccccc', asKept(280, 5))
    const [one, other] = [a.show(), c.show()]
    let told: Told = { is: 'nothing' }
    for (let code = 0; told.is !== 'whole' && code < 200; code++) {
      b.read.take(other.code(code % 5, NOW), NOW)
      told = b.read.take(one.code(code, NOW), NOW)
    }
    expect(told).toMatchObject({ is: 'whole', records: ours })
  })
})
