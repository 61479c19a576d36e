import type { TableEvent } from '../../shared/events.ts'
import { MOST_APART_MS, phoneOfWriter, WRITER } from '../../shared/record.ts'
import { drawnAnew, isBare } from '../device/picture.ts'
import { beCopied } from '../device/seen.ts'
import type { JoinedHow, LookedInto, TakenIn } from '../screens/app.ts'
import { type Backup, readBackup } from '../store/backup.ts'
import type { Journal, Noting } from '../store/index.ts'
import { parted } from '../store/photo-lines.ts'
import { photoStore, SilentStorageError } from '../store/photos.ts'
import { breath, inSlices } from '../store/slices.ts'
import { ofTable } from '../table/model/whose-setting.ts'
import { fileDay } from './file-day.ts'
import { fileTaken, goneOnAs, isCompared, joinNoted, type Maker, metMaker } from './meeting.ts'

/** A picture as this program would keep it: one that bears more than is seen, its place perhaps, is drawn anew. */
const asKept = async (picture: Blob): Promise<Blob> =>
  picture.type === 'image/jpeg' && isBare(new Uint8Array(await picture.arrayBuffer()))
    ? picture
    : drawnAnew(picture)

/** Stores those that are not here; one that cannot be stored, or drawn, is lost, and told. */
async function takePictures(file: Blob, of: number): Promise<Pick<TakenIn, 'photos' | 'photosLost'>> {
  let [photos, unkept, silent] = [0, 0, false]
  const read = new Set<string>()
  const store = photoStore('own')
  const { lost } = await parted(file, async (photoId, picture) => {
    read.add(photoId)
    try {
      if (silent) throw new SilentStorageError()
      if (await store.get(photoId)) return
      await store.put(photoId, await asKept(picture))
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
  let fresh = 0
  const pots = potsCounted()
  /** The last coat that each phone dipped, by its own clock. */
  const dippedMs = new Map<string, number>()
  const compared = comparedIn(journal.records)
  const makers = new Map<string, Maker>()
  /** Up to where each phone knew of which others. */
  const knew = new Map<string, Map<string, number>>()
  // Nothing of it has been examined yet.
  await inSlices(records as readonly Unexamined[], (record) => {
    if (typeof record?.id !== 'string' || !known.has(record.id)) fresh++
    pots.add(record)
    const { writer, order, event, at } = record ?? {}
    if (typeof writer !== 'string' || !WRITER.test(writer) || !Number.isSafeInteger(order)) return
    const phone = phoneOfWriter(writer)
    if (event?.kind === 'dipped') dippedMs.set(phone, Math.max(Number(at) || 0, dippedMs.get(phone) ?? 0))
    if (event?.kind === 'met' && typeof event.phone === 'string' && Number.isFinite(event.aheadMs))
      compared.push([phone, event.phone])
    if (typeof event?.phone === 'string') {
      const of = knew.get(phone) ?? new Map<string, number>()
      const upTo = event.kind === 'was-named' ? Number.POSITIVE_INFINITY : Number(event.upTo) || 0
      knew.set(phone, of.set(event.phone, Math.max(upTo, of.get(event.phone) ?? 0)))
    }
    const { upTo, skewMs } = makers.get(phone) ?? { upTo: 0, skewMs: 0 }
    const byMs = event?.kind === 'clock-moved' && Number.isFinite(event.byMs) ? Number(event.byMs) : 0
    makers.set(phone, { phone, upTo: Math.max(Number(order), upTo), skewMs: skewMs + byMs })
  })
  await breath()
  const maker = makers.get(backup.phone ?? madeBy(makers, knew) ?? '')
  const mayGoOn = maker !== undefined && isUntouched(journal.records)
  const hereMs = now()
  const lastDipMs = Math.max(...dippedMs.values())
  const clock =
    maker && madeAt !== null && madeAt - lastDipMs < LONGEST_WAIT_MS && !isCompared(journal, maker.phone)
      ? { thereMs: madeAt, hereMs }
      : undefined
  /** As both show it. */
  const apartMs = clock ? Math.round(clock.thereMs - clock.hereMs) : Number.POSITIVE_INFINITY
  const isNear = Math.abs(apartMs) <= NEAR_MS
  const isAsked = !isNear && Math.abs(apartMs) <= MOST_APART_MS
  const own = [journal.phone, ...(maker && (isNear || isAsked || mayGoOn) ? [maker.phone] : [])]
  const reached = reachedFrom(own, compared)
  const unclocked = [...dippedMs].filter(
    ([phone, atMs]) => hereMs - atMs < LONGEST_WAIT_MS && !reached.has(phone),
  ).length
  const noted = ({ goesOn, madeNow }: JoinedHow): Noting<TableEvent> | undefined => {
    if (!maker) return undefined
    // One phone from now on, whose clock was set between that one's last record and this one's first.
    if (goesOn) return goneOnAs(maker, madeNow && clock ? -apartMs : 0)
    const seemMs = madeNow || isNear ? apartMs : isAsked ? 0 : Number.POSITIVE_INFINITY
    // Each may have set its clock since its records began, whatever both show.
    const aheadMs = seemMs + skewMs - maker.skewMs
    const told = Math.abs(aheadMs) <= MOST_APART_MS ? aheadMs : undefined
    // A start could not tell whose they are.
    return told !== undefined || mayGoOn ? metMaker(maker, skewMs, told) : undefined
  }
  const whole = complete ? null : { read: records.length, of: count }
  return {
    ok: true,
    day: madeAt === null || !isMoment(madeAt) ? null : fileDay(madeAt),
    records: records.length,
    pots: pots.count(),
    pictures,
    picturesLost: Math.max(lost, backup.pictures - pictures),
    fresh,
    whole,
    unclocked,
    mayGoOn,
    ...(isAsked && clock ? { clock } : {}),
    takeIn: async (how) => {
      const report = await takeIn(journal, backup, now(), noted(how))
      // All that a new phone has by now is in that file, outside of it.
      if (mayGoOn && complete && madeAt !== null) beCopied(Math.min(madeAt, now()))
      // The records are in: whatever becomes of the pictures, that is told.
      const shown = await takePictures(file, backup.pictures).catch(() => ({
        photos: 0,
        photosLost: Math.max(backup.pictures, pictures),
      }))
      return { ...report, ...shown, whole }
    },
  }
}

/** Nothing was done on the phone but set how it looks and sounds. */
const isUntouched = (records: Journal<TableEvent>['records']): boolean =>
  records.every(
    ({ event }) => event.kind === 'settings-set' && Object.keys(ofTable(event.settings)).length === 0,
  )

/** Earlier programs did not say who made a file: the one phone in it that knew of all that the others wrote. */
function madeBy(
  makers: ReadonlyMap<string, Maker>,
  knew: ReadonlyMap<string, ReadonlyMap<string, number>>,
): string | undefined {
  const all = [...makers.values()].filter(({ phone }) =>
    [...makers.values()].every(
      (other) => other.phone === phone || (knew.get(phone)?.get(other.phone) ?? 0) >= other.upTo,
    ),
  )
  return all.length === 1 ? all[0]?.phone : undefined
}

/** The pots that are set up and not taken off, record by record. */
function potsCounted() {
  const said: { readonly potId: string; readonly hit: unknown; readonly on: boolean }[] = []
  const back = new Set<unknown>()
  return {
    add(record: Unexamined): void {
      const { event, hit } = record ?? {}
      const potId = event?.kind === 'pot-set' ? event.pot?.potId : event?.potId
      if (event?.kind === 'taken-back') back.add(event.hit)
      else if (event?.kind === 'put-back') back.delete(event.hit)
      else if ((event?.kind === 'pot-set' || event?.kind === 'pot-gone') && typeof potId === 'string')
        said.push({ potId, hit, on: event.kind === 'pot-set' })
    },
    count(): number {
      const pots = new Set<string>()
      for (const { potId, hit, on } of said) if (!back.has(hit)) on ? pots.add(potId) : pots.delete(potId)
      return pots.size
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
  readonly hit?: unknown
  readonly event?: {
    readonly kind?: unknown
    readonly byMs?: unknown
    readonly phone?: unknown
    readonly aheadMs?: unknown
    readonly upTo?: unknown
    readonly hit?: unknown
    readonly potId?: unknown
    readonly pot?: { readonly potId?: unknown } | null
  } | null
} | null

const isMoment = (ms: number) => !Number.isNaN(new Date(ms).getTime())

/** Joins it: all of it or, if it can't be stored, nothing. */
async function takeIn(
  journal: Journal<TableEvent>,
  { records, aside }: Extract<Backup, { ok: true }>,
  nowMs: number,
  noted: Noting<TableEvent> | undefined,
): Promise<Omit<TakenIn, 'whole' | 'photos' | 'photosLost'>> {
  const report = await joinNoted(journal, records, nowMs, noted)
  // What that phone could not fold: it comes back when this program can.
  const more = aside.length > 0 ? await joinNoted(journal, aside, nowMs) : { added: 0, known: 0, waiting: 0 }
  await fileTaken(journal)
  return {
    added: report.added + more.added,
    known: report.known + more.known,
    faulty: report.faulty + report.displaced,
    waiting: report.waiting + more.waiting,
    ahead: report.ahead,
  }
}
