import { touchNext } from '../../engine/index.ts'
import { lessonOf } from '../forecast/learning.ts'
import { historyOf, MIN_MS } from '../forecast/pot-history.ts'
import type { Table } from '../model/state.ts'
import { dueWhat } from '../steps/steps.ts'
import { stepsOf } from '../steps/work.ts'

/** More pots than these would keep the phone busy for a line of text. */
const MOST_POTS = 12

/** Of the pots that dry for a coat to come, the one whose touch would narrow most of the other waits; undefined when none would. */
export function touchFirst(
  table: Table,
  now: number,
): { readonly potId: string; readonly others: number } | undefined {
  if (table.settings.readyMeans === 'clock') return undefined
  const waiting = stepsOf(table, now)
    .filter(
      ({ step, pot }) => step.is === 'wait' && step.askAt > now && dueWhat(table, pot, step) === 'touch',
    )
    .slice(0, MOST_POTS)
    .map(({ pot }) => ({ id: pot.facts.potId, ...historyOf(table, pot) }))
  const next = touchNext(waiting, now / MIN_MS, lessonOf(table))
  return next && next.narrows.length > 0 ? { potId: next.id, others: next.narrows.length } : undefined
}
