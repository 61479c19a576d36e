/** Pictures in a backup: a line each, after the records, whatever became of some of them. */
import { expect, test } from 'vitest'
import { readBackup, writeBackup } from '../../../src/store/backup.ts'
import { parted, photoLine, photosStart } from '../../../src/store/photo-lines.ts'
import { PATIENCE_MS, processorMs } from '../../fixtures/patience.ts'

const picture = (size: number) =>
  new Blob([Uint8Array.from({ length: size }, (_, i) => (i * 37) % 256)], { type: 'image/jpeg' })
const records = writeBackup([], { at: 1_772_560_800_000, tz: 0 })
const bytesOf = async (blob: Blob) => [...new Uint8Array(await blob.arrayBuffer())]

async function read(parts: readonly string[]) {
  const kept = new Map<string, Blob>()
  const { lines, lost } = await parted(new Blob([...parts]), async (photoId, blob) => {
    kept.set(photoId, blob)
  })
  return { kept, lines, text: lines.join('\n'), lost }
}

test('every picture comes back byte by byte, and the records before them are whole', async () => {
  const [small, large] = [picture(3), picture(100_001)]
  const { kept, lines, lost } = await read([
    records,
    photosStart,
    await photoLine('f.small', small),
    await photoLine('f.large', large),
  ])
  expect(lost).toBe(0)
  expect([...kept.keys()]).toEqual(['f.small', 'f.large'])
  expect(await bytesOf(kept.get('f.large') ?? new Blob())).toEqual(await bytesOf(large))
  expect(kept.get('f.small')?.type).toBe('image/jpeg')
  expect(await readBackup(lines)).toMatchObject({ ok: true, complete: true, count: 0 })
})

test('a damaged picture is counted and costs no other; a torn file gives what is whole of it', async () => {
  const [one, two] = [await photoLine('f.one', picture(500)), await photoLine('f.two', picture(500))]
  const damaged = one.replace(/"data":"./, '"data":"Q')
  expect(damaged).not.toBe(one)
  const forged = (await photoLine('f.x', picture(9))).replace('image/jpeg', 'text/html')
  const empty = await photoLine('f.none', new Blob([], { type: 'image/jpeg' }))
  const { kept, lost } = await read([records, photosStart, damaged, two, forged, empty, one.slice(0, 200)])
  expect([...kept.keys()]).toEqual(['f.two'])
  expect(lost).toBe(4)
})

test('a backup without pictures is read as it was', async () => {
  const { kept, text, lost } = await read([records])
  expect([kept.size, lost, text.trim()]).toEqual([0, 0, records.trim()])
})

test('one line without an end is read in no time as far as a backup may reach, and refused beyond', async () => {
  const since = processorMs()
  const { text } = await read(['x'.repeat(8_000_000)])
  expect(text).toHaveLength(8_000_000)
  expect(processorMs() - since).toBeLessThan(PATIENCE_MS)
  const endless = await read(Array.from({ length: 70 }, () => 'x'.repeat(1_000_000)))
  expect(endless.text.length).toBeLessThan(66_000_000)
  expect(await readBackup(endless.lines)).toEqual({ ok: false, code: 'too-large' })
})

test('of a wrong file of millions of short lines no more is read than takes a moment', async () => {
  const since = processorMs()
  const { lines } = await parted(new Blob(['\n'.repeat(20_000_000)]), async () => {})
  expect(lines.length).toBeLessThan(1_100_000)
  expect(processorMs() - since).toBeLessThan(PATIENCE_MS)
})
