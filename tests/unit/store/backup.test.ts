import { describe, expect, test } from 'vitest'
import { readBackup, writeBackup } from '../../../src/store/backup.ts'
import { hitOf } from './sample.ts'

const records = [...hitOf('a', 1, 1, 3), ...hitOf('b', 1, 2)]
const text = writeBackup(records, { at: 1_700_000_000_000, tz: 60 })

describe('a backup file', () => {
  test('gives back the records it was made of', () => {
    expect(readBackup(text)).toEqual({ ok: true, records, madeAt: 1_700_000_000_000, complete: true })
  })

  test('of an empty journal is a backup too', () => {
    const empty = writeBackup([], { at: 1, tz: 0 })
    expect(readBackup(empty)).toMatchObject({ ok: true, records: [], complete: true })
  })

  test('that lost a record says so, and gives the rest', () => {
    const lines = text.split('\n')
    const shorter = [...lines.slice(0, 2), ...lines.slice(3)].join('\n')
    expect(readBackup(shorter)).toMatchObject({ ok: true, complete: false, records: { length: 3 } })
  })

  test('with a record exchanged says so', () => {
    expect(readBackup(text.replace(/"sum":\d+\},/, '"sum":5},'))).toMatchObject({ complete: false })
  })

  test('that is torn gives its whole lines', () => {
    const torn = text.slice(0, text.lastIndexOf('"b 1"'))
    expect(readBackup(torn)).toEqual({
      ok: true,
      records: records.slice(0, 3),
      madeAt: null,
      complete: false,
    })
  })

  test.each(['', 'hello', '{}', '[]', '{"app":"other","records":[]}', '{"app":"bucketside","v":1}'])(
    'is not %j',
    (other) => {
      expect(readBackup(other)).toEqual({ ok: false, code: 'not-a-backup' })
    },
  )

  test('of a newer program is refused as such', () => {
    expect(readBackup(text.replace('"v":1,', '"v":2,'))).toEqual({ ok: false, code: 'newer' })
    const shaped = JSON.stringify({ app: 'bucketside', v: 2, made: 'today', packs: [] })
    expect(readBackup(shaped)).toEqual({ ok: false, code: 'newer' })
  })
})
