import type { TableEvent } from '../../shared/events.ts'
import type { ShareResult } from '../device/ports.ts'
import { beCopied } from '../device/seen.ts'
import { openShare } from '../device/share.ts'
import type { LookedInto, TakenIn } from '../screens/app.ts'
import { fileDay } from '../screens/calendar.ts'
import { type Backup, readBackup, writeBackup } from '../store/backup.ts'
import type { Journal } from '../store/index.ts'
import { parted, photoLine, photosStart } from '../store/photo-lines.ts'
import { photoStore } from '../store/photos.ts'
import { inSlices } from '../store/slices.ts'

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

/** Storage that has not answered by then keeps no file from getting out, ms. */
const ANSWER_MS = 2500

const answered = <T>(work: Promise<T>): Promise<T> =>
  Promise.race([
    work,
    new Promise<never>((_, reject) => setTimeout(reject, ANSWER_MS, new Error('no answer from storage'))),
  ])

/** The pictures as lines, each handed over as it is read, as far as they can be had: records come first. */
async function pictures(): Promise<Blob[]> {
  const lines: Blob[] = []
  try {
    const store = photoStore('own')
    const ids = await answered(store.ids())
    if (ids.length > 0) lines.push(new Blob([photosStart]))
    for (const photoId of ids) {
      const picture = await answered(store.get(photoId))
      if (picture) lines.push(new Blob([await photoLine(photoId, picture)]))
    }
  } catch {
    // What could be had goes along.
  }
  return lines
}

/** Stores those that are not here; one that cannot be stored is lost, and told. */
async function takePictures(file: Blob): Promise<Pick<TakenIn, 'photos' | 'photosLost'>> {
  let [photos, unkept] = [0, 0]
  const store = photoStore('own')
  const { lost } = await parted(file, async (photoId, picture) => {
    try {
      if (await store.get(photoId)) return
      await store.put(photoId, picture)
      photos++
    } catch {
      unkept++
    }
  })
  return { photos, photosLost: lost + unkept }
}

/** What a file holds, with the way to join it with this phone's journal. `now`: its clock, epoch ms. */
export async function lookInto(
  journal: Journal<TableEvent>,
  file: Blob,
  now: () => number,
): Promise<LookedInto> {
  let pictures = 0
  const { text } = await parted(file, async () => {
    pictures++
  })
  const backup = await readBackup(text)
  if (!backup.ok) return backup
  const { records, madeAt, count, complete } = backup
  const known = new Set(journal.records.map(({ id }) => id))
  const pots = new Set<string>()
  let fresh = 0
  // Nothing of it has been examined yet.
  await inSlices(records as readonly Unexamined[], (record) => {
    if (typeof record?.id !== 'string' || !known.has(record.id)) fresh++
    const potId = record?.event?.kind === 'pot-set' ? record.event.pot?.potId : undefined
    if (typeof potId === 'string') pots.add(potId)
  })
  const whole = complete ? null : { read: records.length, of: count }
  return {
    ok: true,
    day: madeAt === null || !isMoment(madeAt) ? null : fileDay(madeAt),
    records: records.length,
    pots: pots.size,
    pictures,
    fresh,
    whole,
    takeIn: async () => {
      const report = await takeIn(journal, backup, now())
      // The records are in: whatever becomes of the pictures, that is told.
      const shown = await takePictures(file).catch(() => ({ photos: 0, photosLost: pictures }))
      return { ...report, ...shown, whole }
    },
  }
}

type Unexamined = {
  readonly id?: unknown
  readonly event?: { readonly kind?: unknown; readonly pot?: { readonly potId?: unknown } | null } | null
} | null

const isMoment = (ms: number) => !Number.isNaN(new Date(ms).getTime())

/** Joins it: all of it or, if it can't be stored, nothing. */
async function takeIn(
  journal: Journal<TableEvent>,
  { records, aside }: Extract<Backup, { ok: true }>,
  nowMs: number,
): Promise<Omit<TakenIn, 'whole' | 'photos' | 'photosLost'>> {
  const report = await journal.merge(records, nowMs)
  // What that phone could not fold: it comes back when this program can.
  const more = aside.length > 0 ? await journal.merge(aside, nowMs) : { added: 0, known: 0, waiting: 0 }
  return {
    added: report.added + more.added,
    known: report.known + more.known,
    faulty: report.faulty + report.displaced,
    waiting: report.waiting + more.waiting,
    ahead: report.ahead,
  }
}
