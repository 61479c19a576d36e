import { crc32 } from '../../shared/crc.ts'
import { PHOTO_MOST_BYTES } from '../table/model/limits.ts'
import { breath, SLICE_MS } from './slices.ts'

/**
 * Pictures in a backup: after the records, one a line, so that neither side ever holds them all at once. A program that
 * knows none of it passes the lines over.
 */
const START = '{"photos":['
const ID = /^[\w.~-]{1,100}$/
const TYPES: readonly unknown[] = ['image/jpeg', 'image/png', 'image/webp']
/** The records before them; more is no backup. */
const LARGEST_CHARS = 64_000_000
/** A line counts for so many at least: of a wrong file's millions of short ones no more is read than takes a second. */
const LEAST_CHARS = 64
/** So many lines are taken between two looks at the clock. */
const STEP = 50
/** Bytes turned to letters at once: more arguments than this a browser may refuse. */
const PART = 0x8000

/** The line before the pictures. */
export const photosStart = `${START}\n`

/** A picture as a line of a backup. */
export async function photoLine(photoId: string, picture: Blob): Promise<string> {
  const bytes = new Uint8Array(await picture.arrayBuffer())
  let binary = ''
  for (let i = 0; i < bytes.length; i += PART) binary += String.fromCharCode(...bytes.subarray(i, i + PART))
  const data = btoa(binary)
  return `${JSON.stringify({ photo: photoId, type: picture.type, sum: crc32(data), data })},\n`
}

/** The picture of a line; undefined where it is damaged, or none of ours. */
function pictureOf(line: string): { readonly photoId: string; readonly picture: Blob } | undefined {
  try {
    const { photo, type, sum, data } = JSON.parse(line.replace(/,\s*$/, '')) as Record<string, unknown>
    if (typeof photo !== 'string' || !ID.test(photo) || typeof type !== 'string' || !TYPES.includes(type))
      return undefined
    if (
      typeof data !== 'string' ||
      data === '' ||
      data.length > PHOTO_MOST_BYTES * 1.4 ||
      crc32(data) !== sum
    )
      return undefined
    const bytes = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0))
    return { photoId: photo, picture: new Blob([bytes], { type }) }
  } catch {
    return undefined
  }
}

/** The lines of a backup before its pictures, and how many of those could not be read. */
export interface Parted {
  readonly lines: readonly string[]
  readonly lost: number
}

/** Reads a backup as it comes; `keep` has one picture after another. */
export async function parted(
  file: Blob,
  keep: (photoId: string, picture: Blob) => Promise<void>,
): Promise<Parted> {
  const lines: string[] = []
  let chars = 0
  let lost = 0
  let pictures = false
  /** Waited for only with a picture: a wrong file may have millions of lines. */
  const take = (line: string): Promise<void> | undefined => {
    if (!pictures) {
      pictures = line.startsWith(START)
      if (!pictures && chars <= LARGEST_CHARS) {
        lines.push(line)
        chars += Math.max(line.length + 1, LEAST_CHARS)
      }
      return undefined
    }
    if (!line.startsWith('{')) return undefined
    const found = pictureOf(line)
    if (found) return keep(found.photoId, found.picture)
    lost++
    return undefined
  }
  const reader = file.stream().pipeThrough(new TextDecoderStream()).getReader()
  // A line whose end has not come, in its parts: joined once, or one long line would be copied with every part.
  let [begun, begunChars]: [string[], number] = [[], 0]
  let since = performance.now()
  let taken = 0
  const isMore = () => begunChars > LARGEST_CHARS || chars > LARGEST_CHARS
  while (!isMore()) {
    const { done, value } = await reader.read()
    if (done) break
    let from = 0
    for (let end = value.indexOf('\n'); end >= 0 && !isMore(); end = value.indexOf('\n', from)) {
      begun.push(value.slice(from, end))
      const kept = take(begun.join(''))
      from = end + 1
      begun = []
      if (kept) await kept
      else if (++taken % STEP > 0) continue
      if (performance.now() - since <= SLICE_MS) continue
      await breath()
      since = performance.now()
    }
    if (from > 0) begunChars = 0
    begun.push(value.slice(from))
    begunChars += value.length - from
  }
  if (isMore()) await reader.cancel()
  if (begunChars > 0) await take(begun.join(''))
  return { lines, lost }
}
