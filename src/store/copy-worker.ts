/** Keeps the second copy in the origin's private file system: another backend than the database's. */
import { compareCopy, linesOf } from './copy-lines.ts'
import type { CopyAnswer, CopyAsk } from './second-copy.ts'

const FILE = 'journal.jsonl'
/** Two windows never write at once. */
const LOCK = 'bucketside-copy'
const LINE_END = 10

/** The part of the File System Standard (WHATWG) that is used, in workers alone. */
interface SyncFile {
  getSize(): number
  read(into: Uint8Array, options: { readonly at: number }): number
  write(bytes: Uint8Array, options: { readonly at: number }): number
  truncate(size: number): void
  flush(): void
  close(): void
}
interface CopyHandle {
  createSyncAccessHandle(): Promise<SyncFile>
}

async function withFile<T>(work: (file: SyncFile) => T): Promise<T> {
  return navigator.locks.request(LOCK, async () => {
    const folder = await navigator.storage.getDirectory()
    const handle = (await folder.getFileHandle(FILE, { create: true })) as unknown as CopyHandle
    const file = await handle.createSyncAccessHandle()
    try {
      return work(file)
    } finally {
      file.close()
    }
  })
}

function readAll(file: SyncFile): string {
  const bytes = new Uint8Array(file.getSize())
  file.read(bytes, { at: 0 })
  return new TextDecoder().decode(bytes)
}

/** At the end, flushed: a kill in between tears this line alone. Throws where the disk took a part only, which is cut off again. */
function append(file: SyncFile, records: readonly object[]): void {
  const size = file.getSize()
  const last = new Uint8Array(1)
  if (size > 0) file.read(last, { at: size - 1 })
  const bytes = new TextEncoder().encode(linesOf(records, size > 0 && last[0] !== LINE_END))
  if (file.write(bytes, { at: size }) < bytes.length) {
    file.truncate(size)
    throw new DOMException('full', 'QuotaExceededError')
  }
  file.flush()
}

function answer(ask: CopyAsk): Promise<CopyAnswer> {
  if (ask.do === 'compare') return withFile((file) => compareCopy(readAll(file), ask.known.split('\n')))
  return withFile((file) => {
    append(file, ask.records)
    return null
  })
}

addEventListener('message', ({ data, ports: [port] }: MessageEvent<CopyAsk>) => {
  answer(data).then(
    (value) => port?.postMessage({ value }),
    (error) => port?.postMessage({ error: String((error as Error | null)?.name ?? error) }),
  )
})
