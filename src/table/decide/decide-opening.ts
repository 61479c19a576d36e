import type { TableEvent } from '../../../shared/events.ts'
import type { RunFacts } from '../../../shared/opening.ts'
import { firedOf, runFound, saysSame } from '../fired/fired-pot.ts'
import { appGuess } from '../fired/guess.ts'
import { loadOf } from '../load/loads.ts'
import type { Action, Refusal } from '../model/action.ts'
import { outOfRange, PHOTO_MOST_BYTES } from '../model/limits.ts'
import type { LoadState } from '../model/load-state.ts'
import type { OpeningAction } from '../model/opening-action.ts'
import { coatsOn } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { outsideWall } from '../opening/wall.ts'
import { checked, firstWrong } from './check-entry.ts'
import type { Decision } from './decision.ts'

const isOfOpening = (action: Action): action is OpeningAction => ACTIONS.has(action.do)
const ACTIONS: ReadonlySet<string> = new Set<OpeningAction['do']>([
  'guess',
  'take-out',
  'judge',
  'look-again',
  'keep-photo',
  'take-lesson',
  'take-limit',
])

/** Results behind a lesson. */
const MOST_RESULTS = 9999

const not = (field: string, pot?: PotState): Refusal => ({
  code: 'at-kiln',
  field,
  ...(pot ? { facts: { number: pot.facts.number } } : {}),
})

/** Guessing and judging fired pots: nothing is stored unless all of it can be. Undefined for what is done elsewhere. */
export function decideOpening(table: Table, action: Action): Decision | undefined {
  if (!isOfOpening(action)) return undefined
  if (action.do === 'take-lesson' || action.do === 'take-limit') return taken(table, action)
  if (action.do === 'take-out') return allOut(table, action.potIds)
  const found = potAndLoad(table, action.potId)
  return found ? ofPot(table, found.pot, found.load, action) : { refusal: { code: 'unknown-pot' } }
}

interface InLoad {
  readonly pot: PotState
  readonly load?: LoadState
}

/** A pot and the load it is of. One that was taken off the board while it was in the kiln comes out all the same. */
function potAndLoad(table: Table, potId: string): InLoad | undefined {
  const pot = table.pots[potId]
  const load = pot && loadOf(table, pot.facts.lidOf ?? potId)
  if (!pot || (pot.gone && !pot.fired && !load)) return undefined
  return load ? { pot, load } : { pot }
}

/** What takes a pot out of its load, with the place that it had there; nothing where it is out. */
function outOf({ pot, load }: InLoad): TableEvent[] {
  if (firedOf(pot).outAt !== undefined) return []
  const { potId, lidOf } = pot.facts
  const place = load?.things[lidOf ?? potId]?.place
  const of = load ? { loadId: load.loadId } : {}
  return [{ kind: 'taken-out', potId, ...of, ...(place === undefined ? {} : { place }) }]
}

const stillShut = ({ pot, load }: InLoad): Refusal | undefined =>
  load && load.openedAt === undefined ? not('not-open', pot) : undefined

function allOut(table: Table, potIds: readonly string[]): Decision {
  const found = potIds.map((potId) => potAndLoad(table, potId))
  const known = found.filter((one) => one !== undefined)
  if (known.length < found.length) return { refusal: { code: 'unknown-pot' } }
  const events = known.flatMap(outOf)
  if (events.length === 0) return { refusal: { code: 'nothing-to-do' } }
  return checked(
    known.map(stillShut).find((wrong) => wrong !== undefined),
    ...events,
  )
}

function ofPot(
  table: Table,
  pot: PotState,
  load: LoadState | undefined,
  action: Exclude<OpeningAction, { do: 'take-out' | 'take-lesson' | 'take-limit' }>,
): Decision {
  const { potId } = action
  const fired = firedOf(pot)
  const of = { potId, ...(load ? { loadId: load.loadId } : {}) }
  const inLoad: InLoad = load ? { pot, load } : { pot }
  const shut = stillShut(inLoad)
  switch (action.do) {
    case 'guess': {
      const { mm, app } = action
      const known = load?.openedAt !== undefined || fired.found || fired.outAt !== undefined
      const refusal = known
        ? not('lid-is-up', pot)
        : fired.guess
          ? not('guessed-already', pot)
          : mm === 'shelf'
            ? undefined
            : farther(table, pot, 'runMm', mm)
      return checked(refusal, { kind: 'guessed', ...of, mm, ...(app ? { app } : {}) })
    }
    case 'judge': {
      const { run, stuck, faults } = action
      const { found, outAt } = fired
      // What stands already is no new look: it keeps its day.
      const same =
        outAt !== undefined &&
        found?.loadId === load?.loadId &&
        found &&
        saysSame(found, { ...action, run: runFound(pot, action) })
      if (same) return { refusal: { code: 'nothing-to-do' } }
      return checked(shut ?? runRefusal(table, pot, run), ...outOf(inLoad), ...unguessed(table, inLoad), {
        kind: 'judged',
        ...of,
        run,
        faults: [...new Set(faults)],
        ...(stuck ? { stuck } : {}),
      })
    }
    case 'look-again':
      return checked(fired.found ? undefined : not('not-judged', pot), {
        kind: 'judged',
        ...of,
        faults: [...new Set(action.faults)],
        second: true,
      })
    case 'keep-photo': {
      const { photoId, side, bytes } = action
      const most = PHOTO_MOST_BYTES
      const wrong: Refusal | undefined =
        bytes >= 1 && bytes <= most
          ? undefined
          : { code: 'out-of-range', field: 'bytes', facts: { value: bytes, least: 1, most } }
      return checked(shut ?? wrong, { kind: 'photo-kept', ...of, photoId, side, bytes })
    }
  }
}

/** The app's guess of a pot that nobody guessed, as it was when the lid went up: fixed before what was found is known. */
function unguessed(table: Table, { pot, load }: InLoad): TableEvent[] {
  const { found, appGuess: known } = firedOf(pot)
  const app = load && !known && !found ? appGuess(table, pot, load) : undefined
  return load && app ? [{ kind: 'guessed', potId: pot.facts.potId, loadId: load.loadId, app }] : []
}

/** Why a run cannot be as it was said: on a bare pot, longer than the wall, a drip shorter than the front. */
function runRefusal(table: Table, pot: PotState, run: RunFacts): Refusal | undefined {
  if (run.is === 'none' || (run.is === 'measured' && run.mm === 0 && !run.longestMm)) return undefined
  if (coatsOn(pot).length === 0 && !pot.coatsCounted && !pot.uncounted) return not('bare-pot', pot)
  if (run.is !== 'measured') return undefined
  const { mm, longestMm } = run
  const wrong = farther(table, pot, 'runMm', mm)
  if (wrong || longestMm === undefined || longestMm === 'shelf') return wrong
  return farther(table, pot, 'longestMm', longestMm, mm)
}

/** A run beyond the shelf, or below `least`: it has a place of its own there. */
function farther(
  table: Table,
  pot: PotState,
  field: 'runMm' | 'longestMm',
  mm: number,
  least = 0,
): Refusal | undefined {
  const most = Math.floor(outsideWall(table, pot).roomMm)
  // Said so that no number passes it that is none.
  return mm >= least && mm <= most
    ? undefined
    : { code: 'out-of-range', field, facts: { value: mm, least, most } }
}

function taken(table: Table, action: Extract<OpeningAction, { do: 'take-lesson' | 'take-limit' }>): Decision {
  const { bucketId, underId, of, results } = action
  if (
    !table.buckets[bucketId] ||
    (underId !== undefined && (!table.buckets[underId] || underId === bucketId))
  )
    return { refusal: { code: 'unknown-bucket' } }
  const about = {
    bucketId,
    ...(underId === undefined ? {} : { underId }),
    of,
    ...(results === undefined ? {} : { results }),
  }
  const counts: Refusal | undefined =
    Number.isInteger(of) && of >= 0 && of <= MOST_RESULTS
      ? undefined
      : { code: 'out-of-range', field: 'of', facts: { value: of, least: 0, most: MOST_RESULTS } }
  if (action.do === 'take-limit') {
    const { limitMm } = action
    return checked(counts ?? outOfRange('limitMm', limitMm), { kind: 'limit-taken', ...about, limitMm })
  }
  const { factor, low, high, drip } = action
  const wrong =
    firstWrong([
      ['factor', factor],
      ['factor', low],
      ['factor', high],
      ['drip', drip],
    ]) ??
    (low <= factor && factor <= high
      ? undefined
      : { code: 'out-of-range' as const, field: 'factor', facts: { value: factor, least: low, most: high } })
  const dripped = drip === undefined ? {} : { drip }
  return checked(counts ?? wrong, { kind: 'lesson-taken', ...about, factor, low, high, ...dripped })
}
