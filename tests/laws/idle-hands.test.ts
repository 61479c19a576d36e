import { expect, it } from 'vitest'
import { type Card, type Due, potsOnCard } from '../../src/table/card/card.ts'
import { isFresh } from '../../src/table/model/fresh.ts'
import { potsOnTable } from '../../src/table/model/plan.ts'
import { mayBeDipped, nextBucket } from '../../src/table/steps/steps.ts'
import { stepsOf } from '../../src/table/steps/work.ts'
import { numbers } from '../fixtures/numbers.ts'
import { twelve } from '../fixtures/twelve.ts'
import { PlannedPlay } from '../unit/table/planned.ts'

const MIN_MS = 60_000
/** A dip takes a minute of the hands: a shorter wait has no room for one. With the step of the clock. */
const LONGEST_IDLE_MS = 75_000
/** A wipe takes less. */
const LONGEST_UNWIPED_MS = 35_000

const demo = () => new PlannedPlay().act({ do: 'lay-demo' })
const table = () => {
  const play = new PlannedPlay()
  for (const [i, events] of twelve().entries()) play.append(events, `laid-${i}`)
  return play.wait(3600)
}

/** Pots are kept for an opening that is saved, but not by hands that have so long nothing else to do. */
const LONGEST_KEPT_MS = 31 * MIN_MS

/** Hands told to be free until an hour come back a little before it. */
const CALLED_SOONER_MS = 20_000

/** What a wait says of the pots that its key is for: all that it names. */
const namedOn = (card: Extract<Card, { kind: 'wait' }>): readonly (string | undefined)[] => [
  card.next?.potId,
  card.touch?.potId,
  ...(card.kept ?? []).flatMap(({ potIds }) => potIds),
  ...(card.next?.potId === undefined ? card.after.map(({ potId }) => potId) : []),
]

/** A sitting by the cards, of `minutes`; a stir takes `stirS`, all else its time by `pace`, and now and then a pot is washed off. What a potter would mind. */
function minded(
  play: PlannedPlay,
  seed: number,
  minutes: number,
  stirS: number,
  washes: number,
  pace = 1,
): string[] {
  const random = numbers(seed)
  const until = play.nowMs + minutes * MIN_MS
  const found: string[] = []
  let idleSince: number | undefined
  let stirred = ''
  let free: { readonly next: Due; readonly schedule: unknown } | undefined
  play.work = 20_000
  play.ask()
  while (play.nowMs < until) {
    const { card, table, nowMs } = play
    const { openBucket = '' } = table
    const clock = new Date(nowMs).toISOString().slice(11, 19)
    const stands = stepsOf(table, nowMs).filter(
      ({ pot, step }) =>
        step.is === 'wipe' ||
        (mayBeDipped(step, nowMs) &&
          nextBucket(table, pot) === openBucket &&
          isFresh(table, openBucket, nowMs)),
    )
    const idle = card.kind === 'wait' && stands.length > 0
    idleSince = idle ? (idleSince ?? nowMs) : undefined
    if (
      idleSince !== undefined &&
      nowMs - idleSince >
        (stands.some(({ step }) => step.is === 'wipe') ? LONGEST_UNWIPED_MS : LONGEST_IDLE_MS)
    )
      found.push(`${clock} idle beside ${stands.map(({ pot }) => pot.facts.number).join()}`)
    if (card.kind === 'stir' && !card.change && card.stirredAt !== undefined) {
      const key = `${card.bucketId} ${card.stirredAt}`
      if (key !== stirred && nowMs - card.stirredAt < (table.settings.staleMin / 2) * MIN_MS)
        found.push(`${clock} ${card.bucketId} again after ${(nowMs - card.stirredAt) / 1000} s`)
      stirred = key
    }
    const { next, kept = [], reason } = card.kind === 'wait' ? card : {}
    if (kept.some(({ bucketId }) => bucketId !== openBucket) && next?.what !== 'foot-check' && !reason)
      found.push(`${clock} kept for ${kept[0]?.bucketId}, nobody says why`)
    for (const { bucketId, at, potIds } of kept) {
      if (bucketId === openBucket && isFresh(table, openBucket, nowMs + MIN_MS))
        found.push(`${clock} kept for ${bucketId}, which stands open and is good`)
      for (const due of card.kind === 'wait' ? [...(next ? [next] : []), ...card.after] : [])
        if (due.what === 'dip' && due.potId && potIds.includes(due.potId) && due.at !== at)
          found.push(`${clock} ${due.potId} has two hours`)
    }
    if (card.kind === 'wait' && next && kept.length > 0 && next.at - nowMs > LONGEST_KEPT_MS)
      found.push(`${clock} nothing to do until ${next.at - nowMs} ms, ${kept[0]?.potIds} kept all the while`)
    if (card.kind === 'wait' && card.offer?.do === 'pick' && !namedOn(card).includes(card.offer.potId))
      found.push(`${clock} the key is for ${card.offer.potId}, the card is not`)
    const told = free?.schedule === play.schedule ? free : undefined
    if (told && card.kind !== 'wait' && told.next.at - nowMs > CALLED_SOONER_MS)
      found.push(
        `${clock} ${card.kind} ${potsOnCard(card)}, ${told.next.at - nowMs} ms before ${told.next.what}`,
      )
    free = next && { next, schedule: play.schedule }
    if (reason === 'heldSavesStir' && kept.length === 0 && next?.what.endsWith('dries'))
      found.push(`${clock} ${next.potId} dries on purpose`)
    if (card.kind === 'closed') break
    if (!card.big || card.kind === 'count' || (card.kind === 'drip' && !card.done)) {
      play.wait(card.kind === 'wait' ? 10 : 2)
      continue
    }
    play.wait(card.kind === 'ready' ? 8 : card.kind === 'stir' ? stirS : (15 + 25 * random()) / pace)
    if (random() < washes) {
      const coated = potsOnTable(play.table).filter(({ dips }) => dips.length > 0)
      const pot = coated[Math.floor(random() * coated.length)]
      if (pot) play.try({ do: 'wash-off', potId: pot.facts.potId })
      play.wait(1)
    }
    if (play.card.kind === card.kind && play.card.big) play.try(play.card.big)
  }
  return found
}

it.each<[string, () => PlannedPlay, number, number, number, number, number?]>([
  ['the demo evening, stirred in a hurry', demo, 1, 30, 4, 0],
  ['the demo evening, stirred in a hurry', demo, 2, 25, 4, 0],
  ['the demo evening, at twice the pace, some washed off', demo, 3, 20, 60, 0.04, 2],
  ['the demo evening, at ten times the pace', demo, 3, 20, 4, 0, 10],
  ['twelve pots, some washed off', table, 1, 60, 45, 0.06],
  ['twelve pots, some washed off, to the end', table, 2, 240, 45, 0.03],
])(
  '%s: no hands stand idle beside a pot that could go, no stir is asked for twice, what is kept is kept for a reason, a key is for the pot that the card names, who is free until an hour is not called before it',
  (_name, laid, seed, minutes, stirS, washes, pace) => {
    expect(minded(laid(), seed, minutes, stirS, washes, pace)).toEqual([])
  },
  120_000,
)
