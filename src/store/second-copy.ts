/** The page's side of the second copy, see `copy-worker.ts`. */

export type CopyAsk =
  | { readonly do: 'compare'; readonly known: string }
  | { readonly do: 'add'; readonly records: readonly object[] }

export type CopyAnswer = {
  readonly unknown: readonly unknown[]
  readonly lacking: readonly string[]
} | null

export interface SecondCopy {
  /** What the copy has beyond these ids, a line each, and which of them it lacks. One text is handed over at once, many are not. */
  compare(known: string): Promise<NonNullable<CopyAnswer>>
  /** Adds records; resolves when they are flushed. */
  add(records: readonly object[]): Promise<void>
}

/** The copy on this phone. Its methods reject where the browser has no private file system. */
export function openSecondCopy(): SecondCopy {
  const worker = new Worker(new URL('./copy-worker.ts', import.meta.url), { type: 'module' })
  const ask = (question: CopyAsk): Promise<CopyAnswer> =>
    new Promise((resolve, reject) => {
      const { port1, port2 } = new MessageChannel()
      port1.onmessage = ({ data }: MessageEvent<{ value: CopyAnswer } | { error: string }>) =>
        'error' in data ? reject(new Error(data.error)) : resolve(data.value)
      worker.addEventListener('error', () => reject(new Error('no worker')), { once: true })
      worker.postMessage(question, [port2])
    })
  return {
    async compare(known) {
      return (await ask({ do: 'compare', known })) ?? { unknown: [], lacking: [] }
    },
    async add(records) {
      if (records.length > 0) await ask({ do: 'add', records })
    },
  }
}
