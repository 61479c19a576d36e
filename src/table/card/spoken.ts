import type { PotState, Table } from '../model/state.ts'
import { HAND_STEPS } from '../steps/step-rows.ts'
import type { PanAsk } from '../steps/wax-pan.ts'
import { type Armed, type Card, isHandCard } from './card.ts'

/**
 * One word the voice knows: a number to 99, a letter, a call such as `set down`, or `name:LETTER:ID` for a bucket,
 * said by the name the person recorded, else by its letter.
 */
export type Word = string

/** What is said once when a card comes. */
export interface Spoken {
  /** Another key is another thing to say. */
  readonly key: string
  readonly words: readonly Word[]
}

/** Pot numbers beyond this have no word; such a pot is called by its place, as is a lid. */
const LAST_NUMBER = 99

/** What the voice says of a card at the bench, if anything: a count and a ready call are said by their own sound. */
export function spokenOf(table: Table, card: Card): Spoken | undefined {
  const said = cardWords(table, card)
  const before = hitWords(table, said !== undefined)
  if (!said && !before) return undefined
  return {
    key: [before?.key, said?.key].filter(Boolean).join(' '),
    words: [...(before?.words ?? []), ...(said?.words ?? [])],
  }
}

/** What the last hit asks for besides the next card: where to set the pot down, or that a hit was taken back. */
function hitWords(table: Table, goesOn: boolean): Spoken | undefined {
  if (table.takenBack) return { key: `back:${table.takenBack.hit}`, words: ['taken back'] }
  const last = table.hits.at(-1)
  const pot = last?.kind === 'sponged' ? table.pots[last.potId ?? ''] : undefined
  return last && pot && { key: `down:${last.hit}`, words: [...downAt(pot), ...(goesOn ? ['next'] : [])] }
}

function cardWords(table: Table, card: Card): Spoken | undefined {
  if (isHandCard(card)) {
    const pot = table.pots[card.potId]
    return pot && { key: `${card.kind} ${card.potId}`, words: [HAND_STEPS[card.kind].spoken, ...place(pot)] }
  }
  switch (card.kind) {
    case 'stir': {
      const stirredAt = table.buckets[card.bucketId]?.stirredAt ?? ''
      const pour = card.collars ? ['pour'] : []
      return {
        key: `stir ${card.bucketId} ${stirredAt}`,
        words: ['stir', ...bucket(table, card.bucketId), ...pots(card.dips ?? card.waiting), ...pour],
      }
    }
    case 'armed':
      return armedWords(table, card.armed, card.inHand)
    case 'return':
      return {
        key: `return ${card.bucketId}`,
        words: ['return it to', ...bucket(table, card.bucketId)],
      }
    case 'wax-pan':
      return card.why === 'waxed' ? { key: 'pan waxed', words: ['wax pan is on'] } : undefined
    case 'finished':
      return { key: 'finished', words: ['all coats are on'] }
    default:
      return undefined
  }
}

/** What is said each time the wax pan is asked about, whatever card is shown. */
export const panWords = (ask: PanAsk | undefined): Spoken | undefined =>
  ask && { key: `pan ${ask.times}`, words: ['wax pan is on', 'are you beside it'] }

/** The first dip after a stir names pot and glaze; in a run of alike pots place and seconds are enough. */
function armedWords(table: Table, armed: Armed, inHand: string | undefined): Spoken | undefined {
  const pot = table.pots[armed.potId]
  if (!pot) return undefined
  const held = inHand === undefined ? undefined : table.pots[inHand]
  const down = held ? [...downAt(held), 'next'] : []
  const which = goesOn(table, armed.bucketId)
    ? place(pot)
    : [...numberOf(pot), ...bucket(table, armed.bucketId)]
  return {
    key: `armed ${armed.potId} ${armed.coat} ${armed.bucketId} ${armed.holdS} ${inHand ?? ''}`,
    words: [...down, ...which, ...seconds(armed.holdS)],
  }
}

/** Something was dipped in this bucket since its last stir. */
function goesOn(table: Table, bucketId: string): boolean {
  const since = table.buckets[bucketId]?.stirredAt ?? Number.NEGATIVE_INFINITY
  return Object.values(table.pots).some((pot) =>
    pot.dips.some((dip) => dip.bucketId === bucketId && dip.tappedAt >= since),
  )
}

const place = ({ facts }: PotState): readonly Word[] => [...facts.place.board, String(facts.place.spot)]
const downAt = (pot: PotState): readonly Word[] => ['set down', 'at', ...place(pot)]
const numberOf = (pot: PotState): readonly Word[] =>
  pot.facts.number > LAST_NUMBER || pot.facts.lidOf !== undefined ? place(pot) : [String(pot.facts.number)]

const pots = (n: number): readonly Word[] => (n < 1 ? [] : n === 1 ? ['one pot'] : [String(n), 'pots'])

function seconds(s: number): readonly Word[] {
  const whole = Math.floor(s)
  if (s === 1) return ['one second']
  return s - whole >= 0.5 ? [String(whole), 'and a half', 'seconds'] : [String(whole), 'seconds']
}

/** A bucket as the voice calls it. */
export function bucket(table: Table, bucketId: string): readonly Word[] {
  const facts = table.buckets[bucketId]?.facts
  return facts ? [`name:${facts.letter}:${bucketId}`] : []
}
