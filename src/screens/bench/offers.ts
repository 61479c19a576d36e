import { remedyS } from '../../table/advice/warning.ts'
import type { Armed } from '../../table/card/card.ts'
import type { Action } from '../../table/model/action.ts'
import { planWith } from '../../table/model/plan-with.ts'
import type { PotState, Table } from '../../table/model/state.ts'
import type { LateWords } from '../../words/late.ts'
import { mayRun } from './off-shelf.tsx'
import type { Acting, Page } from './other-pages.tsx'

/** A way to mend the coat that is armed, before it goes on. */
export interface Offer {
  readonly text: string
  readonly on: (atMs: number) => void
}

/** What the warnings of an armed coat come to that a hit can do. */
export function offersOf(
  table: Table,
  words: LateWords,
  pot: PotState,
  { potId, coat, holdS, warnings }: Armed,
  act: Acting,
  open: (page: Page) => () => void,
): readonly Offer[] {
  const w = words.other
  const to = (action: Action, text: string): Offer => ({ text, on: act(action) })
  const remedy = remedyS(warnings)
  const offers: Offer[] = []
  if (warnings.some(({ kind }) => kind === 'neck'))
    offers.push(to({ do: 'pour-inside', potId }, w.pourInside))
  if (remedy !== undefined && remedy !== holdS)
    offers.push(
      to(
        { do: 'set-plan', potId, coats: planWith(table, pot, coat, remedy) },
        remedy > 0 ? w.dipInstead(remedy, holdS) : w.leaveOut,
      ),
    )
  if (warnings.some(mayRun)) offers.push({ text: words.remedy.title, on: open('shelf') })
  return offers
}
