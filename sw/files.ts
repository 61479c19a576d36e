/** The files of each version of the app: kept whole, examined before they are, and looked up. */
import { crc32 } from '../shared/crc.ts'

/** A file of this version. `integrity`: as in Subresource Integrity (W3C), of its bytes. */
export interface FileEntry {
  readonly url: string
  readonly integrity: string
}

const PREFIX = 'bucketside-files-'
/** So many files are fetched at a time. */
const AT_ONCE = 6

/** The name of a version follows from its files. */
export const versionOf = (files: readonly FileEntry[]): string =>
  crc32(files.map(({ url, integrity }) => `${url} ${integrity}`).join()).toString(36)

export const cacheName = (version: string): string => PREFIX + version

/** Media types (IANA registry) of what a version is made of, by the ending of the name. */
const TYPES: Readonly<Record<string, string>> = {
  css: 'text/css; charset=utf-8',
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  json: 'application/json; charset=utf-8',
  mp3: 'audio/mpeg',
  png: 'image/png',
  svg: 'image/svg+xml',
  txt: 'text/plain; charset=utf-8',
  webmanifest: 'application/manifest+json; charset=utf-8',
  woff2: 'font/woff2',
}

/**
 * A file of a version as it is given out, whatever its host said: of its own type, and one that may answer a navigation,
 * which no redirected response may (Fetch standard, HTTP fetch).
 */
function asOurs(url: string, found: Response): Response {
  const type = TYPES[/\.(\w+)$/.exec(new URL(url, location.href).pathname)?.[1] ?? ''] ?? null
  const said = found.headers.get('content-type')
  const bare = (of: string | null) => of?.split(';')[0]
  // One that is right already stays the browser's own: with it come the scripts it has compiled.
  if (!found.redirected && (type === null || bare(said) === bare(type))) return found
  const headers = new Headers(found.headers)
  if (type !== null) headers.set('content-type', type)
  return new Response(found.body, { status: found.status, headers })
}

async function integrityOf(response: Response): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', await response.arrayBuffer())
  return `sha256-${btoa(String.fromCharCode(...new Uint8Array(digest)))}`
}

/** A file that an older version left here and that has not changed since. */
async function keptEarlier({ url, integrity }: FileEntry): Promise<Response | undefined> {
  for (const name of await caches.keys()) {
    const found = await (await caches.open(name)).match(url, { ignoreVary: true })
    if (found && (await integrityOf(found.clone())) === integrity) return found
  }
  return undefined
}

/** The file from the host. Rejects what is not exactly what the manifest says: an error page, half a file. */
async function fetched({ url, integrity }: FileEntry): Promise<Response> {
  const response = await fetch(url, { cache: 'no-cache' })
  if (!response.ok) throw new Error(`${url}: ${response.status}`)
  if ((await integrityOf(response.clone())) !== integrity) throw new Error(`${url} is not what it should be`)
  return response
}

/** Keeps every file of a version that is not kept yet. Rejects when one of them cannot be had as it should be. */
export async function keepAll(version: string, files: readonly FileEntry[]): Promise<void> {
  const cache = await caches.open(cacheName(version))
  const kept = new Set((await cache.keys()).map(({ url }) => url))
  const missing = files.filter(({ url }) => !kept.has(new URL(url, location.href).href))
  const work = async () => {
    for (let file = missing.shift(); file; file = missing.shift())
      await cache.put(file.url, asOurs(file.url, (await keptEarlier(file)) ?? (await fetched(file))))
  }
  await Promise.all(Array.from({ length: AT_ONCE }, work))
}

/** Whether every file of a version is kept. */
export async function isWhole(version: string, files: readonly FileEntry[]): Promise<boolean> {
  const cache = await caches.open(cacheName(version))
  const kept = new Set((await cache.keys()).map(({ url }) => url))
  return files.every(({ url }) => kept.has(new URL(url, location.href).href))
}

/** Lets go of all versions but these. */
export async function keepOnly(versions: readonly (string | undefined)[]): Promise<void> {
  const names = new Set(versions.map((version) => version && cacheName(version)))
  const old = (await caches.keys()).filter(
    (name) => (name.startsWith(PREFIX) && !names.has(name)) || name.startsWith('workbox-'),
  )
  await Promise.all(old.map((name) => caches.delete(name)))
}

/**
 * A kept file: of the version that is shown, else of any other. A page of the version before finds its own parts, as
 * their names say their content. Undefined as well where what is kept cannot be read: the network may have it.
 */
export async function keptFile(request: Request | string, version: string): Promise<Response | undefined> {
  const shown = cacheName(version)
  const names = await caches.keys().catch(() => [])
  for (const name of [shown, ...names.filter((other) => other.startsWith(PREFIX) && other !== shown)]) {
    const found = await caches
      .open(name)
      .then((cache) => cache.match(request, { ignoreVary: true }))
      .catch(() => undefined)
    // An earlier worker kept it as the host said.
    if (found) return asOurs(typeof request === 'string' ? request : request.url, found)
  }
  return undefined
}
