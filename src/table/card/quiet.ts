import { isFresh } from '../model/fresh.ts'
import type { Table } from '../model/state.ts'
import { stepsOf } from '../steps/work.ts'
import type { Card } from './card.ts'

/** Nothing physical runs and nothing is typed: a new version may be taken on. */
export const isQuiet = ({ kind }: Card, table: Table, now: number): boolean =>
  kind !== 'count' && kind !== 'out' && kind !== 'drip' && !isBusy(table, now)

const isBusy = (table: Table, now: number): boolean =>
  stepsOf(table, now).some(({ step }) => step.is === 'wait' || step.is === 'touch') ||
  (table.openBucket !== undefined && isFresh(table, table.openBucket, now))
