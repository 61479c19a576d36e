import {
  type AnyEvent,
  compareRecords,
  createRecords,
  type JournalRecord,
  nextOrder,
  type RecordTime,
} from '../../shared/record.ts'
import type { Change, Journal, JournalPorts, Opening } from './contract.ts'
import { marked } from './marks.ts'
import { isPackKey, keyed } from './pack.ts'
import { asideKey, settle, sortLoaded, sortOut } from './quarantine.ts'
import { createSaver } from './saver.ts'
import { unite } from './union.ts'

const UNTOUCHED: Opening = { quarantined: [], lost: [], newer: 0, recovered: 0, failure: null }

/** Storage that has not answered after this long is told as silent, and waited for meanwhile. */
const ANSWER_MS = 3000

/** Taking in much and packing: fetched when it comes to that. */
const lazyMerge = () => import('./merge.ts')

/**
 * Opens the journal on its ports: loads it, sets aside what cannot be folded, takes back what was spilled. Never
 * rejects. There is no snapshot of the state: packs make reading cheap, and folding is.
 */
export async function loadJournal<E extends AnyEvent>(ports: JournalPorts): Promise<Journal<E>> {
  type R = JournalRecord<E>
  const { storage, fallback, channel, knowledge } = ports
  const { schema } = knowledge
  let writer = ''
  let records: readonly R[] = []
  let readOnly = false
  let seq = 0
  let opening = UNTOUCHED
  const packsSeen = new Set<string>()
  const listeners = new Set<(change: Change<E>) => void>()
  const tell = (change: Change<E>) => {
    for (const listener of listeners) {
      try {
        listener(change)
      } catch (error) {
        // One that fails keeps neither the others nor the write from going on.
        queueMicrotask(() => {
          throw error
        })
      }
    }
  }
  const open = (part: Partial<Opening>) => {
    opening = { ...opening, ...part }
    tell({ kind: 'opening' })
  }

  const saver = createSaver<R>({
    write: (values) => storage.put(values.map((record) => [record.id, marked(record, schema)])),
    fallback: (values) =>
      fallback.keep(
        writer,
        values.map((record) => marked(record, schema)),
      ),
    changed: (status) => tell({ kind: 'status', status }),
  })

  const becomeStale = () => {
    if (readOnly) return
    readOnly = true
    tell({ kind: 'stale' })
  }

  const announceSaved = (saved: readonly R[]) => {
    channel.post({ kind: 'records', records: saved.map((record) => marked(record, schema)) })
    tell({ kind: 'saved', records: saved })
  }

  /** Adds to the fold. Returns what was new, and sets aside what lost against another content of its id. */
  const takeIn = async (incoming: readonly R[], united = unite(records, incoming)) => {
    const last = records.at(-1)
    records = united.records
    const [first] = united.added
    if (first) {
      const atEnd = !last || compareRecords(last, first) < 0
      tell({ kind: 'records', records: united.added, atEnd })
    }
    const kept = united.displaced.map((value) => [asideKey('displaced', value.id, value), value] as const)
    if (kept.length > 0) await storage.quarantine(kept)
    return united
  }

  const load = async () => {
    const loaded = await storage.load()
    for (const [key] of loaded.journal) if (isPackKey(key)) packsSeen.add(key)
    const sorted = await settle(sortLoaded<E>(loaded, knowledge), knowledge)
    readOnly ||= sorted.newer > 0 || (await storage.isNewer())
    await takeIn(sorted.records)
    open({ quarantined: sorted.aside, lost: loaded.lost, newer: sorted.newer, failure: null })
    if (readOnly) return
    const held = new Set([...loaded.quarantined.map(([key]) => key), ...sorted.out.map((move) => move.to)])
    if (sorted.out.length > 0) await storage.move(sorted.out, 'quarantine')
    if (sorted.back.length > 0) await storage.move(sorted.back, 'journal')
    const ofPacks = sorted.aside.filter((entry) => !held.has(entry.key))
    if (ofPacks.length > 0) await storage.quarantine(ofPacks.map(({ key, value }) => [key, value]))
    // Without their marks they are examined again next time, and nothing is lost.
    if (sorted.passed.length > 0)
      storage.put(sorted.passed.map((r) => [r.id, marked(r, schema)])).catch(() => {})
  }

  /** Takes in what earlier lives of the page could not store; their lines go once it is durable. */
  const recover = async () => {
    for (const [owner, values] of fallback.left()) {
      const { records: read, aside } = await settle(sortOut<E>(keyed(values), knowledge), knowledge)
      const { added } = await takeIn(read)
      open({
        recovered: opening.recovered + added.length,
        quarantined: [...opening.quarantined, ...aside],
      })
      storage
        .quarantine(aside.map(({ key, value }) => [key, value]))
        .then(() => saver.save(added))
        .then(() => fallback.keep(owner, []))
        .catch(() => {})
    }
  }

  // Naming the writer writes as well: that goes on while the journal is read.
  const named = ports.writer.then((name) => {
    writer = name
  })

  const start = async () => {
    const failed = (error: unknown) => open({ failure: String((error as Error | null)?.name ?? error) })
    const loading = load().catch(failed)
    const silent = new Promise<'silent'>((resolve) => setTimeout(resolve, ANSWER_MS, 'silent'))
    if ((await Promise.race([loading, silent])) === 'silent') open({ failure: 'TimeoutError' })
    await named
    if (!readOnly) await recover().catch(failed)
  }

  const writeBack = async () => {
    if (!readOnly && records.length > 0)
      await storage.put(await (await lazyMerge()).entriesOf(records, schema))
  }

  const sign = (events: readonly E[], stamp: RecordTime, orderMs = stamp.at): R[] => {
    const order = nextOrder(records.at(-1)?.order ?? 0, orderMs)
    const made = createRecords(events, { writer, seq: seq + 1, order }, stamp)
    seq += made.length
    return made
  }

  const requireWritable = () => {
    if (readOnly) throw new Error('read-only: a newer program wrote')
  }

  channel.listen((message) => {
    const sorted = sortOut<E>(keyed(message.records), knowledge)
    if (sorted.newer > 0) becomeStale()
    takeIn(sorted.records).catch(() => {})
    if (sorted.doubts.length === 0) return
    settle({ ...sorted, records: [] }, knowledge)
      .then((settled) => takeIn(settled.records))
      .catch(() => {})
  })

  await start()

  return {
    get phone() {
      return writer.split('.')[0] ?? ''
    },
    get records() {
      return records
    },
    get opening() {
      return opening
    },
    get readOnly() {
      return readOnly
    },
    get status() {
      return saver.status
    },
    append(events, stamp, orderMs) {
      requireWritable()
      const made = sign(events, stamp, orderMs)
      records = [...records, ...made]
      // On its way before anybody is told: whatever they do with it, it is kept.
      const saved = saver.save(made).then(() => announceSaved(made))
      tell({ kind: 'records', records: made, atEnd: true })
      return { records: made, saved }
    },
    async refresh() {
      if (opening.failure !== null) return start()
      const keys = await storage.keys()
      if (keys.length === 0 && records.length > 0) await writeBack()
      const unseen = new Set(keys.filter((key) => !packsSeen.has(key)))
      for (const { id } of records) unseen.delete(id)
      if (unseen.size === 0) return
      const sorted = await settle(sortOut<E>(await storage.fetch([...unseen]), knowledge), knowledge)
      for (const key of unseen) if (isPackKey(key)) packsSeen.add(key)
      if (sorted.newer > 0) becomeStale()
      await takeIn(sorted.records)
    },
    async merge(candidates, nowMs, noted) {
      requireWritable()
      const parts = {
        records: () => records,
        knowledge,
        storage,
        packsSeen,
        requireWritable,
        sign,
        takeIn,
        announceSaved,
      }
      return (await lazyMerge()).mergeInto<E>(parts, candidates, nowMs, noted)
    },
    retire: becomeStale,
    retry: () => saver.retry(),
    writeBack,
    async tidy() {
      requireWritable()
      await (await lazyMerge()).tidied(records, schema, storage, packsSeen)
    },
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    close() {
      channel.close()
      storage.close()
    },
  }
}
