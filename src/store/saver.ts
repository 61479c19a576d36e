/** A write not done after this long is told to the person, though it may still succeed. */
const PATIENCE_MS = 2000
const RETRY_MS = 5000

/** `saved`: nothing is outstanding. `saving`: all is well so far. `not-saved`: it failed or takes too long; kept trying. */
export type SaveStatus = 'saved' | 'saving' | 'not-saved'

export interface SaverPorts<T> {
  /** All or none, durable when it resolves, idempotent. */
  write(values: readonly T[]): Promise<void>
  /** Keeps exactly these elsewhere meanwhile. */
  fallback(values: readonly T[]): void
  /** Called when {@link Saver.status} changed. */
  changed(status: SaveStatus): void
}

export interface Saver<T> {
  readonly status: SaveStatus
  /** Resolves once the values are durable, however many tries it takes. Never rejects. */
  save(values: readonly T[]): Promise<void>
  /** Tries now what is outstanding. */
  retry(): void
}

interface Batch<T> {
  readonly values: readonly T[]
  readonly done: () => void
}

/** Writes at once, holds on to what fails, and tries again until it is durable. */
export function createSaver<T>({ write, fallback, changed }: SaverPorts<T>): Saver<T> {
  const open = new Set<Batch<T>>()
  let status: SaveStatus = 'saved'
  let timer: ReturnType<typeof setTimeout> | undefined

  const become = (next: SaveStatus) => {
    if (next === status) return
    status = next
    changed(status)
  }

  const outstanding = () => [...open].flatMap((batch) => batch.values)

  const trouble = () => {
    if (open.size === 0) return
    // Once in trouble, `save` keeps the line current.
    if (status !== 'not-saved') fallback(outstanding())
    become('not-saved')
    timer ??= setTimeout(retry, RETRY_MS)
  }

  const finish = (batches: Iterable<Batch<T>>) => {
    for (const batch of batches) {
      open.delete(batch)
      batch.done()
    }
    if (open.size > 0) return
    if (status === 'not-saved') fallback([])
    clearTimeout(timer)
    timer = undefined
    become('saved')
  }

  const attempt = (batches: readonly Batch<T>[]) => {
    const patience = setTimeout(trouble, PATIENCE_MS)
    write(batches.flatMap((batch) => batch.values))
      .then(() => finish(batches), trouble)
      .finally(() => clearTimeout(patience))
  }

  const retry = () => {
    clearTimeout(timer)
    timer = undefined
    if (open.size > 0) attempt([...open])
  }

  return {
    get status() {
      return status
    },
    save(values) {
      return new Promise((resolve) => {
        const batch = { values, done: resolve }
        open.add(batch)
        if (status === 'not-saved') {
          // What failed goes first, in the same transaction: the stored journal has no gaps.
          fallback(outstanding())
          attempt([...open])
        } else {
          become('saving')
          attempt([batch])
        }
      })
    },
    retry,
  }
}
