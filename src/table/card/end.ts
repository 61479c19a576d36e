import type { Table } from '../model/state.ts'
import type { EndStep } from '../steps/close-down.ts'
import type { Card } from './card.ts'

/** What ends a sitting, and closes it. */
export interface EndOfSitting {
  /** What is left to do once the sitting is over, in order; undefined while it is not. */
  readonly endSteps: (table: Table, now: number) => readonly EndStep[] | undefined
  readonly endCard: (table: Table, step: EndStep, now: number) => Card
  readonly closedCard: (table: Table) => Card
}

let end: EndOfSitting | undefined

/** The code of the end is here: a table without a coat does without. */
export function haveEnd(here: EndOfSitting): void {
  end = here
}

/** The code of the end of a sitting; undefined before `haveEnd`. */
export const endOfSitting = (): EndOfSitting | undefined => end
