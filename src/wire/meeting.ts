/** Passing to another phone and taking in from it, by codes on the screen. */

import type { TableEvent } from '../../shared/events.ts'
import type { JournalRecord } from '../../shared/record.ts'
import { CameraError, openCamera } from '../device/camera.ts'
import { openAwake } from '../device/wake.ts'
import { codeOf } from '../pass/code.ts'
import type { Look, Seen } from '../pass/messages.ts'
import { BLOCKS_MOST, reading, type Told } from '../pass/reading.ts'
import { CODES_A_SECOND, showing } from '../pass/showing.ts'
import type { Meeting, Met, Read, Reader } from '../screens/meeting.ts'
import type { Journal } from '../store/index.ts'

/** A worker that has not answered by then is replaced. */
const ANSWER_MS = 5000

/** `now`: this phone's clock, epoch ms. */
export function openMeeting(journal: Journal<TableEvent>, now: () => number): Meeting {
  const read = reading({ phone: journal.phone, records: () => journal.records })
  const awake = openAwake()

  const metAfter = (
    added: readonly JournalRecord<TableEvent>[],
  ): Omit<Met, 'added' | 'known' | 'waiting' | 'faulty' | 'ahead'> => ({
    coats: added.filter(({ event }) => event.kind === 'dipped').length,
    pots: new Set(added.flatMap(({ event }) => (event.kind === 'pot-set' ? [event.pot.potId] : []))).size,
    theyLack: read.theyLack(),
    more: read.met !== undefined && !read.isClosed(),
    aheadMs: read.met?.aheadMs ?? 0,
  })

  /** All of it is kept, or nothing. */
  const takeIn = async (records: readonly unknown[]): Promise<Read> => {
    const before = new Set(journal.records.map(({ id }) => id))
    try {
      const { added, known, waiting, faulty, displaced, ahead } = await journal.merge(records, now())
      const fresh = journal.records.filter(({ id }) => !before.has(id))
      return {
        is: 'met',
        met: { added, known, waiting, faulty: faulty + displaced, ahead, ...metAfter(fresh) },
      }
    } catch {
      return { is: 'unkept' }
    }
  }

  const told = async (seen: Told): Promise<Read> => {
    switch (seen.is) {
      case 'nothing':
      case 'own':
      case 'damaged':
        return { is: seen.is }
      case 'clock':
        return { is: 'clock', aheadMs: seen.aheadMs }
      case 'hello':
        return { is: 'greeted' }
      case 'known':
        return { is: 'met', met: { added: 0, known: 0, waiting: 0, faulty: 0, ahead: 0, ...metAfter([]) } }
      case 'part':
        return { is: 'part', known: seen.known, of: seen.of }
      case 'whole':
        return takeIn(seen.records)
    }
  }

  return {
    aSecond: CODES_A_SECOND,
    stayLit: (on) => awake.want(on),
    show(size) {
      const { phone, records } = journal
      const shown = showing({ phone, records, size, other: read.met, nowMs: now() })
      return {
        records: shown.records,
        of: records.length,
        seconds: Math.max(1, Math.round(shown.codes / CODES_A_SECOND)),
        tooMuch: shown.codes > BLOCKS_MOST,
        code: (index) => codeOf(shown.code(index, now()), size),
      }
    },
    async read(tell) {
      let camera: Awaited<ReturnType<typeof openCamera>>
      try {
        camera = await openCamera()
      } catch (error) {
        tell({ is: 'no-camera', why: error instanceof CameraError ? error.fault : 'none' })
        return undefined
      }
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
          const seenAt = now()
          const text = await eye.textIn(picture)
          if (!open) return
          const news = text === null ? ({ is: 'nothing' } as const) : await told(read.take(text, seenAt))
          if (open) tell(news)
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
