import { describe, expect, test } from 'vitest'
import { readBackup, writeBackup } from '../../../src/store/backup.ts'
import { PATIENCE_MS, processorMs } from '../../fixtures/patience.ts'
import { hitOf } from './sample.ts'

const records = [...hitOf('a', 1, 1, 3), ...hitOf('b', 1, 2)]
const aside = [{ v: 2, what: 'a newer program wrote' }]
const at = { at: 1_700_000_000_000, tz: 60 }
const text = writeBackup(records, at, aside)

describe('a backup file', () => {
  test('gives back the records it was made of, and what was set aside', async () => {
    const whole = {
      ok: true,
      records,
      aside,
      madeAt: 1_700_000_000_000,
      count: 4,
      complete: true,
      pictures: 0,
      phone: null,
    }
    expect(await readBackup(text)).toEqual(whole)
    expect(await readBackup(text.replaceAll('\n', '\r\n'))).toEqual(whole)
  })

  test('says which phone made it', async () => {
    const made = writeBackup(records, at, aside, 0, 'b')
    expect(await readBackup(made)).toMatchObject({ ok: true, phone: 'b', complete: true })
    expect(await readBackup(JSON.stringify(JSON.parse(made), null, 2))).toMatchObject({ phone: 'b' })
  })

  test('laid out anew by another program is read as well', async () => {
    expect(await readBackup(JSON.stringify(JSON.parse(text), null, 2))).toMatchObject({
      records,
      aside,
      complete: true,
    })
  })

  test('of an empty journal is a backup too', async () => {
    expect(await readBackup(writeBackup([], at))).toMatchObject({ ok: true, records: [], complete: true })
  })

  test('that lost a record says so, and gives the rest', async () => {
    const lines = text.split('\n')
    const shorter = [...lines.slice(0, 2), ...lines.slice(3)].join('\n')
    const lost = { ok: true, complete: false, count: 4, records: { length: 3 } }
    expect(await readBackup(shorter)).toMatchObject(lost)
  })

  test('with a record exchanged says so', async () => {
    expect(await readBackup(text.replace(/"sum":\d+\},/, '"sum":5},'))).toMatchObject({ complete: false })
  })

  test('says of how many pictures it was made with, torn off before them or not', async () => {
    const pictured = writeBackup(records, at, aside, 3)
    expect(await readBackup(pictured)).toMatchObject({ complete: true, pictures: 3 })
    expect(await readBackup(JSON.stringify(JSON.parse(pictured), null, 2))).toMatchObject({ pictures: 3 })
  })

  test('that is torn gives its whole lines, and says of how many', async () => {
    const torn = text.slice(0, text.lastIndexOf('"b 1"'))
    const read = { records: records.slice(0, 3), aside: [], complete: false, count: 4 }
    expect(await readBackup(torn)).toMatchObject(read)
  })

  test('that lost its head gives the records it has', async () => {
    const headless = text.split('\n').slice(2).join('\n')
    const lost = { ok: true, records: records.slice(1), complete: false, count: null }
    expect(await readBackup(headless)).toMatchObject(lost)
  })

  test.each(['', 'hello', '{}', '[]', '{"app":"other","records":[]}', '{"app":"bucketside","v":1}'])(
    'is not %j',
    async (other) => {
      expect(await readBackup(other)).toEqual({ ok: false, code: 'not-a-backup' })
    },
  )

  test.each([
    ['empty lines', '\n'],
    ['lines of brackets', '{\n'],
    ['lines like records', `{"writer" and what follows makes it long enough to be one, but none\n`],
  ])(
    'is not a file of millions of %s, and that is soon told',
    async (_what, line) => {
      const other = line.repeat(Math.ceil(4_000_000 / line.length))
      const since = processorMs()
      expect(await readBackup(other)).toEqual({ ok: false, code: 'not-a-backup' })
      expect(processorMs() - since).toBeLessThan(PATIENCE_MS)
    },
    60_000,
  )

  test('of a newer program is refused as such', async () => {
    expect(await readBackup(text.replace('"v":1,', '"v":2,'))).toEqual({ ok: false, code: 'newer' })
    const shaped = JSON.stringify({ app: 'bucketside', v: 2, made: 'today', packs: [] })
    expect(await readBackup(shaped)).toEqual({ ok: false, code: 'newer' })
  })
})
