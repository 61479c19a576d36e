import { signal } from '@preact/signals'
import { expect, test, vi } from 'vitest'
import { coneAhead } from '../../../src/table/load/fire.ts'
import { KILN_SIZES } from '../../../src/table/load/kiln-sizes.ts'
import type { Table } from '../../../src/table/model/state.ts'
import { callTitle, openKilnCalls } from '../../../src/wire/kiln-calls.ts'
import { WORDS } from '../../../src/words/bench.ts'
import { formats } from '../../../src/words/format.ts'
import { Play } from '../table/play.ts'

test('a cone is called anew after each look at it, and once a look', () => {
  const play = new Play().act({ do: 'set-kiln', kiln: KILN_SIZES.round })
  const [kilnId = ''] = Object.keys(play.table.kilns ?? {})
  play.act({
    do: 'begin-load',
    kilnId,
    firing: { cone: '6', make: 'american', riseCPerH: 60, holdMin: 0 },
  })
  const [loadId = ''] = Object.keys(play.table.loads ?? {})
  play.act({ do: 'light', loadId, sure: true }).wait(8 * 3600)
  for (const tempC of [1130, 1160]) play.act({ do: 'read-heat', loadId, tempC }).wait(1800)

  const table = signal<Table>(play.table)
  const now = signal(play.nowMs)
  const warn = vi.fn()
  const lent = { table, now, formats: signal({ clock: String }), sounding: { sound: { warn } } }
  openKilnCalls(lent as unknown as Parameters<typeof openKilnCalls>[0])
  /** How often it has rung by then. */
  const rungAt = (atMs: number): number => {
    now.value = atMs
    return warn.mock.calls.length
  }
  const look = (is: 'standing' | 'bending' | 'down', cone = '6') => {
    play.nowMs = now.value
    play.act({ do: 'see-cone', loadId, cone, is })
    table.value = play.table
  }
  const due = () => coneAhead(play.table, play.table.loads![loadId]!)!

  expect(rungAt(due().lower - 1000)).toBe(0)
  expect(rungAt(due().lower + 60_000)).toBe(1)
  look('down', '5')
  expect(rungAt(now.value + 60_000)).toBe(1)
  look('standing')
  expect(rungAt(now.value + 9 * 60_000)).toBe(1)
  expect(rungAt(now.value + 2 * 60_000)).toBe(2)
  look('bending')
  expect(rungAt(due().lower + 10 * 60_000)).toBe(3)
  play.nowMs = now.value
  table.value = play.act({ do: 'read-heat', loadId, tempC: 1215, sure: true }).table
  expect(rungAt(now.value + 60_000)).toBe(3)
})

test('a call is titled in the units of the phone', () => {
  const play = new Play()
  const titles = () => {
    const { units } = play.table.settings
    const lent = { table: signal<Table>(play.table), formats: signal(formats(WORDS.en, units, 'en')) }
    return (['lid', 'unload', 'cone'] as const).map((what) => callTitle(lent, what))
  }
  expect(titles()).toEqual([
    'Kiln: about at 120 °C, the lid',
    'Kiln: about at 60 °C, unload',
    'Kiln: look at the cones',
  ])
  play.act({ do: 'set-settings', settings: { units: 'us' } })
  expect(titles().slice(0, 2)).toEqual(['Kiln: about at 248 °F, the lid', 'Kiln: about at 140 °F, unload'])
})
