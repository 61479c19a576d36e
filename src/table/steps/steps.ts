/** Where a pot stands on its way through wax, wipe, coats and waits to the kiln, at a moment of table time. */

import type { CoatFacts } from '../../../shared/nouns.ts'
import { askAgainMs, type BandMs, forecastOf, notYetOf, waxSetMs } from '../forecast/forecast.ts'
import { lastDip, nextCoat, planOf, strayed, wantsCoats } from '../model/plan.ts'
import type { DipState, PotState, Table } from '../model/state.ts'
import { STEP_ROWS, type StepDue } from './step-rows.ts'

/** Damp from the wipe leaves a bisque surface within about this time. Common practice, no source. */
export const WIPE_DRIES_MS = 60_000

/** Where a pot stands on its way. `until` and bands are table time, ms; `Infinity` is never in this air. */
export type Step =
  | { readonly is: 'wax' }
  | { readonly is: 'wax-sets'; readonly until: number }
  | { readonly is: 'wipe' }
  | { readonly is: 'wipe-dries'; readonly until: number }
  /** Wet from the tap: no wax and no glaze until the wall drinks again. */
  | { readonly is: 'damp-dries'; readonly until: number; readonly dry: BandMs }
  | { readonly is: 'dip'; readonly coat: number; readonly plan: CoatFacts }
  | { readonly is: 'count'; readonly dip: DipState }
  | { readonly is: 'drip'; readonly dip: DipState; readonly until: number }
  | { readonly is: 'foot'; readonly dip: DipState }
  | { readonly is: 'wait'; readonly dip: DipState; readonly dry: BandMs; readonly askAt: number }
  | {
      readonly is: 'touch'
      readonly dip: DipState
      readonly dry: BandMs
      readonly askAt: number
      /** A finger found it not yet dry: whatever the clock says, only another says that it is. */
      readonly notYet: boolean
    }
  | { readonly is: 'foot-check' }
  | { readonly is: 'kiln'; readonly dry: BandMs }
  | { readonly is: 'stuck'; readonly why: 'uncounted' | 'strayed' | 'no-stack' | 'no-bucket' }

/** The step a pot is at, at table time `now`. Clocks move it on only where nothing physical is skipped. */
export function stepOf(table: Table, pot: PotState, now: number): Step {
  const dip = lastDip(pot)
  // The count, the drip and the foot of a dip at another phone are its own business.
  const here = dip?.hands !== 2
  if (dip && here && now < dip.outAt) return { is: 'count', dip }
  if (pot.uncounted) return { is: 'stuck', why: 'uncounted' }
  const before = dip ? undefined : (dampStep(table, pot, now) ?? prepStep(table, pot, now))
  if (before) return before
  if (!dip) return dipStep(table, pot)

  const band = forecastOf(table, pot)
  const dry = band?.ready ?? { lower: dip.outAt, likely: dip.outAt, upper: dip.outAt }
  const touches = pot.touches.filter((touch) => touch.dipId === dip.dipId)
  const last = touches.at(-1)
  const damp = notYetOf(pot)
  const askAt = damp ? askAgainAt(dip, damp.at, dry.likely) : dry.likely
  if (!last?.dry || band?.held) {
    if (now < askAt) {
      const dripEnds = dip.outAt + table.settings.dripS * 1000
      if (here && dip.spongedAt === undefined && !last)
        return now < dripEnds ? { is: 'drip', dip, until: dripEnds } : { is: 'foot', dip }
      const done = !strayed(table, pot) && !wantsCoats(table, pot)
      return done && isFootChecked(pot, dip)
        ? { is: 'kiln', dry: band?.kiln ?? dry }
        : { is: 'wait', dip, dry, askAt }
    }
    if (strayed(table, pot)) return { is: 'stuck', why: 'strayed' }
    // By the clock only a coat that was NOT YET dry is felt again.
    if (wantsCoats(table, pot) && (last || !isClocked(table)))
      return { is: 'touch', dip, dry, askAt, notYet: damp !== undefined }
  }
  if (strayed(table, pot)) return { is: 'stuck', why: 'strayed' }
  if (wantsCoats(table, pot)) return dipStep(table, pot)
  if (!isFootChecked(pot, dip)) return { is: 'foot-check' }
  return { is: 'kiln', dry: band?.kiln ?? dry }
}

/** Whether a finger went round the foot after this coat. */
const isFootChecked = ({ footSignedAt }: PotState, { outAt }: DipState): boolean =>
  footSignedAt !== undefined && footSignedAt >= outAt

/**
 * Never before the upper bound of a wait unless a touch said dry; then START says that it was. A coat that a finger found
 * not yet dry never goes by the clock.
 */
export const mayBeDipped = (step: Step, now: number): boolean =>
  step.is === 'dip' || (step.is === 'touch' && !step.notYet && now >= step.dry.upper)

/** What a step comes to by itself: a last coat that is dry is not touched, its foot is checked. */
export function dueWhat(table: Table, pot: PotState, step: Step): StepDue | 'foot-check' | 'dip' | undefined {
  const { due } = STEP_ROWS[step.is]
  if (due !== 'touch') return due
  if (nextBucket(table, pot) === undefined) return 'foot-check'
  const untouched = pot.touches.at(-1)?.dipId !== lastDip(pot)?.dipId
  return (isClocked(table) && untouched) || forecastOf(table, pot)?.held ? 'dip' : due
}

/** Whether the room goes by its own minutes: then its clock says that a coat can be dipped over. */
export const isClocked = (table: Table): boolean => table.settings.readyMeans === 'clock'

/** One that may never dry in this air is asked about at twice its age: ever more seldom, but not never. */
const askAgainAt = ({ outAt }: DipState, dampAt: number, likely: number): number => {
  const ageMs = dampAt - outAt
  const again = dampAt + askAgainMs(ageMs)
  return Number.isFinite(likely) ? Math.max(likely, again) : Math.max(again, dampAt + ageMs)
}

/** A pot that was washed, or washed off, and has not dried yet. A wet foot makes hot wax spit: it waits for that too. */
function dampStep(table: Table, pot: PotState, now: number): Step | undefined {
  if (pot.damp === undefined && pot.washedAt === undefined) return undefined
  const dry = forecastOf(table, pot)?.thirsty
  return dry && now < dry.likely ? { is: 'damp-dries', until: dry.likely, dry } : undefined
}

/** Wax and wipe, in the order the room works in. Undefined when both are done and settled. */
function prepStep(table: Table, pot: PotState, now: number): Step | undefined {
  if (pot.washedAt !== undefined) return undefined
  const wax = (): Step | undefined => {
    if (pot.waxedAt === undefined) return { is: 'wax' }
    const until = pot.waxedAt + waxSetMs(table, pot)
    return now < until ? { is: 'wax-sets', until } : undefined
  }
  const wipe = (): Step | undefined => {
    if (pot.wipedAt === undefined) return { is: 'wipe' }
    const until = pot.wipedAt + WIPE_DRIES_MS
    return now < until ? { is: 'wipe-dries', until } : undefined
  }
  return table.settings.waxFirst ? (wax() ?? wipe()) : (wipe() ?? wax())
}

function dipStep(table: Table, pot: PotState): Step {
  const plan = planOf(table, pot)
  const coat = nextCoat(pot)
  const next = plan[coat]
  if (!next) return { is: 'stuck', why: 'no-stack' }
  if (!table.buckets[next.bucketId]) return { is: 'stuck', why: 'no-bucket' }
  return { is: 'dip', coat, plan: next }
}

/** When a step that goes on by itself wants the hands, table time, ms; `Infinity` for one that does not. */
export const dueAt = (step: Step): number =>
  'askAt' in step ? step.askAt : 'until' in step ? step.until : Number.POSITIVE_INFINITY

/** Glaze bucket a pot goes into next, if any. */
export function nextBucket(table: Table, pot: PotState): string | undefined {
  return planOf(table, pot)[nextCoat(pot)]?.bucketId
}
