import { describe, expect, it } from 'vitest'
import type { CoverFacts } from '../../shared/nouns.ts'
import type { Armed, Card } from '../../src/table/card/card.ts'
import { setDown } from '../../src/table/card/last-hit.ts'
import type { Action } from '../../src/table/model/action.ts'
import { halfAt } from '../../src/table/model/halves.ts'
import { lastDip, potsOnTable } from '../../src/table/model/plan.ts'
import type { PotState, Table } from '../../src/table/model/state.ts'
import { BenchSitting, type SaidLine } from '../fixtures/bench-sitting.ts'
import { numbers } from '../fixtures/numbers.ts'
import { twelve } from '../fixtures/twelve.ts'

/** What a line names. */
interface Named {
  readonly numbers: readonly string[]
  readonly places: readonly string[]
  readonly buckets: readonly string[]
  readonly seconds: readonly number[]
  /** Pots and coats of the whole sitting. */
  readonly counts: readonly string[]
  /** How a coat goes on: of a dip of the whole pot nothing. */
  readonly covers: readonly string[]
}

/** What is said of a coat that is no dip of the whole pot. */
const COVERS: Readonly<Record<CoverFacts['kind'], readonly string[]>> = {
  full: [],
  inside: ['pour'],
  collar: ['collar'],
  toSkirt: ['to the skirt'],
  downTo: ['rim first'],
  upTo: ['foot first'],
  side: ['one half', 'other half'],
}

/** Reads a line as somebody hears it who sees nothing. */
function namedBy(words: readonly string[]): Named {
  const named = {
    numbers: [] as string[],
    places: [] as string[],
    buckets: [] as string[],
    seconds: [] as number[],
    counts: [] as string[],
    covers: [] as string[],
  }
  for (let i = 0; i < words.length; i++) {
    const word = words[i]!
    const next = words[i + 1]
    if (word.startsWith('name:')) named.buckets.push(word.slice(7))
    else if (/^[A-Z]$/.test(word)) {
      let board = word
      while (/^[A-Z]$/.test(words[i + 1] ?? '')) board += words[++i]
      named.places.push(`${board} ${words[++i]}`)
    } else if (Object.values(COVERS).flat().includes(word)) named.covers.push(word)
    else if (word === 'one second') named.seconds.push(1)
    else if (/^\d+$/.test(word) && next === 'and a half') named.seconds.push(Number(word) + 0.5)
    else if (/^\d+$/.test(word) && next === 'seconds') named.seconds.push(Number(word))
    else if (word === 'one coat') named.counts.push('1 coats')
    else if (word === 'one pot') named.counts.push('1 pots')
    else if (/^\d+$/.test(word) && next === 'pots') named.counts.push(`${word} pots`)
    else if (word === 'one dip') named.counts.push('1 dips')
    else if (/^\d+$/.test(word) && next === 'dips') named.counts.push(`${word} dips`)
    else if (/^\d+$/.test(word) && next === 'coats') named.counts.push(`${word} coats`)
    else if (/^\d+$/.test(word)) named.numbers.push(word)
  }
  return named
}

const placeOf = ({ facts }: PotState) => `${facts.place.board} ${facts.place.spot}`

const coverSaid = ({ potId, coat, cover }: Armed, table: Table): readonly string[] =>
  cover.kind === 'side'
    ? [COVERS.side[halfAt(table, table.pots[potId]!, coat, cover) ?? 0]!]
    : COVERS[cover.kind]

/** What the screen names at that moment. */
function namedOn(card: Card, table: Table, now: number): Named {
  const ids =
    card.kind === 'armed'
      ? [card.armed.potId]
      : card.kind === 'ready'
        ? card.potIds
        : 'potId' in card
          ? [card.potId]
          : []
  const pots = ids.flatMap((potId) => table.pots[potId] ?? [])
  const down = [table.pots[card.inHand ?? ''], setDown(table, now)].flatMap((pot) => pot ?? [])
  return {
    numbers: pots.map(({ facts }) => String(facts.number)),
    places: [...pots, ...down].map(placeOf),
    buckets:
      card.kind === 'armed'
        ? [card.armed.bucketId, card.armed.insteadOf ?? card.armed.bucketId]
        : 'bucketId' in card
          ? [card.bucketId]
          : [],
    seconds: card.kind === 'armed' ? [card.armed.holdS] : card.kind === 'ask-dose' ? [card.dip.holdS] : [],
    counts:
      card.kind === 'closed'
        ? [`${card.pots} pots`, `${card.coats} coats`]
        : card.kind === 'stir'
          ? [card.visit ? `${card.visit.dips} dips` : `${card.waiting} pots`]
          : [],
    covers:
      card.kind === 'armed'
        ? coverSaid(card.armed, table)
        : card.kind === 'stir' && card.collars
          ? COVERS.inside
          : [],
  }
}

/** How a line and the card that shows when it begins disagree, in words. */
function disagreements({ as, words, card, table, now }: SaidLine): readonly string[] {
  const said = namedBy(words)
  const shown = namedOn(card, table, now)
  const wrong = (Object.keys(said) as (keyof Named)[]).flatMap((what) =>
    said[what]
      .filter((each) => !(shown[what] as readonly unknown[]).includes(each))
      .map((each) => `${what} ${each}`),
  )
  // An armed card is said whole, and a call names every pot that its answer is for.
  const whole: readonly (keyof Named)[] =
    as === 'card' && card.kind === 'armed' && said.seconds.length > 0
      ? ['numbers', 'buckets', 'seconds', 'covers']
      : as === 'card' && (card.kind === 'ask-dose' || card.kind === 'stuck')
        ? ['numbers', 'places']
        : card.kind === 'closed'
          ? ['counts']
          : []
  const asked =
    as === 'call' && card.kind === 'ready' ? card.potIds.flatMap((id) => table.pots[id] ?? []) : []
  const missed = [
    ...whole.flatMap((what) =>
      shown[what].filter((each) => !(said[what] as readonly unknown[]).includes(each)),
    ),
    ...asked.map(placeOf).filter((each) => !said.places.includes(each)),
  ].map((each) => `not ${each}`)
  return [...wrong, ...missed].map((what) => `"${words.join(' ')}" on ${card.kind}: ${what}`)
}

/** Places that were called twice within a minute, in words. */
function repeated(lines: readonly SaidLine[]): readonly string[] {
  const saidAt = new Map<string, number>()
  return lines
    .filter(({ as }) => as === 'call')
    .flatMap(({ words, now }) =>
      // Where the pot in hand is set down is said before, and is no call.
      namedBy(words.slice(words.indexOf('next') + 1)).places.flatMap((place) => {
        const before = saidAt.get(place) ?? Number.NEGATIVE_INFINITY
        saidAt.set(place, now)
        return now - before < 55_000 ? [`${place} again after ${Math.round((now - before) / 1000)} s`] : []
      }),
    )
}

type Random = () => number
const pick = <T>(random: Random, from: readonly T[]): T => from[Math.floor(random() * from.length)]!

/** A slip, or somebody who wants something else. */
function slip(play: BenchSitting, random: Random): void {
  const pots = potsOnTable(play.table)
  const { potId } = pick(random, pots).facts
  const dipped = pots.flatMap((pot) => lastDip(pot) ?? [])
  const dip = dipped.length > 0 ? pick(random, dipped) : undefined
  const slips: readonly (Action | undefined)[] = [
    { do: 'take-back' },
    { do: 'put-back' },
    { do: 'hold' },
    { do: 'wash-off', potId },
    { do: 'pick', potId },
    { do: 'logged', potId, agoMin: 2 },
    dip && { do: 'held-longer', dipId: dip.dipId, byS: 2 },
    dip && { do: 'was-earlier', dipId: dip.dipId, byMin: 1 },
    dip && { do: 'was-other-pot', dipId: dip.dipId, potId },
    { do: 'put-off', potIds: [potId], later: true },
    { do: 'set-settings', settings: { staleMin: 4 } },
  ]
  const action = pick(random, slips)
  if (action) play.try(action)
}

/** Hands of 25 to 60 s a hit, now and then far quicker, now and then away for minutes. */
function sit(play: BenchSitting, seed: number, hits: number): BenchSitting {
  const random = numbers(seed)
  play.work = 3000
  play.ask().tick()
  for (let i = 0; i < hits; i++) {
    const r = random()
    play.wait(r < 0.1 ? 1 + 3 * random() : r < 0.15 ? 400 * random() : 25 + 35 * random())
    // An order that was searched on for is told anew, whatever the hands are at.
    if (random() < 0.1) play.ask().tick()
    if (random() < 0.12) slip(play, random)
    if (play.table.settings.potters === 2 && random() < 0.3) {
      play.potter = play.potter === 1 ? 0 : 1
      play.tick()
    }
    const { big, small, kind, heldBar } = play.card
    if (kind === 'closed') break
    const action = heldBar && random() < 0.1 ? heldBar : small && random() < 0.2 ? small : big
    // A hit on OUT ends its tone; a count is left alone but for a slip.
    if (action && kind !== 'out' && (kind !== 'count' || random() < 0.05)) play.try(action)
  }
  return play
}

const demo = () => {
  const play = new BenchSitting()
  play.act({ do: 'lay-demo' })
  return play
}
const table = () => {
  const play = new BenchSitting()
  for (const [i, events] of twelve().entries()) play.append(events, `laid-${i}`)
  play.nowMs += 3_600_000
  return play
}
const two = (play: BenchSitting) => {
  play.act({ do: 'set-settings', settings: { potters: 2 } })
  return play
}

const SITTINGS: readonly (readonly [string, () => BenchSitting, hits: number])[] = [
  ['the demo evening', demo, 90],
  ['twelve pots', table, 80],
  ['two at twelve pots', () => two(table()), 60],
  ['two at the demo evening', () => two(demo()), 60],
]
const SEEDS = process.env.PROVE ? [1, 2, 3, 4, 5, 6, 7, 8, 9, 10] : [1]

describe.each(SITTINGS)('over %s with slips', (_name, laid, hits) => {
  it.each(SEEDS)(
    'voice, notice and track say what shows, and no clock takes away a card that is said, or under hands (%d)',
    (seed) => {
      const play = sit(laid(), seed, hits)
      expect(play.lines.length).toBeGreaterThan(20)
      expect([...play.lines.flatMap(disagreements), ...play.broken]).toEqual([])
      expect(repeated(play.lines)).toEqual([])
      for (const { call, track } of play.notices) {
        const known = track.filter(
          ({ bucketId, at }) => bucketId === call.bucketId && Math.abs(at - call.at) < 1500,
        )
        expect(known, call.potIds.join()).not.toEqual([])
      }
    },
    120_000,
  )
})
