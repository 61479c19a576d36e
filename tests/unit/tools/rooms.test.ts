import { describe, expect, test } from 'vitest'
import { breachesOf, breachOf, importsOf } from '../../tools/rooms.mjs'

const value = (target: string) => ({ target, typeOnly: false })
const type = (target: string) => ({ target, typeOnly: true })

describe('reading imports', () => {
  test('finds every way to import, with its line', () => {
    const text = [
      "import { a } from './a.ts'",
      "import type { B } from './b.ts'",
      'import {',
      '  type C,',
      '  type D,',
      "} from './c.ts'",
      "import { type E, f } from './e.ts'",
      "import './style.css'",
      "export * from './g.ts'",
      "const later = () => import('./h.ts')",
      "new Worker(new URL('./i.ts', import.meta.url))",
    ].join('\n')
    expect(importsOf(text).map(({ line, target, typeOnly }) => [line, target, typeOnly])).toEqual([
      [1, './a.ts', false],
      [2, './b.ts', true],
      [6, './c.ts', true],
      [7, './e.ts', false],
      [9, './g.ts', false],
      [8, './style.css', false],
      [10, './h.ts', false],
      [11, './i.ts', false],
    ])
  })
})

describe('rules', () => {
  test.each([
    ['src/engine/air.ts', './vapour.ts'],
    ['src/table/card.ts', '../engine/air.ts'],
    ['src/table/card.ts', '../../shared/events.ts'],
    ['src/store/journal.ts', '../../shared/record.ts'],
    ['src/screens/bench/bench.tsx', '../../table/card.ts'],
    ['src/screens/bench/bench.tsx', '../../words/index.ts'],
    ['src/screens/bench/bench.tsx', 'preact'],
    ['src/wire/start.ts', '../screens/bench/bench.tsx'],
    ['src/main.tsx', './wire/start.ts'],
    ['sw/sw.ts', '../shared/database.ts'],
  ])('%s may import %s', (path, target) => {
    expect(breachOf(path, value(target))).toBeNull()
  })

  test.each([
    ['src/engine/air.ts', '../table/state.ts'],
    ['src/engine/air.ts', 'luxon'],
    ['src/planner/core.ts', '../engine/air.ts'],
    ['src/table/card.ts', '../planner/core.ts'],
    ['src/table/card.ts', '../store/index.ts'],
    ['src/store/journal.ts', '../device/clock.ts'],
    ['src/device/sound.ts', '../table/state.ts'],
    ['src/ui/bar.tsx', '../words/index.ts'],
    ['src/screens/bench/bench.tsx', '../../engine/air.ts'],
    ['src/screens/bench/bench.tsx', '../../../shared/events.ts'],
    ['src/words/english.ts', '../table/state.ts'],
    ['src/store/journal.ts', '../wire/start.ts'],
    ['src/ui/bar.tsx', '../screens/bench/bench.tsx'],
    ['shared/events.ts', '../src/table/state.ts'],
    ['sw/sw.ts', '../src/store/index.ts'],
    ['src/main.tsx', '../elsewhere/x.ts'],
    ['elsewhere/x.ts', './y.ts'],
  ])('%s may not import %s', (path, target) => {
    expect(breachOf(path, value(target))).not.toBeNull()
  })

  test('types alone may come from where the table says so', () => {
    expect(breachOf('src/table/work.ts', type('../planner/core.ts'))).toBeNull()
    expect(breachOf('src/screens/bench/bench.tsx', type('../../../shared/events.ts'))).toBeNull()
    expect(breachOf('src/engine/air.ts', type('../table/state.ts'))).not.toBeNull()
  })

  test('a breach is shown with file, line and reason', () => {
    const text = "\nimport { save } from '../store/index.ts'\n"
    expect(breachesOf([{ path: 'src/engine/air.ts', text }])).toEqual([
      'src/engine/air.ts:2 imports ../store/index.ts: engine may import engine',
    ])
  })
})
