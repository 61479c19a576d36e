import type { AppGuess, Fault, PhotoSide, RunFacts, Stuck } from '../../../shared/opening.ts'
import { coatsOn } from '../model/plan.ts'
import type { PotState } from '../model/state.ts'

/** The records that said the same of one thing, the first of them first, and when that was. Table time, ms. */
export interface Said {
  readonly ids: readonly string[]
  readonly at: number
}

/** What was seen of a fired pot at one look. `id` is the first record's that said so. Times are table time, ms. */
export interface Judgement {
  readonly id: string
  /** When it was looked at. */
  readonly at: number
  /** Since when its run stands, and whether it crawled: put right of anything else neither is said anew. */
  readonly runSaid: Said
  readonly crawlSaid: Said
  /** The record by which it is left out, and taken in again. */
  readonly dropId: string
  readonly loadId?: string
  /** As `runFound` reads it; left out of a second look. */
  readonly run?: RunFacts
  /** As it was said. */
  readonly toldRun?: RunFacts
  readonly stuck?: Stuck
  readonly faults: readonly Fault[]
  readonly second: boolean
  /** It teaches nothing: the person said so. */
  readonly dropped: boolean
  /** It teaches whatever else is unsure: the person said so. */
  readonly takenIn: boolean
}

export interface KeptPhoto {
  readonly photoId: string
  readonly side: PhotoSide
  readonly bytes: number
  readonly at: number
}

/** All that is known of a pot since it went into the fire. */
export interface FiredPot {
  /** What the person guessed, and what the app did: of a pot that nobody guessed the app's alone. */
  readonly guess?: { readonly mm: number | 'shelf'; readonly at: number }
  readonly appGuess?: AppGuess
  readonly outAt?: number
  /** Shelf place, as 2.4; left out where nobody noted one. */
  readonly place?: string
  readonly loadId?: string
  /** What stands: the latest first look, whether or not it teaches. */
  readonly found?: Judgement
  /** Later looks, oldest first. */
  readonly looks: readonly Judgement[]
  /** Oldest first. */
  readonly photos: readonly KeptPhoto[]
}

const NEVER: FiredPot = { looks: [], photos: [] }
const known = new WeakMap<PotState, FiredPot>()

/** What is known of a pot since it went into the fire; kept per state of the pot. */
export function firedOf(pot: PotState): FiredPot {
  if (!pot.fired) return NEVER
  let fired = known.get(pot)
  if (!fired) {
    fired = pot.fired.reduce((so, seen) => after(pot, so, seen), NEVER)
    known.set(pot, fired)
  }
  return fired
}

/**
 * How far the melt of a glazed pot came, by all that was said of it: one that stuck, and to no other pot, came down to the
 * shelf there, whether or not anybody saw it run. A front that was measured stands, and where nobody measured its longest
 * drip that is the shelf's; on a wall where nothing moved something else held it. A lid and its jar stick to each other: that says nothing of the melt.
 */
export function runFound(pot: PotState, { run, stuck, faults }: Saying): RunFacts | undefined {
  const isGlazed = coatsOn(pot).length > 0 || pot.uncounted || (pot.coatsCounted ?? 0) > 0
  const { lidOf, shape } = pot.facts
  const isPiece = lidOf !== undefined || shape.galleryMm !== undefined
  if (!run || !stuck || !isGlazed || isPiece || faults.includes('kissed')) return run
  if (run.is !== 'measured') return { is: 'shelf' }
  return isStill(run) || run.longestMm !== undefined ? run : { ...run, longestMm: 'shelf' }
}

/** Whether nothing moved, by what was said of it. */
export const isStill = (run: RunFacts): boolean =>
  run.is === 'none' || (run.is === 'measured' && run.mm === 0 && !run.longestMm)

/** Whether a look says what another said. */
export const saysSame = (a: Saying, b: Saying): boolean =>
  a.stuck === b.stuck &&
  JSON.stringify(a.run) === JSON.stringify(b.run) &&
  a.faults.length === b.faults.length &&
  a.faults.every((fault) => b.faults.includes(fault))

/** Whether a look says of the run what another said. */
const saysRun = (a: Saying, b: Saying): boolean =>
  a.stuck === b.stuck &&
  JSON.stringify(a.run) === JSON.stringify(b.run) &&
  a.faults.includes('kissed') === b.faults.includes('kissed')

/** And of crawling: who says nothing of the run says nothing of it. */
const saysCrawl = (a: Saying, b: Saying): boolean =>
  (a.run === undefined) === (b.run === undefined) &&
  a.faults.includes('crawled') === b.faults.includes('crawled')

const saidOf = (before: Said | undefined, same: boolean | undefined, id: string, at: number): Said =>
  before && same ? { ids: [...new Set([...before.ids, id])], at: before.at } : { ids: [id], at }

/** What is said at one look. */
export type Saying = Pick<Judgement, 'run' | 'stuck' | 'faults'>

type Seen = NonNullable<PotState['fired']>[number]

function after(pot: PotState, so: FiredPot, { id, at, event }: Seen): FiredPot {
  const { loadId } = event
  const load = loadId === undefined ? {} : { loadId }
  switch (event.kind) {
    // The first one is fixed: nobody guesses anew, on another phone neither.
    case 'guessed': {
      const guess = so.guess ?? (event.mm === undefined ? undefined : { mm: event.mm, at })
      const appGuess = so.appGuess ?? event.app
      return { ...so, ...load, ...(guess ? { guess } : {}), ...(appGuess ? { appGuess } : {}) }
    }
    case 'taken-out':
      return {
        ...so,
        outAt: so.outAt ?? at,
        ...load,
        ...(event.place === undefined ? {} : { place: event.place }),
      }
    case 'judged': {
      const { stuck, faults, second } = event
      const run = runFound(pot, event)
      // Of one firing there is one first look: put right it keeps its day, and one that was left out, or taken in, stays so.
      const before = !second && so.found?.loadId === loadId ? so.found : undefined
      const same = before && saysSame(before, { ...event, run })
      const known = same ? before.id : id
      const dropId = before?.dropped || before?.takenIn ? before.dropId : known
      const look: Judgement = {
        id: known,
        at: before?.at ?? at,
        runSaid: saidOf(before?.runSaid, before && saysRun(before, { run, stuck, faults }), known, at),
        crawlSaid: saidOf(before?.crawlSaid, before && saysCrawl(before, { run, stuck, faults }), known, at),
        dropId,
        faults,
        second: second === true,
        dropped: pot.dropped?.includes(dropId) ?? false,
        takenIn: pot.takenIn?.includes(dropId) ?? false,
        ...load,
        ...(run === undefined ? {} : { run, toldRun: event.run }),
        ...(stuck === undefined ? {} : { stuck }),
      }
      return second ? { ...so, looks: [...so.looks, look] } : { ...so, found: look, ...load }
    }
    case 'photo-kept': {
      const { photoId, side, bytes } = event
      return { ...so, photos: [...so.photos, { photoId, side, bytes, at }] }
    }
  }
}
