import type { TableEvent } from '../../shared/events.ts'
import type { ShareResult } from '../device/ports.ts'
import { beCopied } from '../device/seen.ts'
import { openShare } from '../device/share.ts'
import type { TakenIn } from '../screens/app.ts'
import { fileDay } from '../screens/calendar.ts'
import { readBackup, writeBackup } from '../store/backup.ts'
import type { Journal } from '../store/index.ts'
import { parted, photoLine, photosStart } from '../store/photo-lines.ts'
import { photoStore } from '../store/photos.ts'

/** Everything on this phone as one file, through the share sheet or the downloads: what waits for an update too. */
export async function backUp(journal: Journal<TableEvent>, nowMs: number): Promise<ShareResult> {
  const aside = journal.opening.quarantined.map(({ value }) => value)
  const stamp = { at: nowMs, tz: -new Date(nowMs).getTimezoneOffset() }
  const text = writeBackup(journal.records, stamp, aside)
  const content = new Blob([text, ...(await pictures())])
  // Share sheets take texts and refuse JSON (Chromium, third_party/blink/renderer/modules/webshare/FILE_TYPES.md).
  const how = await openShare().file(`bucketside-${fileDay(nowMs)}.txt`, 'text/plain', content)
  if (how !== 'cancelled') beCopied(nowMs)
  return how
}

/** The pictures as lines, each handed over as it is read; none where they cannot be had: records come first. */
async function pictures(): Promise<Blob[]> {
  try {
    const store = photoStore('own')
    const ids = await store.ids()
    const lines: Blob[] = ids.length > 0 ? [new Blob([photosStart])] : []
    for (const photoId of ids) {
      const picture = await store.get(photoId)
      if (picture) lines.push(new Blob([await photoLine(photoId, picture)]))
    }
    return lines
  } catch {
    return []
  }
}

/** Stores those that are not here; one that cannot be stored is lost, and told. */
async function takePictures(file: Blob): Promise<{ text: string; photos: number; photosLost: number }> {
  let [photos, unkept] = [0, 0]
  const store = photoStore('own')
  const { text, lost } = await parted(file, async (photoId, picture) => {
    try {
      if (await store.get(photoId)) return
      await store.put(photoId, picture)
      photos++
    } catch {
      unkept++
    }
  })
  return { text, photos, photosLost: lost + unkept }
}

/** Joins another phone's journal, or an old backup, with this one: all of it or, if it can't be stored, nothing. */
export async function takeIn(journal: Journal<TableEvent>, file: Blob, nowMs: number): Promise<TakenIn> {
  const { text, photos, photosLost } = await takePictures(file)
  const backup = await readBackup(text)
  if (!backup.ok) return backup
  const { records, aside, count, complete } = backup
  const report = await journal.merge(records, nowMs)
  // What that phone could not fold: it comes back when this program can.
  const more = aside.length > 0 ? await journal.merge(aside, nowMs) : { added: 0, known: 0, waiting: 0 }
  return {
    ok: true,
    photos,
    photosLost,
    added: report.added + more.added,
    known: report.known + more.known,
    faulty: report.faulty + report.displaced,
    waiting: report.waiting + more.waiting,
    ahead: report.ahead,
    whole: complete ? null : { read: records.length, of: count },
  }
}
