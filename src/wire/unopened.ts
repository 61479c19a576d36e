import { isKnownKind, type TableEvent } from '../../shared/events.ts'
import type { PassedOn } from '../screens/app.ts'
import { openJournal } from '../store/index.ts'
import { backUp } from './backup.ts'

/** A backup without the program, where that does not open. */
export async function backUpUnopened(): Promise<PassedOn> {
  const journal = await openJournal<TableEvent>({
    table: 'own',
    isEvent: (event) => isKnownKind(event.kind),
    content: async () => (await import('../store/events-schema.ts')).contentFault,
  })
  try {
    return await backUp(journal, Date.now())
  } finally {
    journal.close()
  }
}
