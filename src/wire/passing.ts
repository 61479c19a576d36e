/** Passing to another phone and taking in from it, by codes on the screen. */

import type { ReadonlySignal } from '@preact/signals'
import type { TableEvent } from '../../shared/events.ts'
import type { Handout } from '../../shared/nouns.ts'
import { type AnyEvent, isBy, type JournalRecord } from '../../shared/record.ts'
import { CameraError, openCamera } from '../device/camera.ts'
import { openAwake } from '../device/wake.ts'
import { codeOf, stillCodeOf } from '../pass/code.ts'
import { handoutTexts, type ReadHandout } from '../pass/handout.ts'
import type { Look, Seen } from '../pass/messages.ts'
import { BLOCKS_MOST, type Met as PhoneMet, reading, type Told } from '../pass/reading.ts'
import { CODES_A_SECOND, showing } from '../pass/showing.ts'
import type { Met, Passing, Read, Reader } from '../screens/passing.ts'
import type { Journal } from '../store/index.ts'
import { decideMeeting } from '../table/decide/decide-meeting.ts'
import type { Table } from '../table/model/state.ts'
import { fileTaken, isCompared, joinNoted, notedWith, skewOfPhone, write } from './meeting.ts'

/** What could not be kept is not tried again before that. */
const AGAIN_MS = 2000
/** A worker that has not answered by then is replaced. */
const ANSWER_MS = 5000

/** That phones met is no news to either. */
const isNews = ({ event }: JournalRecord<AnyEvent>): boolean => event.kind !== 'met'

/** `now`: this phone's clock, epoch ms. */
export function openPassing(
  journal: Journal<TableEvent>,
  table: ReadonlySignal<Table>,
  now: () => number,
): Passing {
  // As it went before it was set: jumps are in the records of the phone that jumped.
  const steadyNow = () => now() - table.peek().skewMs
  const read = reading({ phone: journal.phone, records: () => journal.records })
  const awake = openAwake()

  const metAfter = (
    added: readonly JournalRecord<TableEvent>[],
  ): Omit<Met, 'added' | 'known' | 'waiting' | 'faulty' | 'ahead'> => ({
    coats: added.filter(({ event }) => event.kind === 'dipped').length,
    pots: new Set(
      added.flatMap(({ event }) => (event.kind === 'pot-set' && !event.handed ? [event.pot.potId] : [])),
    ).size,
    theyLack: read.theyLack().filter(isNews).length,
    more: read.met !== undefined && !read.isClosed(),
    // Each may have set its clock since.
    aheadMs: read.met
      ? read.met.aheadMs + skewOfPhone(journal.records, read.met.phone) - table.peek().skewMs
      : 0,
  })

  const metBy = ({ phone, aheadMs, heads }: PhoneMet): readonly TableEvent[] => {
    const upTo = heads.find((head) => head.phone === phone)?.last
    if (upTo === undefined) return []
    const decided = decideMeeting(table.peek(), { do: 'meet', phone, upTo, aheadMs: Math.round(aheadMs) })
    return 'events' in decided ? decided.events : []
  }
  /** All of it is kept, or nothing. */
  const takeIn = async (records: readonly JournalRecord<AnyEvent>[], met: PhoneMet): Promise<Read> => {
    const before = new Set(journal.records.map(({ id }) => id))
    try {
      const events = records.some(isNews) || !isCompared(journal, met.phone) ? metBy(met) : []
      // With what it brought or not at all: who is said to have seen what is not here is asked nothing about it.
      const noted = events.length > 0 ? notedWith(events, table.peek().skewMs) : undefined
      const { known, waiting, faulty, displaced, ahead } = await joinNoted(journal, records, now(), noted)
      const fresh = journal.records.filter(
        (record) => !before.has(record.id) && !isBy(journal.phone)(record) && isNews(record),
      )
      // What it brought of others still.
      await fileTaken(journal)
      return {
        is: 'met',
        met: { added: fresh.length, known, waiting, faulty: faulty + displaced, ahead, ...metAfter(fresh) },
      }
    } catch {
      return { is: 'unkept' }
    }
  }

  const told = async (seen: Told): Promise<Read> => {
    switch (seen.is) {
      case 'nothing':
      case 'own':
      case 'newer':
      case 'damaged':
        return { is: seen.is }
      case 'clock':
        return { is: 'clock', aheadMs: seen.aheadMs }
      case 'handout':
        return examined(seen.read)
      case 'hello':
        return { is: 'greeted' }
      case 'known':
        if (!journal.readOnly && !isCompared(journal, seen.met.phone))
          write(journal, metBy(seen.met), table.peek().skewMs)
        return { is: 'met', met: { added: 0, known: 0, waiting: 0, faulty: 0, ahead: 0, ...metAfter([]) } }
      case 'part':
        return { is: 'part', known: seen.known, of: seen.of }
      case 'whole':
        return takeIn(seen.records, seen.met)
    }
  }

  return {
    phone: journal.phone,
    aSecond: CODES_A_SECOND,
    stayLit: (on) => awake.want(on),
    show(size, back) {
      const { phone, records } = journal
      const shown = showing({ phone, records, size, other: back ? read.met : undefined, nowMs: now() })
      return {
        records: shown.records,
        of: records.length,
        seconds: Math.max(1, Math.round(shown.codes / CODES_A_SECOND)),
        tooMuch: shown.codes > BLOCKS_MOST,
        code: (index) => codeOf(shown.code(index, steadyNow()), size),
      }
    },
    stillCodes: (handout) =>
      handoutTexts(handout).flatMap((text) => {
        const rows = stillCodeOf(text)
        return rows ? [rows] : []
      }),
    async read(tell) {
      let camera: Awaited<ReturnType<typeof openCamera>>
      try {
        camera = await openCamera()
      } catch (error) {
        tell({ is: 'no-camera', why: error instanceof CameraError ? error.fault : 'none' })
        return undefined
      }
      read.begin()
      const eye = openEye()
      let open = true
      const close = () => {
        open = false
        camera.close()
        eye.close()
      }
      const look = async () => {
        while (open) {
          const picture = await camera.next()
          if (!picture) continue
          const seenAt = steadyNow()
          const text = await eye.textIn(picture)
          if (!open) return
          const news = text === null ? ({ is: 'nothing' } as const) : await told(read.take(text, seenAt))
          if (!open) return
          tell(news)
          // What was read is told once; what could not be kept is tried again.
          if (news.is === 'met' || news.is === 'handout') return
          if (news.is === 'unkept') await new Promise((done) => setTimeout(done, AGAIN_MS))
        }
      }
      look().catch(() => {
        close()
        tell({ is: 'no-camera', why: 'busy' })
      })
      return { video: camera.video, close } satisfies Reader
    },
  }
}

/** A handout of which each part is as it may be; what isn't was damaged on its way. */
async function examined(read: ReadHandout): Promise<Read> {
  const { contentFault } = await import('../store/events-schema.ts')
  const { stacks, buckets, class: of } = read
  const said = [
    ...stacks.map((stack) => ({ kind: 'stack-set', stack })),
    ...buckets.map((bucket) => ({ kind: 'bucket-set', bucket })),
    ...(of ? [{ kind: 'board-set', board: of.board }] : []),
    ...(of?.pots ?? []).map((pot) => ({ kind: 'pot-set', pot })),
    ...(of?.plans ?? []).map((plan) => ({ ...(plan as object), kind: 'plan-changed' })),
  ]
  const right = stacks.length > 0 && said.every((event) => contentFault(event as AnyEvent) === undefined)
  return right ? { is: 'handout', handout: read as Handout } : { is: 'damaged' }
}

/** Looks for codes beside the page. */
function openEye() {
  const start = () => new Worker(new URL('../pass/worker.ts', import.meta.url), { type: 'module' })
  let worker = start()
  return {
    close: () => worker.terminate(),
    textIn: ({ width, height, data }: ImageData): Promise<string | null> =>
      new Promise((resolve) => {
        const late = setTimeout(() => {
          worker.terminate()
          worker = start()
          resolve(null)
        }, ANSWER_MS)
        worker.onmessage = ({ data: seen }: MessageEvent<Seen>) => {
          clearTimeout(late)
          resolve(seen.text)
        }
        const pixels = data.buffer as ArrayBuffer
        worker.postMessage({ width, height, pixels } satisfies Look, [pixels])
      }),
  }
}
