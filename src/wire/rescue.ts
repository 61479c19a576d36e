import type { TableEvent } from '../../shared/events.ts'
import type { Health } from '../screens/app.ts'
import { type Journal, keepWitness, witness } from '../store/index.ts'
import { openSecondCopy, type SecondCopy } from '../store/second-copy.ts'

/** The copy is older than any clock's jump: nothing in it is refused as being ahead. */
const ANY_TIME = Number.MAX_SAFE_INTEGER
/** So many records go to the copy at once. */
const PART = 250
/** An empty database is believed no sooner: so long the copy may take to answer, ms. */
const PATIENCE_MS = 5000

let copy: SecondCopy | undefined

/** Takes from the second copy what the journal lacks, and gives it what it lacks itself. Resolves to records taken. */
async function unite(journal: Journal<TableEvent>): Promise<number> {
  copy ??= openSecondCopy()
  const had = journal.records.length === 0 ? witness() : undefined
  const { unknown, lacking } = await copy.compare(journal.records.map(({ id }) => id).join('\n'))
  const added = unknown.length > 0 && !journal.readOnly ? (await journal.merge(unknown, ANY_TIME)).added : 0
  const wanted = new Set(lacking)
  const missing = journal.records.filter(({ id }) => wanted.has(id))
  for (let from = 0; from < missing.length; from += PART) await copy.add(missing.slice(from, from + PART))
  if (had && added > 0 && added < had.count) keepWitness({ ...had, short: { back: added, of: had.count } })
  return added
}

/** The same where the database was found empty that was not: waited for, but not for ever. */
export const rescue = (journal: Journal<TableEvent>): Promise<number> =>
  Promise.race([
    unite(journal).catch(() => 0),
    new Promise<number>((resolve) => setTimeout(resolve, PATIENCE_MS, 0)),
  ])

/**
 * Keeps the second copy and the witness from now on, and asks the browser not to throw anything away once a hit is
 * kept. Tells what came of each, and how many records the copy had that the database had lost.
 */
export function keepCopy(
  journal: Journal<TableEvent>,
  tell: (found: Partial<Pick<Health, 'lost' | 'recovered' | 'recoveredOf' | 'copyHere' | 'lasting'>>) => void,
): void {
  const note = () => {
    const last = journal.records.at(-1)
    const { phone, records } = journal
    if (last) keepWitness({ count: records.length, last: last.id, phone, short: witness()?.short })
  }
  /** Whether the copy has all that was given to it. */
  let here: boolean | undefined
  const tellHere = (now: boolean) => {
    if (here !== now) tell({ copyHere: now })
    here = now
  }
  const united = async () => {
    const added = await unite(journal)
    if (added > 0) tell({ lost: 0, recovered: added, recoveredOf: witness()?.short?.of ?? added })
  }
  const kept = (work: Promise<void> | undefined) =>
    Promise.resolve(work).then(
      () => tellHere(true),
      () => tellHere(false),
    )
  let compared = kept(united())
  note()
  const answer = (asked: Promise<boolean> | undefined) =>
    void (asked ?? Promise.resolve(false)).catch(() => false).then((lasting) => tell({ lasting }))
  answer(navigator.storage?.persisted?.())
  let asked = false
  journal.subscribe((change) => {
    if (change.kind !== 'saved') return
    note()
    // One after another, and after the comparison, so that nothing is in the copy twice. What it did not take it lacks.
    compared = compared.then(() => kept(here ? copy?.add(change.records) : united()))
    if (asked) return
    asked = true
    answer(navigator.storage?.persist?.())
  })
}
