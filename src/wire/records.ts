import { batch, type ReadonlySignal, signal } from '@preact/signals'
import type { TableName } from '../../shared/database.ts'
import { isKnownKind, type TableEvent } from '../../shared/events.ts'
import type { JournalRecord } from '../../shared/record.ts'
import { type OpenedJournal, openJournal, witness } from '../store/index.ts'
import { fold, step } from '../table/fold/fold.ts'
import type { Table } from '../table/model/state.ts'

/** The journal of this phone, and the table it folds to. */
export interface Records {
  readonly journal: OpenedJournal<TableEvent>
  readonly table: ReadonlySignal<Table>
  readonly saved: ReadonlySignal<OpenedJournal<TableEvent>['status']>
  readonly readOnly: ReadonlySignal<boolean>
  /** What is kept could not be read, or not yet. */
  readonly unread: ReadonlySignal<boolean>
  /** Records that an emptied database had lost and the second copy gave back at this start. */
  readonly recovered: number
  /**
   * From now on records are folded as they come; `changed` runs in the same batch. `failed` is told when something that
   * shows them fails: they are kept all the same.
   */
  follow(changed: () => void, failed: (error: unknown) => void): void
}

/** Journals up to this long are folded in a moment. */
const BESIDE_FROM = 500
/** So many records at the end are a moment's work as well. */
const MANY = 100

export async function openRecords(which: TableName): Promise<Records> {
  const journal = await openJournal<TableEvent>({
    table: which,
    isEvent: (event) => isKnownKind(event.kind),
    content: async () => (await import('../store/events-schema.ts')).contentFault,
  })
  const { opening } = journal
  // Empty, though it was not: never shown as a first visit before the second copy was asked.
  const own = which === 'own'
  const emptied = own && journal.records.length === 0 && opening.failure === null && witness() !== undefined
  const recovered = emptied ? await (await import('./rescue.ts')).rescue(journal) : 0
  let folded: readonly JournalRecord<TableEvent>[] = journal.records
  const table = signal(fold(folded, journal.phone))
  const saved = signal(journal.status)
  const readOnly = signal(journal.readOnly)
  const unread = signal(journal.opening.failure !== null)
  return {
    journal,
    table,
    saved,
    readOnly,
    unread,
    recovered,
    follow(changed, failed) {
      const show = (of: Table) => {
        try {
          batch(() => {
            table.value = of
            changed()
          })
        } catch (error) {
          failed(error)
        }
      }
      // Much that comes in, or comes in among what was there, is folded beside the work; hits go on with the table there is.
      let folding = false
      const foldBeside = async () => {
        if (folding) return
        folding = true
        try {
          // Not in the task that brought them.
          await new Promise((next) => setTimeout(next))
          const { foldInSlices } = await import('./fold-beside.ts')
          while (folded !== journal.records) {
            const all = journal.records
            const done = await foldInSlices(all, journal.phone)
            if (all !== journal.records) continue
            folded = all
            show(done)
          }
        } finally {
          folding = false
        }
      }
      journal.subscribe((change) => {
        switch (change.kind) {
          case 'records':
            if (journal.records.length > BESIDE_FROM && (!change.atEnd || change.records.length > MANY))
              foldBeside().catch(failed)
            else if (change.atEnd) {
              const before = folded
              folded = folding ? [...before, ...change.records] : journal.records
              show(step(table.peek(), before, change.records))
            } else {
              folded = journal.records
              show(fold(folded, journal.phone))
            }
            break
          case 'status':
            saved.value = change.status
            break
          case 'opening':
            unread.value = journal.opening.failure !== null
            readOnly.value = journal.readOnly
            break
          case 'stale':
            readOnly.value = true
        }
      })
    },
  }
}
