import type { CoverFacts } from '../../../shared/nouns.ts'
import { type Half, halfAt } from '../model/halves.ts'
import { lastHit, potterOf } from '../model/potters.ts'
import type { PotState, Table } from '../model/state.ts'
import { HAND_STEPS } from '../steps/step-rows.ts'
import type { PanAsk } from '../steps/wax-pan.ts'
import { type Armed, type Card, isHandCard } from './card.ts'
import { HIT_TOLD_MS, setDown } from './last-hit.ts'

/**
 * One word the voice knows: a number to 99, a letter, a call such as `set down`, or `name:LETTER:ID` for a bucket,
 * said by the name the person recorded, else by its letter.
 */
export type Word = string

/** Something that is said once. */
export interface Line {
  /** Another key is another thing to say. */
  readonly key: string
  readonly words: readonly Word[]
}

/** What the voice says at the bench: of the last hit, and of the card that came. */
export interface Spoken {
  readonly hit?: Line
  readonly card?: Line
}

/** Pot numbers beyond this have no word; such a pot is called by its place, as is a lid. */
const LAST_NUMBER = 99

/** A hit longer ago than this is not spoken of any more, ms. */
const HIT_SAID_MS = 3000

/** What the voice says beside a card, if anything: a count and a ready call are said by their own sound. */
export function spokenOf(table: Table, card: Card, now: number): Spoken {
  const line = cardWords(table, card)
  const held = table.pots[card.inHand ?? '']
  const down = held ? [...downAt(held), 'next'] : []
  const said = line && {
    // Turned to the other pair of hands, it is their line.
    key: `${potterOf(table)} ${line.key} ${card.inHand ?? ''}`,
    words: [...down, ...line.words],
  }
  const before = lastHitWords(table, now)
  return { ...(before ? { hit: before } : {}), ...(said ? { card: said } : {}) }
}

/** What of `spoken` was not said yet, in order; undefined for nothing new. */
export function newWords(spoken: Spoken, before: Spoken): readonly Word[] | undefined {
  const card = spoken.card && spoken.card.key !== before.card?.key ? spoken.card.words : []
  const hit = card.length > 0 ? hitFirst(spoken, before) : hitWords(spoken, before)
  return hit.length + card.length === 0 ? undefined : [...hit, ...card]
}

const hitWords = ({ hit }: Spoken, before: Spoken): readonly Word[] =>
  hit && hit.key !== before.hit?.key ? hit.words : []

/** What of the last hit was not said yet, as it is said before something else. */
export function hitFirst(spoken: Spoken, before: Spoken): readonly Word[] {
  const words = hitWords(spoken, before)
  return words.length === 0 || spoken.hit?.key.startsWith('back') ? words : [...words, 'next']
}

/** What the last hit asks for besides the next card: where to set the pot down, or that a hit was taken back. */
function lastHitWords(table: Table, now: number): Line | undefined {
  const { takenBack } = table
  if (takenBack)
    return now - takenBack.at < HIT_TOLD_MS
      ? { key: `back:${takenBack.hit}`, words: ['taken back'] }
      : undefined
  const last = lastHit(table)
  // With a call before it, it is heard while the screen still shows it.
  const pot = last && now - last.at < HIT_SAID_MS ? setDown(table, now) : undefined
  return pot && { key: `down:${last?.hit}`, words: downAt(pot) }
}

function cardWords(table: Table, card: Card): Line | undefined {
  if (isHandCard(card)) {
    const pot = table.pots[card.potId]
    return pot && { key: `${card.kind} ${card.potId}`, words: [HAND_STEPS[card.kind].spoken, ...named(pot)] }
  }
  switch (card.kind) {
    case 'stir': {
      const stirredAt = table.buckets[card.bucketId]?.stirredAt ?? ''
      const pour = card.collars ? ['pour'] : []
      return {
        key: `stir ${card.bucketId} ${stirredAt}`,
        words: [
          'stir',
          ...bucket(table, card.bucketId),
          ...(card.visit ? dips(card.visit.dips) : pots(card.waiting)),
          ...pour,
        ],
      }
    }
    case 'armed':
      return armedWords(table, card.armed)
    case 'return':
      return {
        key: `return ${card.bucketId}`,
        words: ['return it to', ...bucket(table, card.bucketId)],
      }
    case 'ask-dose':
    case 'stuck':
      return decisionWords(table, card)
    case 'wax-pan':
      return card.why === 'beside' ? undefined : { key: `pan ${card.why}`, words: ['wax pan is on'] }
    case 'lid':
      return { key: `lid ${card.bucketId}`, words: ['lid on', ...bucket(table, card.bucketId)] }
    case 'tools':
      return { key: 'tools', words: ['tools', 'settling bucket'] }
    case 'floor':
      return { key: 'floor', words: ['wet mop'] }
    case 'closed': {
      const { pots: of, coats: n } = card
      if (of < 1 || Math.max(of, n) > LAST_NUMBER) return undefined
      return { key: `closed ${of} ${n}`, words: [...pots(of), ...coats(n)] }
    }
    default:
      return undefined
  }
}

/** What nobody but the person knows is asked for by the pot it is about. */
function decisionWords(table: Table, card: Extract<Card, { kind: 'ask-dose' | 'stuck' }>): Line | undefined {
  const pot = table.pots[card.potId]
  if (!pot) return undefined
  const s = card.kind === 'ask-dose' ? seconds(card.dip.holdS) : []
  const about = card.kind === 'ask-dose' ? card.dip.dipId : card.why
  return {
    key: `${card.kind} ${card.potId} ${about}`,
    words: [...named(pot), ...(s.length > 0 ? ['was it', ...s] : ['you decide'])],
  }
}

/** What is said each time the wax pan is asked about, whatever card is shown. */
export const panWords = (ask: PanAsk | undefined): Line | undefined =>
  ask && { key: `pan ${ask.times}`, words: ['wax pan is on', 'are you beside it'] }

/** Pot, place, glaze and seconds: hands that are wet follow the voice alone. */
function armedWords(table: Table, armed: Armed): Line | undefined {
  const pot = table.pots[armed.potId]
  if (!pot) return undefined
  const into = bucket(table, armed.bucketId)
  const how = howWords(armed.cover, halfAt(table, pot, armed.coat, armed.cover))
  const s = seconds(armed.holdS)
  // What the bar asks twice is asked by the voice too.
  const coat =
    armed.insteadOf !== undefined
      ? [...how, ...into, ...s, 'the plan says', ...bucket(table, armed.insteadOf)]
      : armed.hasIt
        ? ['already has', ...into, 'really again', ...how, ...s]
        : [...how, ...into, ...s]
  return {
    key: `armed ${armed.potId} ${armed.coat} ${armed.bucketId} ${armed.holdS} ${how}`,
    words: [...named(pot), ...coat],
  }
}

/** How a coat goes on that is not a dip of the whole pot. How far down or up, the screen says. */
function howWords(cover: CoverFacts, half: Half | undefined): readonly Word[] {
  switch (cover.kind) {
    case 'full':
      return []
    case 'inside':
      return ['pour']
    case 'side':
      return [half === 1 ? 'other half' : 'one half']
    default:
      return [COVER_WORDS[cover.kind]]
  }
}

const COVER_WORDS = {
  collar: 'collar',
  toSkirt: 'to the skirt',
  downTo: 'rim first',
  upTo: 'foot first',
} as const

const place = ({ facts }: PotState): readonly Word[] => [...facts.place.board, String(facts.place.spot)]
const downAt = (pot: PotState): readonly Word[] => ['set down', 'at', ...place(pot)]

/** A pot by its number, where that has a word, and its place. */
const named = (pot: PotState): readonly Word[] =>
  pot.facts.number > LAST_NUMBER || pot.facts.lidOf !== undefined
    ? place(pot)
    : [String(pot.facts.number), ...place(pot)]

const pots = (n: number): readonly Word[] => (n < 1 ? [] : n === 1 ? ['one pot'] : [String(n), 'pots'])

const coats = (n: number): readonly Word[] => (n === 1 ? ['one coat'] : [String(n), 'coats'])

const dips = (n: number): readonly Word[] => (n < 1 ? [] : n === 1 ? ['one dip'] : [String(n), 'dips'])

/** Whole and half seconds; of others the voice has no words, and says nothing that is not so. */
function seconds(s: number): readonly Word[] {
  const whole = Math.floor(s)
  if (s === 1) return ['one second']
  if (whole > LAST_NUMBER || (s - whole !== 0 && s - whole !== 0.5)) return []
  return s > whole ? [String(whole), 'and a half', 'seconds'] : [String(whole), 'seconds']
}

/** A bucket as the voice calls it. */
export function bucket(table: Table, bucketId: string): readonly Word[] {
  const facts = table.buckets[bucketId]?.facts
  return facts ? [`name:${facts.letter}:${bucketId}`] : []
}
