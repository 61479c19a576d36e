import type { TableEvent } from '../../../shared/events.ts'
import type { Refusal } from '../model/action.ts'
import { type LimitedField, outOfRange } from '../model/limits.ts'
import type { Decision } from './decision.ts'

/** These events, unless something is refused. */
export const checked = (refusal: Refusal | undefined, ...events: TableEvent[]): Decision =>
  refusal ? { refusal } : { events }

/** The refusal of the first value that is out of its range; what is left out is not looked at. */
export function firstWrong(
  fields: readonly (readonly [LimitedField, number | undefined])[],
): Refusal | undefined {
  for (const [field, value] of fields) {
    const wrong = value === undefined ? undefined : outOfRange(field, value)
    if (wrong) return wrong
  }
  return undefined
}
