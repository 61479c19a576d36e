import { batch, type ReadonlySignal, signal } from '@preact/signals'
import { isKnownKind, type TableEvent } from '../../shared/events.ts'
import type { JournalRecord } from '../../shared/record.ts'
import { type OpenedJournal, openJournal } from '../store/index.ts'
import { fold, step } from '../table/fold/fold.ts'
import type { Table } from '../table/model/state.ts'

/** The journal of this phone, and the table it folds to. */
export interface Records {
  readonly journal: OpenedJournal<TableEvent>
  readonly table: ReadonlySignal<Table>
  readonly saved: ReadonlySignal<OpenedJournal<TableEvent>['status']>
  readonly readOnly: ReadonlySignal<boolean>
  /** From now on records are folded as they come; `changed` runs in the same batch. */
  follow(changed: () => void): void
}

export async function openRecords(): Promise<Records> {
  const journal = await openJournal<TableEvent>({
    isEvent: (event) => isKnownKind(event.kind),
    content: async () => (await import('../store/events-schema.ts')).contentFault,
  })
  let folded: readonly JournalRecord<TableEvent>[] = journal.records
  const table = signal(fold(folded, journal.phone))
  const saved = signal(journal.status)
  const readOnly = signal(journal.readOnly)
  return {
    journal,
    table,
    saved,
    readOnly,
    follow(changed) {
      journal.subscribe((change) => {
        switch (change.kind) {
          case 'records':
            batch(() => {
              table.value = change.atEnd
                ? step(table.peek(), folded, change.records)
                : fold(journal.records, journal.phone)
              changed()
            })
            folded = journal.records
            break
          case 'status':
            saved.value = change.status
            break
          case 'stale':
            readOnly.value = true
        }
      })
    },
  }
}
