import { DATABASES } from '../../shared/database.ts'
import { showDemo } from '../device/seen.ts'
import { photosOf } from '../store/photos.ts'

/** The page is opened anew on the other table: nothing of one goes on in the other. */
function change(to: 'bench' | 'board'): void {
  history.replaceState(null, '', `#/${to}`)
  location.reload()
}

/** Takes away all that the demo's databases hold, unless another window keeps them open. */
const forget = () => Promise.all([DATABASES.demo, photosOf('demo')].map(forgetOne))

const forgetOne = (name: string) =>
  new Promise<void>((resolve) => {
    const deleting = indexedDB.deleteDatabase(name)
    for (const end of ['success', 'error', 'blocked']) deleting.addEventListener(end, () => resolve())
  })

/** Whether the page can be opened anew: it is kept on this phone, or there is a network. */
async function canOpenAnew(): Promise<boolean> {
  if (navigator.serviceWorker?.controller) return true
  const page = await fetch(location.pathname, { cache: 'no-store' }).catch(() => undefined)
  return page?.ok ?? false
}

interface Closed {
  close(): void
}

/**
 * Begins the demo evening, in the database of its own; `again` where it is open in this window. False, and nothing was
 * done, where the page could not be opened anew.
 */
export async function enter(journal: Closed, again: boolean): Promise<boolean> {
  if (!(await canOpenAnew())) return false
  if (again) journal.close()
  await forget()
  showDemo(true)
  change('bench')
  return true
}

/** Goes back to the own table, as it was. Nothing stays of the demo. False as above. */
export async function leave(journal: Closed): Promise<boolean> {
  if (!(await canOpenAnew())) return false
  journal.close()
  await forget()
  showDemo(false)
  change('board')
  return true
}
