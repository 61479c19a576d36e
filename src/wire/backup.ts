import type { TableEvent } from '../../shared/events.ts'
import { MOST_APART_MS, phoneOfWriter, WRITER } from '../../shared/record.ts'
import { beCopied } from '../device/seen.ts'
import { openShare } from '../device/share.ts'
import type { JoinedHow, LookedInto, PassedOn, TakenIn } from '../screens/app.ts'
import { fileDay } from '../screens/calendar.ts'
import { type Backup, readBackup, writeBackup } from '../store/backup.ts'
import type { Journal, Noted } from '../store/index.ts'
import { parted, photoLine, photosStart } from '../store/photo-lines.ts'
import { photoStore, SilentStorageError } from '../store/photos.ts'
import { breath, inSlices } from '../store/slices.ts'
import { fileTaken, goneOnAs, isCompared, type Maker, metMaker } from './meeting.ts'

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

/** Stores those that are not here; one that cannot be stored is lost, and told. */
async function takePictures(file: Blob, of: number): Promise<Pick<TakenIn, 'photos' | 'photosLost'>> {
  let [photos, unkept, silent] = [0, 0, false]
  const read = new Set<string>()
  const store = photoStore('own')
  const { lost } = await parted(file, async (photoId, picture) => {
    read.add(photoId)
    try {
      if (silent) throw new SilentStorageError()
      if (await store.get(photoId)) return
      await store.put(photoId, picture)
      photos++
    } catch (error) {
      silent = error instanceof SilentStorageError
      unkept++
    }
  })
  return { photos, photosLost: unkept + Math.max(lost, of - read.size) }
}

/** Waits longer than that are of no coat. */
const LONGEST_WAIT_MS = 86_400_000
/** Clocks that seem no further apart than that are not asked about. */
const NEAR_MS = 60_000

/**
 * What a file holds, with the way to join it with this phone's journal. `now`: its clock, epoch ms, which was set by `skewMs`
 * since its records began.
 */
export async function lookInto(
  journal: Journal<TableEvent>,
  file: Blob,
  now: () => number,
  skewMs = 0,
): Promise<LookedInto> {
  const found = new Set<string>()
  const { lines, lost } = await parted(file, async (photoId) => {
    found.add(photoId)
  })
  const pictures = found.size
  const backup = await readBackup(lines)
  if (!backup.ok) return backup
  const { records, madeAt, count, complete } = backup
  const known = new Set<string>()
  await inSlices(journal.records, ({ id }) => known.add(id))
  const pots = new Set<string>()
  let fresh = 0
  /** The last coat that each phone dipped, by its own clock. */
  const dippedMs = new Map<string, number>()
  const compared = comparedIn(journal.records)
  const makers = new Map<string, Maker>()
  // Nothing of it has been examined yet.
  await inSlices(records as readonly Unexamined[], (record) => {
    if (typeof record?.id !== 'string' || !known.has(record.id)) fresh++
    const potId = record?.event?.kind === 'pot-set' ? record.event.pot?.potId : undefined
    if (typeof potId === 'string') pots.add(potId)
    const { writer, order, event, at } = record ?? {}
    if (typeof writer !== 'string' || !WRITER.test(writer) || !Number.isSafeInteger(order)) return
    const phone = phoneOfWriter(writer)
    if (event?.kind === 'dipped') dippedMs.set(phone, Math.max(Number(at) || 0, dippedMs.get(phone) ?? 0))
    if (event?.kind === 'met' && typeof event.phone === 'string' && Number.isFinite(event.aheadMs))
      compared.push([phone, event.phone])
    const { upTo, skewMs } = makers.get(phone) ?? { upTo: 0, skewMs: 0 }
    const byMs = event?.kind === 'clock-moved' && Number.isFinite(event.byMs) ? Number(event.byMs) : 0
    makers.set(phone, { phone, upTo: Math.max(Number(order), upTo), skewMs: skewMs + byMs })
  })
  await breath()
  // Earlier programs did not say: of one phone it is known.
  const maker = makers.get(backup.phone ?? (makers.size === 1 ? ([...makers.keys()][0] ?? '') : ''))
  const mayGoOn = maker !== undefined && journal.records.length === 0
  const hereMs = now()
  const lastDipMs = Math.max(...dippedMs.values())
  const clock =
    maker && madeAt !== null && madeAt - lastDipMs < LONGEST_WAIT_MS && !isCompared(journal, maker.phone)
      ? { thereMs: madeAt, hereMs, aheadMs: Math.round(madeAt - maker.skewMs - (hereMs - skewMs)) }
      : undefined
  const isNear = clock !== undefined && Math.abs(clock.aheadMs) <= NEAR_MS
  const isAsked = clock !== undefined && !isNear && Math.abs(clock.aheadMs) <= MOST_APART_MS
  const own = [journal.phone, ...(maker && (isNear || isAsked || mayGoOn) ? [maker.phone] : [])]
  const reached = reachedFrom(own, compared)
  const unclocked = [...dippedMs].filter(
    ([phone, atMs]) => hereMs - atMs < LONGEST_WAIT_MS && !reached.has(phone),
  ).length
  const noted = ({ goesOn, madeNow }: JoinedHow): Noted<TableEvent> | undefined => {
    if (!maker) return undefined
    if (goesOn) return goneOnAs(maker)
    const told = madeNow || isNear ? clock?.aheadMs : isAsked ? 0 : undefined
    // A start could not tell whose they are.
    return told !== undefined || mayGoOn ? metMaker(maker, skewMs, told) : undefined
  }
  const whole = complete ? null : { read: records.length, of: count }
  return {
    ok: true,
    day: madeAt === null || !isMoment(madeAt) ? null : fileDay(madeAt),
    records: records.length,
    pots: pots.size,
    pictures,
    picturesLost: Math.max(lost, backup.pictures - pictures),
    fresh,
    whole,
    unclocked,
    mayGoOn,
    ...(isAsked ? { clock } : {}),
    takeIn: async (how) => {
      const report = await takeIn(journal, backup, now(), noted(how))
      // The records are in: whatever becomes of the pictures, that is told.
      const shown = await takePictures(file, backup.pictures).catch(() => ({
        photos: 0,
        photosLost: Math.max(backup.pictures, pictures),
      }))
      return { ...report, ...shown, whole }
    },
  }
}

/** Who compared whose clock with its own, or was that phone. */
const comparedIn = (records: Journal<TableEvent>['records']): (readonly [string, string])[] =>
  records.flatMap(({ writer, event }) =>
    event.kind === 'was-named' || (event.kind === 'met' && event.aheadMs !== undefined)
      ? [[phoneOfWriter(writer), event.phone] as const]
      : [],
  )

/** The phones whose clocks are known to these, at first hand or through another. */
function reachedFrom(
  own: readonly string[],
  compared: readonly (readonly [string, string])[],
): ReadonlySet<string> {
  const reached = new Set(own)
  for (const by of reached) for (const [one, other] of compared) if (one === by) reached.add(other)
  return reached
}

type Unexamined = {
  readonly id?: unknown
  readonly writer?: unknown
  readonly order?: unknown
  readonly at?: unknown
  readonly event?: {
    readonly kind?: unknown
    readonly byMs?: unknown
    readonly phone?: unknown
    readonly aheadMs?: unknown
    readonly pot?: { readonly potId?: unknown } | null
  } | null
} | null

const isMoment = (ms: number) => !Number.isNaN(new Date(ms).getTime())

/** Joins it: all of it or, if it can't be stored, nothing. */
async function takeIn(
  journal: Journal<TableEvent>,
  { records, aside }: Extract<Backup, { ok: true }>,
  nowMs: number,
  noted: Noted<TableEvent> | undefined,
): Promise<Omit<TakenIn, 'whole' | 'photos' | 'photosLost'>> {
  const report = await journal.merge(records, nowMs, noted)
  // What that phone could not fold: it comes back when this program can.
  const more = aside.length > 0 ? await journal.merge(aside, nowMs) : { added: 0, known: 0, waiting: 0 }
  await fileTaken(journal)
  return {
    added: report.added + more.added,
    known: report.known + more.known,
    faulty: report.faulty + report.displaced,
    waiting: report.waiting + more.waiting,
    ahead: report.ahead,
  }
}
