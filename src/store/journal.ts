import {
  type AnyEvent,
  compareRecords,
  createRecords,
  examine,
  type JournalRecord,
} from '../../shared/record.ts'
import { type Change, type Journal, type JournalPorts, type Opening, WIPE_WORD } from './contract.ts'
import { isPackKey, keyed, pack } from './pack.ts'
import { quarantineKey, sortLoaded, sortOut } from './quarantine.ts'
import { createSaver } from './saver.ts'
import { unite } from './union.ts'

const UNTOUCHED: Opening = { quarantined: [], lost: [], newer: 0, recovered: 0, failure: null }

/** Fewer single records than this are not worth packing. */
const PACK_FROM = 256
/** A pack's write keeps a hit that comes meanwhile waiting. */
const PACK_MOST = 1000

/**
 * Opens the journal on its ports: loads it, sets aside what cannot be read, takes back what was spilled. Never
 * rejects. There is no snapshot of the state: packs make reading cheap, and folding is.
 */
export async function loadJournal<E extends AnyEvent>(
  ports: JournalPorts,
  isEvent: (event: AnyEvent) => boolean,
): Promise<Journal<E>> {
  type R = JournalRecord<E>
  const { storage, fallback, channel } = ports
  let writer = ''
  let records: readonly R[] = []
  let readOnly = false
  let seq = 0
  let opening = UNTOUCHED
  const packsSeen = new Set<string>()
  const listeners = new Set<(change: Change<E>) => void>()
  const tell = (change: Change<E>) => {
    for (const listener of listeners) listener(change)
  }

  const saver = createSaver<R>({
    write: (values) => storage.write(values),
    fallback: (values) => fallback.keep(writer, values),
    changed: (status) => tell({ kind: 'status', status }),
  })

  const becomeStale = () => {
    if (readOnly) return
    readOnly = true
    tell({ kind: 'stale' })
  }

  /** Adds to the fold. Returns what was new, and sets aside what lost against another content of its id. */
  const takeIn = async (incoming: readonly R[]) => {
    const last = records.at(-1)
    const united = unite(records, incoming)
    records = united.records
    const [first] = united.added
    if (first) {
      const atEnd = !last || compareRecords(last, first) < 0
      tell({ kind: 'records', records: united.added, atEnd })
    }
    const kept = united.displaced.map(
      (value) => [quarantineKey('displaced', value.id, value), value] as const,
    )
    if (kept.length > 0) await storage.quarantine(kept)
    return united
  }

  const load = async () => {
    const loaded = await storage.load()
    for (const [key] of loaded.journal) if (isPackKey(key)) packsSeen.add(key)
    const sorted = sortLoaded<E>(loaded, isEvent)
    readOnly = sorted.newer > 0 || (await storage.isNewer())
    opening = { ...opening, quarantined: sorted.aside, lost: loaded.lost, newer: sorted.newer, failure: null }
    await takeIn(sorted.records)
    if (readOnly) return
    const held = new Set([...loaded.quarantined.map(([key]) => key), ...sorted.out.map((move) => move.to)])
    if (sorted.out.length > 0) await storage.move(sorted.out, 'quarantine')
    if (sorted.back.length > 0) await storage.move(sorted.back, 'journal')
    const ofPacks = sorted.aside.filter((entry) => !held.has(entry.key))
    if (ofPacks.length > 0) await storage.quarantine(ofPacks.map(({ key, value }) => [key, value]))
  }

  /** Takes in what earlier lives of the page could not store; their lines go once it is durable. */
  const recover = async () => {
    for (const [owner, values] of fallback.left()) {
      const { records: read, aside } = sortOut<E>(keyed(values), isEvent)
      const { added } = await takeIn(read)
      opening = {
        ...opening,
        recovered: opening.recovered + added.length,
        quarantined: [...opening.quarantined, ...aside],
      }
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
    await load().catch((error) => {
      opening = { ...opening, failure: String((error as Error | null)?.name ?? error) }
    })
    await named
    if (!readOnly) await recover()
  }

  const requireWritable = () => {
    if (readOnly) throw new Error('The journal was written by a newer program and can only be read')
  }

  channel.listen((message) => {
    if (message.kind === 'wiped') {
      records = []
      return tell({ kind: 'wiped' })
    }
    const { records: read, newer } = sortOut<E>(keyed(message.records), isEvent)
    if (newer > 0) becomeStale()
    takeIn(read).catch(() => {})
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
    append(events, stamp) {
      requireWritable()
      // A hybrid logical clock (doi:10.1007/978-3-319-14472-6_2): later than all that was seen, and near the
      // wall clock, so that what two phones did apart falls into place by time when they meet.
      const order = Math.max(Math.floor(stamp.at), (records.at(-1)?.order ?? 0) + 1)
      const made = createRecords(events, { writer, seq: seq + 1, order }, stamp)
      seq += made.length
      records = [...records, ...made]
      tell({ kind: 'records', records: made, atEnd: true })
      const saved = saver.save(made).then(() => channel.post({ kind: 'records', records: made }))
      return { records: made, saved }
    },
    async refresh() {
      if (opening.failure !== null) return start()
      const known = new Set(records.map((record) => record.id))
      const unseen = (await storage.keys()).filter((key) => !known.has(key) && !packsSeen.has(key))
      if (unseen.length === 0) return
      const { records: read, newer } = sortOut<E>(await storage.fetch(unseen), isEvent)
      if (newer > 0) becomeStale()
      await takeIn(read)
    },
    async merge(candidates) {
      requireWritable()
      const faults = { faulty: 0, newer: 0 }
      const read: R[] = []
      for (const candidate of candidates) {
        const examined = examine<E>(candidate, isEvent)
        if ('record' in examined) read.push(examined.record)
        else if (examined.fault === 'newer') faults.newer++
        else faults.faulty++
      }
      const { added, displaced } = await takeIn(read)
      if (added.length > 0) {
        await saver.save(added)
        channel.post({ kind: 'records', records: added })
      }
      const known = read.length - added.length - displaced.filter((record) => read.includes(record)).length
      return { added: added.length, known, displaced: displaced.length, ...faults }
    },
    async wipe(word) {
      requireWritable()
      if (word !== WIPE_WORD) throw new RangeError(`word: ${word}, ${WIPE_WORD} is wanted`)
      saver.forget()
      await storage.empty()
      for (const owner of fallback.left().keys()) fallback.keep(owner, [])
      records = []
      opening = UNTOUCHED
      channel.post({ kind: 'wiped' })
      tell({ kind: 'wiped' })
    },
    retry: () => saver.retry(),
    async tidy() {
      requireWritable()
      const byId = new Map(records.map((record) => [record.id, record]))
      const singles = (await storage.keys()).flatMap((key) => byId.get(key) ?? [])
      if (singles.length < PACK_FROM) return
      for (let from = 0; from < singles.length; from += PACK_MOST) {
        const packed = singles.slice(from, from + PACK_MOST)
        const [key, value] = pack(packed)
        packsSeen.add(key)
        await storage.replace(
          packed.map((record) => record.id),
          key,
          value,
        )
      }
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
