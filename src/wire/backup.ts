import type { TableEvent } from '../../shared/events.ts'
import { beCopied } from '../device/seen.ts'
import { openShare } from '../device/share.ts'
import type { PassedOn } from '../screens/app.ts'
import { writeBackup } from '../store/backup.ts'
import type { Journal } from '../store/index.ts'
import { photoLine, photosStart } from '../store/photo-lines.ts'
import { photoStore, SilentStorageError } from '../store/photos.ts'
import { fileDay } from './file-day.ts'

/** Everything on this phone as one file, through the share sheet or the downloads: what waits for an update too. */
export async function backUp(journal: Journal<TableEvent>, nowMs: number): Promise<PassedOn> {
  const aside = journal.opening.quarantined.map(({ value }) => value)
  const stamp = { at: nowMs, tz: -new Date(nowMs).getTimezoneOffset() }
  const named = journal.records.flatMap(({ event }) => (event.kind === 'photo-kept' ? [event.photoId] : []))
  const { lines, left } = await pictures(named)
  const text = writeBackup(journal.records, stamp, aside, lines.length, journal.phone)
  const content = new Blob([text, ...(lines.length > 0 ? [photosStart, ...lines] : [])])
  // Share sheets take texts and refuse JSON (Chromium, third_party/blink/renderer/modules/webshare/FILE_TYPES.md).
  const how = await openShare().file(`bucketside-${fileDay(nowMs)}.txt`, 'text/plain', content)
  if (how !== 'cancelled') beCopied(nowMs)
  return { how, left }
}

/** The pictures as lines, each handed over as it is read, as far as they can be had, and how many of them can't. */
async function pictures(named: readonly string[]): Promise<{ lines: Blob[]; left: number }> {
  const lines: Blob[] = []
  const wanted = new Set(named)
  try {
    const store = photoStore('own')
    for (const photoId of await store.ids()) wanted.add(photoId)
    for (const photoId of wanted) {
      // One that cannot be read costs no other; a silent storage is asked once.
      const picture = await store.get(photoId).catch((error) => {
        if (error instanceof SilentStorageError) throw error
      })
      if (picture) lines.push(new Blob([await photoLine(photoId, picture)]))
    }
  } catch {
    // What could be had goes along; of the rest it is told.
  }
  return { lines, left: wanted.size - lines.length }
}
