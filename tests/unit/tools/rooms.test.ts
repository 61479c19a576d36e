import { describe, expect, test } from 'vitest'
import { breachesOf, breachOf, circlesOf, importsOf, mapOf, reachesOf } from '../../tools/rooms.mjs'

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
    ['src/engine/air/air.ts', './vapour.ts'],
    ['src/engine/air/air.ts', '../check.ts'],
    ['src/engine/wait/forecast.ts', '../wall/pot.ts'],
    ['src/engine/index.ts', './wait/forecast.ts'],
    ['src/screens/desk.tsx', './board/board.tsx'],
    ['src/table/card/card.ts', '../../engine/air/air.ts'],
    ['src/table/card/card.ts', '../model/plan.ts'],
    ['src/table/card/card.ts', '../../../shared/events.ts'],
    ['src/store/journal.ts', '../../shared/record.ts'],
    ['src/screens/bench/bench.tsx', '../../table/card/card.ts'],
    ['src/screens/bench/bench.tsx', '../../words/index.ts'],
    ['src/screens/bench/bench.tsx', 'preact'],
    ['src/wire/start.ts', '../screens/bench/bench.tsx'],
    ['src/main.tsx', './wire/start.ts'],
    ['sw/sw.ts', '../shared/database.ts'],
  ])('%s may import %s', (path, target) => {
    expect(breachOf(path, value(target))).toBeNull()
  })

  test.each([
    ['src/engine/air/air.ts', '../../table/model/state.ts'],
    ['src/engine/air/air.ts', '../wall/pot.ts'],
    ['src/engine/air/air.ts', '../slop/film.ts'],
    ['src/engine/air/air.ts', '../index.ts'],
    ['src/engine/check.ts', './air/air.ts'],
    ['src/engine/elsewhere/x.ts', '../check.ts'],
    ['src/table/model/plan.ts', '../card/card.ts'],
    ['src/screens/bench/bench.tsx', '../board/board.tsx'],
    ['src/screens/text/amounts.ts', '../desk/app.ts'],
    ['src/engine/air/air.ts', 'luxon'],
    ['src/planner/search/search.ts', '../../engine/air/air.ts'],
    ['src/table/card/card.ts', '../../planner/types.ts'],
    ['src/table/card/card.ts', '../../store/index.ts'],
    ['src/store/journal.ts', '../device/clock.ts'],
    ['src/device/sound.ts', '../table/model/state.ts'],
    ['src/ui/bar.tsx', '../words/index.ts'],
    ['src/screens/bench/bench.tsx', '../../engine/air/air.ts'],
    ['src/screens/bench/bench.tsx', '../../../shared/events.ts'],
    ['src/words/english.ts', '../table/model/state.ts'],
    ['src/store/journal.ts', '../wire/start.ts'],
    ['src/ui/bar.tsx', '../screens/bench/bench.tsx'],
    ['shared/events.ts', '../src/table/model/state.ts'],
    ['sw/sw.ts', '../src/store/index.ts'],
    ['src/main.tsx', '../elsewhere/x.ts'],
    ['elsewhere/x.ts', './y.ts'],
  ])('%s may not import %s', (path, target) => {
    expect(breachOf(path, value(target))).not.toBeNull()
  })

  test('types alone may come from where the table says so', () => {
    expect(breachOf('src/table/steps/work.ts', type('../../planner/types.ts'))).toBeNull()
    expect(breachOf('src/screens/bench/bench.tsx', type('../../../shared/events.ts'))).toBeNull()
    expect(breachOf('src/engine/air/air.ts', type('../../table/model/state.ts'))).not.toBeNull()
  })

  test('a breach is shown with file, line and reason', () => {
    const text = "\nimport { save } from '../../store/index.ts'\n"
    expect(breachesOf([{ path: 'src/engine/air/air.ts', text }])).toEqual([
      'src/engine/air/air.ts:2 imports ../../store/index.ts: engine may import engine',
    ])
  })

  test('values that need each other in a circle are found; types and what is fetched late make none', () => {
    const circle = (back: string) => [
      { path: 'src/table/model/a.ts', text: "import { b } from './b.ts'" },
      { path: 'src/table/model/b.ts', text: back },
    ]
    expect(circlesOf(circle("import { a } from './a.ts'"))).toEqual([
      ['src/table/model/a.ts', 'src/table/model/b.ts'],
    ])
    expect(circlesOf(circle("import type { A } from './a.ts'"))).toEqual([])
    expect(circlesOf(circle("export const later = () => import('./a.ts')"))).toEqual([])
  })

  test('the map counts files and names what a sub-room imports', () => {
    const text = "import { clamp } from '../check.ts'\nimport { root } from '../numeric/root.ts'"
    expect(mapOf([{ path: 'src/engine/air/air.ts', text }])).toEqual([
      'engine/air             1  (ground) numeric',
    ])
  })
})

describe('what the phone keeps', () => {
  test.each(['src/ui/a.ts', 'src/screens/room/a.tsx', 'src/table/a.ts', 'src/planner/a.ts'])(
    'is not reached for from %s',
    (path) => {
      const text = ['// localStorage', ' * In local storage', "const kept = localStorage.getItem('a')"].join(
        '\n',
      )
      expect(reachesOf({ path, text })).toEqual([
        `${path}:3 reaches for storage: that is for store and device`,
      ])
      expect(reachesOf({ path, text: "indexedDB.open('a')" })).toHaveLength(1)
    },
  )
  test.each(['src/store/a.ts', 'src/device/a.ts', 'shared/a.ts', 'src/wire/a.ts', 'src/main.tsx', 'sw/a.ts'])(
    'is, from %s',
    (path) => {
      expect(reachesOf({ path, text: 'localStorage.clear()' })).toEqual([])
    },
  )
})
