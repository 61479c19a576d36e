import { batch, type ReadonlySignal, signal } from '@preact/signals'
import type { TableName } from '../../shared/database.ts'
import { isKnownKind, type Stamped, type TableEvent } from '../../shared/events.ts'
import { isBy } from '../../shared/record.ts'
import { type OpenedJournal, openJournal, witness } from '../store/index.ts'
import { fold, step } from '../table/fold/fold.ts'
import type { Seen } from '../table/fold/seen.ts'
import { needsWalls } from '../table/forecast/forecast.ts'
import type { Table } from '../table/model/state.ts'
import { fetched } from '../ui/fetched.ts'

/** The journal of this phone, and the table it folds to. */
export interface Records {
  readonly journal: OpenedJournal<TableEvent>
  readonly table: ReadonlySignal<Table>
  readonly saved: ReadonlySignal<OpenedJournal<TableEvent>['status']>
  readonly readOnly: ReadonlySignal<boolean>
  /** What is kept could not be read, or not yet. */
  readonly unread: ReadonlySignal<boolean>
  /** What computes walls, fetched: a table that needs it is shown once it is here. */
  fetchWalls(): void
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

/** @param used whether the phone was used before: then pots may have coats. Rejects where what computes them is missing. */
export async function openRecords(which: TableName, used: boolean): Promise<Records> {
  const walls = fetched(() => import('./with-coats.ts'))
  if (used) walls.ask()
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
  const isOwn = isBy(journal.phone)
  // The records of one phone alone are folded as they are, with others' among them as they are seen.
  let folded: readonly Stamped[] = journal.records
  let seen: Pick<Seen, 'goesOn'> | undefined
  // A demo that was laid once among own pots is not seen either.
  const demo = journal.records.findIndex(({ event }) => event.kind === 'demo-laid')
  if (demo > 1 || !journal.records.every(isOwn)) {
    const all = (await import('./fold-beside.ts')).seenAt(journal)
    seen = all
    folded = all.events
  }
  let newest = fold(folded)
  if (needsWalls(newest)) await import('./with-coats.ts')
  const table = signal(newest)
  const saved = signal(journal.status)
  const readOnly = signal(journal.readOnly)
  const unread = signal(journal.opening.failure !== null)
  const show = (changed: () => void, failed: (error: unknown) => void) => {
    try {
      batch(() => {
        table.value = newest
        changed()
      })
    } catch (error) {
      failed(error)
    }
  }
  return {
    journal,
    table,
    saved,
    readOnly,
    unread,
    recovered,
    fetchWalls: walls.ask,
    follow(changed, failed) {
      const become = (of: Table) => {
        newest = of
        if (needsWalls(newest)) {
          walls.with(() => show(changed, failed))
          walls.ask()
        } else show(changed, failed)
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
          for (let all: unknown; all !== journal.records; ) {
            all = journal.records
            const done = await foldInSlices(journal.records, journal.phone)
            if (all !== journal.records) continue
            seen = done.seen
            folded = done.seen.events
            become(done.table)
          }
        } finally {
          folding = false
        }
      }
      journal.subscribe((change) => {
        switch (change.kind) {
          case 'records': {
            if (!change.records.every(isOwn)) seen ??= { goesOn: () => false }
            const goesOn = !seen || (change.atEnd && seen.goesOn(change.records, newest.skewMs))
            const many = change.records.length > MANY || !change.atEnd
            if (!goesOn || (journal.records.length > BESIDE_FROM && many)) {
              foldBeside().catch(failed)
              break
            }
            try {
              become(change.atEnd ? step(newest, folded, change.records) : fold(journal.records))
            } catch (error) {
              failed(error)
            }
            folded = change.atEnd ? [...folded, ...change.records] : journal.records
            break
          }
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
