import type { AppGuess } from '../../../shared/opening.ts'
import { coatOf } from '../fired/fired-coats.ts'
import { firedOf, type Judgement } from '../fired/fired-pot.ts'
import { coneDown, loadOf } from '../load/loads.ts'
import { coatsOn } from '../model/plan.ts'
import type { DipState, PotState, Table } from '../model/state.ts'
import { placeIn } from './queue.ts'

/** One thing that happened to a pot. `at`: table time, ms. */
export type StoryLine = { readonly at: number } & (
  | { readonly what: 'waxed' | 'foot' | 'lit' | 'off' | 'opened' }
  /** A coat with its dry thickness where it is told by, mm; undefined where it cannot be told. */
  | { readonly what: 'dipped'; readonly dip: DipState; readonly likelyMm: number | undefined }
  | { readonly what: 'loaded'; readonly place: string }
  | { readonly what: 'cone'; readonly cone: string }
  | { readonly what: 'guessed'; readonly mm: number | 'shelf'; readonly app: AppGuess | undefined }
  | { readonly what: 'judged' | 'looked'; readonly look: Judgement }
)

/** How thick each coat is where it is told by, mm, by its dip; none where coats cannot be told. */
export const thicknessOf = (table: Table, pot: PotState): ReadonlyMap<string, number> =>
  new Map(
    pot.uncounted
      ? []
      : coatsOn(pot).flatMap(({ dipId }) => {
          const mm = coatOf(table, pot, dipId)
          return mm === undefined ? [] : [[dipId, mm] as const]
        }),
  )

/** All that happened to a pot, from the wax to the last look, in the order of its own times. */
export function storyOf(table: Table, pot: PotState): readonly StoryLine[] {
  const { found, looks, guess, appGuess, loadId } = firedOf(pot)
  const key = pot.facts.lidOf ?? pot.facts.potId
  const load = loadId === undefined ? loadOf(table, key) : table.loads?.[loadId]
  const thick = thicknessOf(table, pot)
  const lines: StoryLine[] = coatsOn(pot).map((dip) => ({
    at: dip.outAt,
    what: 'dipped',
    dip,
    likelyMm: thick.get(dip.dipId),
  }))
  const add = (what: 'waxed' | 'foot' | 'lit' | 'off' | 'opened', at: number | undefined) => {
    if (at !== undefined) lines.push({ at, what })
  }
  add('waxed', pot.waxedAt)
  add('foot', pot.footSignedAt)
  const place = placeIn(table, pot)
  const standing = load?.things[key]
  const loadedAt = standing && load?.levels[`${standing.column} ${standing.storey}`]?.loadedAt
  if (place !== undefined && loadedAt !== undefined) lines.push({ at: loadedAt, what: 'loaded', place })
  if (load) {
    add('lit', load.litAt)
    const down = coneDown(load)
    if (down !== undefined) lines.push({ at: down.at, what: 'cone', cone: down.cone })
    add('off', load.offAt)
    add('opened', load.openedAt)
  }
  if (guess) lines.push({ at: guess.at, what: 'guessed', mm: guess.mm, app: appGuess })
  if (found) lines.push({ at: found.at, what: 'judged', look: found })
  for (const look of looks) lines.push({ at: look.at, what: 'looked', look })
  return lines.sort((a, b) => a.at - b.at)
}

/** Pots that came out of a fire, or whose kiln is open, those judged last first. */
export const firedPots = (table: Table): readonly PotState[] =>
  Object.values(table.pots)
    .filter((pot) => endOf(table, pot) > 0)
    .sort((a, b) => endOf(table, b) - endOf(table, a))

/** When it was judged, or else taken out, or its kiln was opened; 0 while it is none of these. */
export function endOf(table: Table, pot: PotState): number {
  const { found, outAt } = firedOf(pot)
  return found?.at ?? outAt ?? openedAt(table, pot) ?? 0
}

const opened = new WeakMap<NonNullable<Table['loads']>, ReadonlyMap<string, number>>()

/** When the kiln of a pot was opened, table time, ms. */
function openedAt({ loads = {} }: Table, { facts }: PotState): number | undefined {
  let known = opened.get(loads)
  if (!known) {
    const all = Object.values(loads).toSorted((a, b) => a.begunAt - b.begunAt)
    known = new Map(
      all.flatMap(({ things, openedAt }) =>
        openedAt === undefined ? [] : Object.keys(things).map((key) => [key, openedAt] as const),
      ),
    )
    opened.set(loads, known)
  }
  return known.get(facts.lidOf ?? facts.potId)
}

/** Names of the glazes on a pot and of its stack, as they are now. */
export function namesOn(table: Table, pot: PotState): readonly string[] {
  const glazes = [...new Set(coatsOn(pot).map(({ bucketId }) => bucketId))].flatMap(
    (bucketId) => (table.buckets[bucketId] ?? table.removed?.[bucketId])?.facts.name ?? [],
  )
  const stack = pot.ownPlan ? undefined : table.stacks[pot.facts.stackId]?.name
  return stack === undefined ? glazes : [stack, ...glazes]
}

/**
 * Whether a pot answers to all words of a search: a whole number is the pot's, one with a point its shelf place, anything
 * else a part of a name of stack or glaze, or of what `said` says of it: its month, what was found.
 */
export function answers(table: Table, pot: PotState, search: string, said: string): boolean {
  const words = search.trim().toLowerCase().split(/\s+/).filter(Boolean)
  if (words.length === 0) return true
  const text = `${namesOn(table, pot).join(' ')} ${said}`.toLowerCase()
  return words.every((word) =>
    /^\d+$/.test(word)
      ? pot.facts.number === Number(word) || text.split(/\s+/).includes(word)
      : /^\d+\.\d+$/.test(word)
        ? placeIn(table, pot) === word
        : text.includes(word),
  )
}
