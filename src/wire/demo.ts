import { DATABASES } from '../../shared/database.ts'
import { showDemo } from '../device/seen.ts'

/** The page is opened anew on the other table: nothing of one goes on in the other. */
function change(to: 'bench' | 'board'): void {
  history.replaceState(null, '', `#/${to}`)
  location.reload()
}

/** Takes away all that the demo's database holds, unless another window keeps it open. */
const forget = () =>
  new Promise<void>((resolve) => {
    const deleting = indexedDB.deleteDatabase(DATABASES.demo)
    for (const end of ['success', 'error', 'blocked']) deleting.addEventListener(end, () => resolve())
  })

interface Closed {
  close(): void
}

/** Begins the demo evening, in the database of its own; `again` where it is open in this window. */
export async function enter(journal: Closed, again: boolean): Promise<void> {
  if (again) journal.close()
  await forget()
  showDemo(true)
  change('bench')
}

/** Goes back to the own table, as it was. Nothing stays of the demo. */
export async function leave(journal: Closed): Promise<void> {
  journal.close()
  await forget()
  showDemo(false)
  change('board')
}
