import { describe, expect, test } from 'vitest'
import { faultText, openFaults } from '../../../src/device/faults.ts'

const memory = (text?: string) => {
  const kept = new Map(text === undefined ? [] : [['bucketside.faults', text]])
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
  }
}

describe('the log of faults', () => {
  test('is there again after a reload, with when, where and what', () => {
    const place = memory()
    openFaults(
      () => place,
      () => 5000,
    ).note('room', new TypeError('no such thing'))
    const again = openFaults(
      () => place,
      () => 0,
    ).all()
    expect(again).toMatchObject([{ at: 5000, times: 1, where: 'room', what: 'TypeError: no such thing' }])
    expect(faultText(again, 'this phone')).toMatch(
      /^this phone\n\n1970-01-01T00:00:05.000Z, 1 x, room\nTypeError: no such thing\nTypeError/,
    )
  })

  test('counts the same fault in a row, and keeps the latest twenty', () => {
    let now = 0
    const faults = openFaults(memory, () => now)
    for (; now < 100; now++) faults.note('bench', 'again')
    expect(faults.all()).toMatchObject([{ at: 0, lastAt: 99, times: 100 }])
    for (let i = 0; i < 30; i++) faults.note('bench', `fault ${i}`)
    expect(faults.all()).toHaveLength(20)
    expect(faults.all().at(-1)!.what).toBe('fault 29')
  })

  test('keeps little of a long text', () => {
    const faults = openFaults(memory, () => 0)
    faults.note('bench', new Error('x'.repeat(1_000_000)))
    expect(JSON.stringify(faults.all()).length).toBeLessThan(5000)
  })

  test.each(['', '{', '7', '[null,{"at":1}]', '{"length":3}'])('starts anew where it reads %j', (text) => {
    expect(
      openFaults(
        () => memory(text),
        () => 0,
      ).all(),
    ).toEqual([])
  })

  test('does without a place to write', () => {
    const walled = () => {
      throw new DOMException('walled off', 'SecurityError')
    }
    const faults = openFaults(walled, () => 0)
    faults.note('bench', 'gone')
    expect(faults.all()).toHaveLength(1)
  })
})
