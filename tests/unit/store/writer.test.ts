import { expect, test } from 'vitest'
import type { Database } from '../../../shared/database.ts'
import { createRecords } from '../../../shared/record.ts'
import { nameWriter } from '../../../src/store/writer.ts'

/** A database whose one value is what the phone is said to be called. */
function called(kept: unknown) {
  const held = { phone: kept }
  const done = <T>(result: T) => {
    const request = { result, onsuccess: () => {}, oncomplete: () => {} }
    queueMicrotask(() => request.onsuccess())
    return request
  }
  const objects = {
    get: () => done(held.phone),
    put(value: unknown) {
      held.phone = value
    },
    get transaction() {
      const request = done(undefined)
      queueMicrotask(() => request.oncomplete())
      return request
    },
  }
  const database = { store: () => async (_mode: string, work: (store: unknown) => unknown) => work(objects) }
  return { held, database: database as unknown as Database }
}

test.each([7, null, '', 'Ä B!', '__proto__', 'x'.repeat(90), { toString: 'a' }])(
  'a phone that is said to be called %j gets a name that records can bear, and keeps it',
  async (kept) => {
    const { held, database } = called(kept)
    const writer = await nameWriter(database, 'Ä!')
    expect(() =>
      createRecords([{ kind: 'held' }], { writer, seq: 1, order: 1 }, { at: 1, tz: 0 }),
    ).not.toThrow()
    expect(held.phone).toBe(writer.split('.')[0])
  },
)

test('a phone keeps its name, and has that of the lost database where there is none', async () => {
  const named = called('mine')
  expect(await nameWriter(named.database, 'older')).toMatch(/^mine\.[a-z0-9]{8}$/)
  const lost = called(undefined)
  expect(await nameWriter(lost.database, 'older')).toMatch(/^older\./)
  expect(lost.held.phone).toBe('older')
})
