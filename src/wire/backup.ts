import type { TableEvent } from '../../shared/events.ts'
import type { ShareResult } from '../device/ports.ts'
import { openShare } from '../device/share.ts'
import type { TakenIn } from '../screens/app.ts'
import { fileDay } from '../screens/calendar.ts'
import { readBackup, writeBackup } from '../store/backup.ts'
import type { Journal } from '../store/index.ts'

/** The whole journal as one file, through the share sheet or the downloads. */
export function backUp(journal: Journal<TableEvent>, nowMs: number): Promise<ShareResult> {
  const text = writeBackup(journal.records, { at: nowMs, tz: -new Date(nowMs).getTimezoneOffset() })
  return openShare().file(`bucketside-${fileDay(nowMs)}.json`, 'application/json', text)
}

/** Joins another phone's journal, or an old backup, with this one. */
export async function takeIn(journal: Journal<TableEvent>, text: string): Promise<TakenIn> {
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
