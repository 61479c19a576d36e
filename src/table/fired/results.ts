import type { FiringFacts } from '../../../shared/nouns.ts'
import type { RunFacts } from '../../../shared/opening.ts'
import {
  FIRST_MM,
  type LnK,
  lnKOf,
  type RunCurve,
  type RunSeen,
  runCurve,
  type Share,
  seenFromLn,
  sharesOf,
  taughtBy,
} from '../../engine/fired/run-curve.ts'
import { type Subject, subjectKey } from '../../engine/fired/subjects.ts'
import { dripOver } from '../../engine/melt/flow-tile.ts'
import { downToMm, downwards } from '../../engine/melt/path.ts'
import { profileOf } from '../forecast/shape-inputs.ts'
import type { LoadState } from '../model/load-state.ts'
import type { PotState, Table } from '../model/state.ts'
import { firedZones, isSure, loadFiredIn, lowestEdgeMm, toldCoats } from './fired-coats.ts'
import { firedOf, isStill, type Judgement, type Saying } from './fired-pot.ts'
import { type Heat, heatAt } from './heats.ts'
import { LATEST_RESULTS, latestOf } from './latest.ts'
import { isWhich } from './which-pot.ts'

/** A fired pot that was judged, and what is certain of it. */
export interface JudgedPot {
  readonly pot: PotState
  readonly found: Judgement
  /** The firing; undefined where it was in no load here. */
  readonly load: LoadState | undefined
  readonly heat: Heat | undefined
  /** Its coats are known as they were dipped. */
  readonly sure: boolean
  /** Which pot it was is known: nobody had to match it, or surely, or it teaches alike whichever it was, or a hand took it in. */
  readonly known: boolean
  /** Its melt passed the foot line: undefined where nobody measured it. */
  readonly pastFoot: boolean | undefined
}

/** Why a result teaches nobody. */
export type Silent =
  /** The person left it out. */
  | 'dropped'
  /** Its firing is not known. */
  | 'no-load'
  /** It did not run, in a kiln that stayed far below its cone by its thermometer; no cone says otherwise. */
  | 'unreached'
  /** Which pot it was is not sure. */
  | 'unmatched'
  /** Its coats are not known as they were dipped. */
  | 'unsure'
  /** Nothing was said of the run. */
  | 'no-run'
  /** It stuck, though nothing ran: something else held it. */
  | 'stuck'
  /** A glaze on it has no tile, so that nothing was told. */
  | 'untested'
  /** Either glaze could have done it. */
  | 'either'

/** One result as the lesson takes it. */
export interface PotResult extends JudgedPot {
  readonly seen: RunSeen | undefined
  readonly curve: RunCurve | undefined
  readonly lnK: LnK | undefined
  readonly shares: readonly Share[]
  /** ln k at which it would have run so far that it was seen. */
  readonly firstLn: number
  /** Its longest drip came so many times as far as its front; undefined where no drip was measured. */
  readonly drip: number | undefined
  /** Whom it teaches. */
  readonly subject: Subject | undefined
  readonly silent: Silent | undefined
}

/** Bare wall between the lowest glazed edge and the foot line, mm; 0 where the glaze reaches it. */
function aboveFootMm(pot: PotState): number {
  const line = downwards(profileOf(pot.facts), 'outside')
  return Math.max(0, downToMm(line, pot.facts.shape.footLineMm) - downToMm(line, lowestEdgeMm(pot)))
}

/**
 * What was judged of a run, as the engine takes it: the mean front. GOOD says that nothing passed the foot line, and where
 * the glaze ended above it no more than that. Undefined where nothing was said of it, or where a pot stuck though nothing
 * ran: that is no word for its glaze.
 */
export function seenOf(pot: PotState, { run, stuck, faults }: Saying): RunSeen | undefined {
  if (!run || (stuck && isStill(run) && !faults.includes('kissed'))) return undefined
  if (run.is === 'measured') return { kind: 'measured', mm: run.mm }
  if (run.is !== 'none') return { kind: run.is }
  const mm = aboveFootMm(pot)
  return mm > FIRST_MM ? { kind: 'within', mm } : { kind: 'none' }
}

/** Whether the melt, or a drip of it, reached the shelf. */
export const onShelf = (run: RunFacts | undefined): boolean =>
  run?.is === 'shelf' || (run?.is === 'measured' && run.longestMm === 'shelf')

/** Whether the melt, its longest drip included, passed the foot line; undefined where it ran and nobody measured it. */
export function passedFoot(pot: PotState, run: RunFacts | undefined): boolean | undefined {
  if (run === undefined || run.is === 'none') return false
  if (onShelf(run)) return true
  if (run.is !== 'measured' || run.longestMm === 'shelf') return undefined
  const line = downwards(profileOf(pot.facts), 'outside')
  const footMm = downToMm(line, pot.facts.shape.footLineMm)
  return downToMm(line, lowestEdgeMm(pot)) + Math.max(run.mm, run.longestMm ?? 0) > footMm + FIRST_MM
}

/** It may say something of its coats: they, its firing and which pot it was are known, and nobody left it out. */
export const maySpeak = ({ sure, known, load, found }: JudgedPot): boolean =>
  sure && known && load !== undefined && !found.dropped

interface KeptJudged {
  readonly of: readonly unknown[]
  readonly judged: JudgedPot
}
/** By the pot's state: a table is asked with every hit, and its fired pots change seldom. */
const keptJudged = new WeakMap<PotState, KeptJudged>()

function judgedOf(table: Table, pot: PotState, found: Judgement, load: LoadState | undefined): JudgedPot {
  const isHarm = () =>
    passedFoot(pot, found.run) !== false || found.stuck !== undefined || found.faults.includes('crawled')
  const known = found.takenIn || !load || isWhich(table, load, pot, isHarm)
  const of = [load, table.stacks, known]
  const before = keptJudged.get(pot)
  if (before?.of.every((one, i) => one === of[i])) return before.judged
  const storey = load?.things[pot.facts.lidOf ?? pot.facts.potId]?.storey
  const heat = load && heatAt(load, storey)
  // Whoever takes it in knows better how far the fire went.
  const judged: JudgedPot = {
    pot,
    found,
    load,
    heat: heat?.unreached && found.takenIn ? { ...heat, unreached: false, short: false } : heat,
    sure: isSure(table, pot),
    known,
    pastFoot: passedFoot(pot, found.run),
  }
  keptJudged.set(pot, { of, judged })
  return judged
}

/** Which pot it was is known, and nobody left it out: what was told of it can be held against what was found. */
export const isTold = ({ known, found }: JudgedPot): boolean => known && !found.dropped

/** Every pot whose first look stands, the earliest judged first. A pot that was lost to its shelf counts. */
export function judgedPots(table: Table): readonly JudgedPot[] {
  const all: JudgedPot[] = []
  for (const pot of Object.values(table.pots)) {
    if (!pot.fired) continue
    const { found, loadId } = firedOf(pot)
    if (found) all.push(judgedOf(table, pot, found, loadFiredIn(table, pot, found.loadId ?? loadId)))
  }
  return all.sort((a, b) => a.found.at - b.found.at || (a.found.id < b.found.id ? -1 : 1))
}

const NOBODY = {
  curve: undefined,
  lnK: undefined,
  shares: [],
  firstLn: Number.POSITIVE_INFINITY,
  drip: undefined,
  subject: undefined,
}

interface Kept {
  readonly of: readonly unknown[]
  readonly result: PotResult
}
const kept = new WeakMap<Judgement, Kept>()

/** How much farther than its front the longest drip of a pot came. */
function dripIn(run: RunFacts | undefined, roomMm: number): number | undefined {
  if (run?.is !== 'measured' || run.longestMm === undefined || run.longestMm === run.mm) return undefined
  return dripOver(run.mm, run.longestMm === 'shelf' ? roomMm : run.longestMm)
}

/** What a judged pot says of whom. Kept until it, its load or the tiles change. */
export function resultOf(table: Table, judged: JudgedPot): PotResult {
  const { pot, found, load } = judged
  const zones = judged.sure ? firedZones(table, pot) : undefined
  const of = [table.tiles, load, pot, zones, judged.known]
  const before = kept.get(found)
  if (before?.of.every((one, i) => one === of[i])) return before.result
  const result = madeOf(table, judged, load?.firing)
  kept.set(found, { of, result })
  return result
}

function madeOf(table: Table, judged: JudgedPot, firing: FiringFacts | undefined): PotResult {
  const { pot, found, load, sure } = judged
  const seen = seenOf(pot, found)
  const nobody = (silent: Silent): PotResult => ({ ...judged, ...NOBODY, seen, silent })
  if (!load || !firing) return nobody('no-load')
  if (!sure) return nobody('unsure')
  if (!judged.known) return nobody(found.dropped ? 'dropped' : 'unmatched')
  if (!seen) return nobody(found.run ? 'stuck' : 'no-run')
  // What ran all the same speaks.
  if (judged.heat?.unreached && (seen.kind === 'none' || seen.kind === 'within'))
    return nobody(found.dropped ? 'dropped' : 'unreached')
  const fired = { profile: profileOf(pot.facts), coats: toldCoats(table, firedZones(table, pot), firing) }
  const curve = runCurve(fired)
  if (!curve) return nobody('untested')
  const shares = sharesOf(fired, curve, seen)
  const subject = taughtBy(shares) ?? undefined
  const silent = found.dropped ? 'dropped' : subject ? undefined : 'either'
  return {
    ...judged,
    seen,
    curve,
    lnK: lnKOf(curve, seen),
    shares,
    firstLn: seenFromLn(curve, seen),
    drip: dripIn(found.run, curve.roomMm),
    subject,
    silent,
  }
}

/** It says something of a run: what was left out takes nobody's place. */
const speaks = (one: JudgedPot): boolean =>
  maySpeak(one) && one.found.run !== undefined && !(one.heat?.unreached && one.found.run.is === 'none')

/** Judged pots by whether they are reckoned with. */
export interface Reckoned {
  /** What the latest say, and as many that teach nobody or were left out, the earliest first. */
  readonly results: readonly PotResult[]
  /** Those that may say something and are no longer reckoned with, the earliest first. */
  readonly older: readonly JudgedPot[]
}

/** What is reckoned with of all that was judged. */
export function reckonedOf(table: Table): Reckoned {
  const judged = judgedPots(table)
  const speaking = judged.filter(speaks)
  const latest = new Set(latestOf(speaking))
  const silent = new Set(judged.filter((one) => !speaks(one)).slice(-LATEST_RESULTS))
  return {
    results: judged.filter((one) => latest.has(one) || silent.has(one)).map((one) => resultOf(table, one)),
    older: speaking.filter((one) => !latest.has(one)),
  }
}

/** What the latest judged pots say, the earliest first. */
export const resultsOf = (table: Table): readonly PotResult[] => reckonedOf(table).results

/** Whether two firings are to one cone. */
export const isOneCone = (a: FiringFacts | undefined, b: FiringFacts | undefined): boolean =>
  a?.cone === b?.cone && a?.make === b?.make

/** Whether a result counts in the lesson of this firing: another cone's results say nothing sure of it. */
export const countsIn = ({ silent, load }: PotResult, firing: FiringFacts | undefined): boolean =>
  silent === undefined && isOneCone(load?.firing, firing)

/** Whom a glaze, or it over another, is to the lesson. */
export const subjectOf = (bucketId: string, underId: string | undefined): string =>
  subjectKey({ under: underId ?? null, over: bucketId })
