import type { TableEvent } from '../../../shared/events.ts'
import type { DipState } from '../model/state.ts'

/** What is said of a dip after its START: it is folded as it was, not as it was first taken down. */
export type MendEvent = Extract<
  TableEvent,
  { kind: 'count-stopped' | 'dose-unsure' | 'dose-settled' | 'dip-corrected' }
>

export interface Mend {
  readonly event: MendEvent
  /** Jumps, by then, of the clock it was written by, ms. */
  readonly skewMs: number
}

/** What the clock and the hand made of a dip. */
interface DipTimes extends Pick<DipState, 'underAt' | 'outAt' | 'holdS' | 'how' | 'unsure'> {
  /** All of it was so much later than taken down, ms. */
  readonly movedMs: number
}

/** A dip's dose after all that was said of it. `skewMs`: jumps of its clock at START. */
export function dipTimesAfter(
  { outAt: outEpochMs, holdS, told }: Extract<TableEvent, { kind: 'dipped' }>,
  skewMs: number,
  mends: readonly Mend[],
): DipTimes {
  const outAt = outEpochMs - skewMs
  const how = told ? 'logged' : 'planned'
  const start: DipTimes = { underAt: outAt - holdS * 1000, outAt, holdS, how, unsure: false, movedMs: 0 }
  return mends.reduce(mended, start)
}

function mended(dose: DipTimes, { event, skewMs }: Mend): DipTimes {
  switch (event.kind) {
    case 'dose-unsure':
      return { ...dose, unsure: true }
    case 'dose-settled':
      return { ...dose, unsure: false }
    case 'count-stopped': {
      // Lifted before it was under: the count ends there.
      const outAt = event.outAt - skewMs
      return { ...dose, holdS: event.holdS, outAt, underAt: Math.min(dose.underAt, outAt), how: 'measured' }
    }
    case 'dip-corrected': {
      const how = event.by === undefined ? 'corrected' : dose.how
      const holdS = event.holdS ?? dose.holdS
      // A longer hold than planned ends later; a moment that was told moves all of the dip.
      const longer = (holdS - dose.holdS) * 1000
      const outAt = event.outAt === undefined ? dose.outAt + longer : event.outAt - skewMs
      const later = outAt - dose.outAt - longer
      // Only its seconds answer whether it was long enough.
      const unsure = event.holdS === undefined && dose.unsure
      const { underAt, movedMs } = dose
      return { underAt: underAt + later, outAt, holdS, how, unsure, movedMs: movedMs + later }
    }
  }
}
