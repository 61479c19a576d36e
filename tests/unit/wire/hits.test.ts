import { signal } from '@preact/signals'
import { describe, expect, test, vi } from 'vitest'
import { openHits } from '../../../src/wire/hits.ts'
import { Play, setting } from '../table/play.ts'

type Parts = Parameters<typeof openHits>[0]

/** Hits on the demo evening, with what was heard and what was kept. */
function hitsOn({ readOnly = false, unread = false, fails = false } = {}) {
  const { table } = new Play().act({ do: 'lay-demo' })
  const sounded = vi.fn(() => {
    if (fails) throw new Error('no sound')
  })
  const refused = vi.fn()
  const append = vi.fn()
  const felt = vi.fn()
  const fault = vi.fn()
  const parts = {
    records: {
      table: signal(table),
      readOnly: signal(readOnly),
      unread: signal(unread),
      journal: { append, subscribe: () => () => {} },
    },
    moment: { seen: signal(table) },
    jumps: { skewMs: () => 0 },
    devices: {
      clock: { pageMs: () => 0, epochAt: (ms: number) => ms },
      haptics: { feel: felt },
    },
    sounding: { with: (job: (on: unknown) => void) => job({ hit: sounded, sound: { refused } }) },
    fault,
    afterHit: () => {},
  }
  const hits = openHits(parts as unknown as Parts)
  const wax = () => hits.act({ do: 'waxed', potId: 'demo.33' }, 0, setting)
  const clear = () => hits.act({ do: 'clear-table' }, 0, setting)
  return { wax, clear, sounded, refused, append, fault }
}

describe('a hit', () => {
  test('is kept while what is kept cannot be read, unless it would take that away unseen', () => {
    const on = hitsOn({ unread: true })
    expect(on.wax()).toBeUndefined()
    expect(on.clear()).toEqual({ code: 'unread' })
    expect(on.append).toHaveBeenCalledOnce()
  })

  test('is sounded and kept', () => {
    const on = hitsOn()
    expect(on.wax()).toBeUndefined()
    expect(on.sounded).toHaveBeenCalledOnce()
    expect(on.append.mock.calls[0]![0]).toEqual([{ kind: 'waxed', potId: 'demo.33', implied: false }])
  })

  test('is kept on a page that is not served safely, which has no such numbers', () => {
    const none = vi.spyOn(crypto, 'randomUUID').mockImplementation(() => {
      throw new TypeError('crypto.randomUUID is not a function')
    })
    const on = hitsOn()
    expect(on.wax()).toBeUndefined()
    expect(on.append).toHaveBeenCalledOnce()
    none.mockRestore()
  })

  test('is kept although its sound fails', () => {
    const on = hitsOn({ fails: true })
    expect(on.wax()).toBeUndefined()
    expect(on.fault).toHaveBeenCalledOnce()
    expect(on.append).toHaveBeenCalledOnce()
  })

  test('is refused before it sounds where nothing can be written, and nothing is thrown', () => {
    const on = hitsOn({ readOnly: true })
    expect(on.wax()).toEqual({ code: 'read-only' })
    expect(on.sounded).not.toHaveBeenCalled()
    expect(on.append).not.toHaveBeenCalled()
    expect(on.refused).toHaveBeenCalledOnce()
  })
})
