import { signal } from '@preact/signals'
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import type { Wake } from '../../../src/device/ports.ts'
import { openAttending } from '../../../src/wire/attending.ts'
import { Play } from '../table/play.ts'

beforeEach(() => {
  vi.useFakeTimers()
  vi.stubGlobal('document', { visibilityState: 'visible' })
  vi.stubGlobal('localStorage', { getItem: () => null, setItem: () => undefined })
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

it('lists what came due before the clock moves on: no card under the list is said', () => {
  const play = new Play().act({ do: 'lay-demo' }).act({ do: 'logged', potId: 'demo.31', agoMin: 2 })
  let wake: (wake: Wake) => void = () => undefined
  const clock = { epochMs: () => play.nowMs, pageMs: () => 0, untakenMs: () => 0, onJump: () => undefined }
  const parts = {
    records: {
      table: signal(play.table),
      readOnly: signal(false),
      journal: { records: [], phone: 'here', refresh: () => Promise.resolve() },
    },
    devices: { clock, lifecycle: { onWake: (each: typeof wake) => (wake = each) } },
  }
  const seen: boolean[] = []
  const attending = openAttending(
    parts.records as never,
    { act: () => undefined } as never,
    parts.devices as never,
    { skewMs: () => 0 } as never,
    () => seen.push(attending.at.value !== undefined),
  )
  play.wait(25 * 60)
  wake({ reason: 'visible', gapMs: 25 * 60_000, atMs: play.nowMs } as Wake)
  expect(seen).toEqual([true])
})
