import type { AnyEvent, JournalRecord } from '../../shared/record.ts'

/**
 * Version of the schemas of events. Raise it when they take more than before; they never take less. A mark beside a
 * stored record says which version its content has passed and by which checksum, so that a start folds what is known
 * to be well-formed without fetching the schemas. What bears no mark, or that of a newer program, is examined first.
 */
export const SCHEMA = 7

/** Why an event is not one to fold, as a field's name; undefined where it is. */
export type ContentCheck = (event: AnyEvent) => string | undefined

/** What a program knows of events: their kinds at once, their contents once the schemas are fetched. */
export interface Knowledge {
  /** {@link SCHEMA}, but for tests. */
  readonly schema: number
  /** Tells whether an event is of a kind that this program folds. */
  isEvent(event: AnyEvent): boolean
  /** Fetches what examines the content of events of those kinds. Rejects while it cannot be had. */
  content(): Promise<ContentCheck>
}

/** The mark of a text or record with this checksum. */
export const markOf = (sum: number, schema: number) => `${schema}~${sum}`

/** A record as it is stored. */
export const marked = <R extends JournalRecord<AnyEvent>>(record: R, schema: number) => ({
  ...record,
  checked: markOf(record.sum, schema),
})

/** Whether the mark on a value says that this content has passed schemas that are known here as well. */
export function isMarked(value: unknown, sum: number, schema: number): boolean {
  const { checked } = (value ?? {}) as { checked?: unknown }
  if (typeof checked !== 'string') return false
  const [by, of] = checked.split('~')
  return Number(by) <= schema && of === String(sum)
}

/** A record without its mark: as phones share it. */
export function unmarked<R extends JournalRecord<AnyEvent>>(record: R): R {
  if (!('checked' in record)) return record
  const { checked: _mark, ...rest } = record as R & { readonly checked: unknown }
  return rest as unknown as R
}
