/** Which version is shown: the newest, unless it did not start twice. Kept beside the files, as workers come and go. */

const CACHE = 'bucketside-starts'
const KEY = './starts.json'
/** A page that was left sooner says nothing about its version, ms. */
const LEAST_MS = 1000
/** So many starts in a row that came to nothing. */
const FAILED_MOST = 2

export interface Starts {
  /** The version of the worker in charge. */
  readonly version?: string
  /** The one before it. */
  readonly before?: string
  /** The one that started last. */
  readonly worked?: string
  /** Starts of `version` that came to nothing. */
  readonly failed: number
  /** When a page was given out that has not said yet that it works, epoch ms. */
  readonly since?: number
}

export async function readStarts(): Promise<Starts> {
  try {
    const kept = await (await caches.open(CACHE)).match(KEY)
    return kept ? ((await kept.json()) as Starts) : { failed: 0 }
  } catch {
    return { failed: 0 }
  }
}

export async function keepStarts(starts: Starts): Promise<void> {
  await (await caches.open(CACHE)).put(KEY, new Response(JSON.stringify(starts)))
}

/** A version has taken over. */
export const takenOver = (starts: Starts, version: string): Starts =>
  starts.version === version
    ? starts
    : {
        version,
        failed: 0,
        ...(starts.version === undefined ? {} : { before: starts.version }),
        ...(starts.worked === undefined ? {} : { worked: starts.worked }),
      }

/** A page is asked for. */
export function asked(starts: Starts, nowMs: number): Starts {
  const { since, ...rest } = starts
  const waitedMs = since === undefined ? 0 : nowMs - since
  // A clock that was set back says nothing either.
  return { ...rest, failed: rest.failed + (waitedMs >= LEAST_MS ? 1 : 0), since: nowMs }
}

export const hasFallenBack = ({ version, worked, failed }: Starts): boolean =>
  failed >= FAILED_MOST && worked !== undefined && worked !== version

/** The version whose page is given out. */
export const shownVersion = (starts: Starts): string | undefined =>
  hasFallenBack(starts) ? starts.worked : starts.version

/** The page that was given out has drawn its first screen. */
export function started(starts: Starts): Starts {
  const { since: _since, ...rest } = starts
  if (hasFallenBack(starts) || starts.version === undefined) return rest
  return { ...rest, failed: 0, worked: starts.version }
}
