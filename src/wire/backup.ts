import type { TableEvent } from '../../shared/events.ts'
import type { Share, ShareResult } from '../device/ports.ts'
import type { TakenIn } from '../screens/app.ts'
import type { Journal } from '../store/index.ts'

/** Reading and writing backups comes later than the first paint. */
const format = () => import('../store/backup.ts')

/** The whole journal as one file, through the share sheet or the downloads. */
export async function backUp(
  journal: Journal<TableEvent>,
  share: Share,
  nowMs: number,
): Promise<ShareResult> {
  const { writeBackup } = await format()
  const day = new Date(nowMs).toISOString().slice(0, 10)
  const text = writeBackup(journal.records, { at: nowMs, tz: -new Date(nowMs).getTimezoneOffset() })
  return share.file(`bucketside-${day}.json`, 'application/json', text)
}

/** Joins another phone's journal, or an old backup, with this one. */
export async function takeIn(journal: Journal<TableEvent>, text: string): Promise<TakenIn> {
  const { readBackup } = await format()
  const backup = readBackup(text)
  if (!backup.ok) return backup
  const report = await journal.merge(backup.records)
  return {
    ok: true,
    added: report.added,
    known: report.known,
    left: report.faulty + report.newer + report.displaced,
  }
}
