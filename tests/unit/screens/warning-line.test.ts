import { expect, test } from 'vitest'
import '../../../src/table/forecast/walls.ts'
import { warningText } from '../../../src/screens/parts/warning-line.tsx'
import { adviceFor } from '../../../src/table/advice/warnings.ts'
import { forecastOf } from '../../../src/table/forecast/forecast.ts'
import { planOf } from '../../../src/table/model/plan.ts'
import { WORDS } from '../../../src/words/bench.ts'
import { formats } from '../../../src/words/format.ts'
import { Play } from '../table/play.ts'

test('a full wall is said as a range, with what it drinks again and from when', () => {
  const play = new Play().act({ do: 'lay-demo' }).act({ do: 'logged', potId: 'demo.31', agoMin: 0 }).wait(60)
  const pot = play.table.pots['demo.31']!
  const { warnings } = adviceFor(play.table, pot, planOf(play.table, pot)[1]!.bucketId, play.nowMs)
  const thin = warnings.find(({ kind }) => kind === 'thin')!
  const told = formats(WORDS.en, 'metric', 'en')
  const said =
    /^The wall is full: ([\d.]+) mm to ([\d.]+) mm now\. ([\d.]+) mm from about (\d\d:\d\d)\./.exec(
      warningText(told, play.table, thin),
    )
  const [, low, high, again, clock] = said ?? []
  expect(Number(low)).toBeGreaterThan(0)
  expect(Number(high)).toBeGreaterThan(Number(low))
  expect(Number(again)).toBeGreaterThan(Number(high))
  expect(clock).toBe(told.clock(forecastOf(play.table, pot)!.thirsty.likely))
})
