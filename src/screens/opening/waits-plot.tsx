import { useState } from 'preact/hooks'
import { type Narrowed, narrowing } from '../../table/opening/narrowing.ts'
import { Plot, ticksTo } from '../../ui/plot.tsx'
import { nameOf } from '../text/pot-text.ts'
import { useOpening } from './opening-app.ts'
import { LegendLine, PlotPart, useBackWords, useLater } from './plot-part.tsx'

const HOUR_MIN = 60
const MIN_MS = 60_000
const NONE: readonly Narrowed[] = []
const STEPS_MIN = [15, 30, 60, 120]
const STEPS_CHECKS = [1, 2, 5, 10]

/** What an hour estimated has meant here, check by check. */
export function WaitsPlot() {
  const { table, words, formats } = useOpening()
  const w = useBackWords().waits
  const [picked, setPicked] = useState<number>()
  const { pots, board, air, settings } = table.value
  const made = useLater(() => narrowing(table.value), [pots, board, air, settings])
  const all = made ?? NONE
  const span = (factor: number) => formats.value.span(factor * HOUR_MIN * MIN_MS)
  const [first, last] = [all[0], all.at(-1)]
  const checks = Math.max(0, all.length - 1)
  const of = ({ seen }: Narrowed) => {
    const pot = table.value.pots[seen?.potId ?? '']
    const bucket = table.value.buckets[seen?.bucketId ?? ''] ?? table.value.removed?.[seen?.bucketId ?? '']
    return [pot ? String(nameOf(words.value, pot)) : '', bucket?.facts.name ?? ''] as const
  }
  const one = picked === undefined ? undefined : all[picked]
  const most = Math.ceil((Math.max(...all.map(({ coatHigh }) => coatHigh)) * HOUR_MIN) / 15) * 15
  const ticks = (to: number, number: number, steps: readonly number[]) =>
    ticksTo(0, to, number, steps).map((at) => ({ at, text: String(at) }))
  const said =
    first && last ? w.said(checks, span(last.low), span(last.high), span(first.low), span(first.high)) : ''
  const band = (low: 'low' | 'coatLow', high: 'high' | 'coatHigh') =>
    all.map((at, x) => ({ x, low: at[low] * HOUR_MIN, high: at[high] * HOUR_MIN }))
  return (
    <PlotPart
      title={w.title}
      said={
        !made
          ? ''
          : checks === 0 || !last
            ? w.none
            : `${said} ${w.coat(span(last.coatLow), span(last.coatHigh))}`
      }
      drawn={
        checks === 0 ? undefined : (
          <Plot
            x={{ from: 0, to: checks, ticks: ticks(checks, 8, STEPS_CHECKS), label: w.x }}
            y={{ from: 0, to: most, ticks: ticks(most, 6, STEPS_MIN), label: w.y }}
            bands={[
              { pattern: 'hatch', points: band('coatLow', 'coatHigh') },
              { pattern: 'solid', points: band('low', 'high') },
            ]}
            marks={all.map(({ likely, low, high }, x) => ({
              x,
              y: likely * HOUR_MIN,
              shape: 'dot',
              reach: { along: 'y', from: low * HOUR_MIN, to: high * HOUR_MIN },
            }))}
            picked={picked}
            onPick={setPicked}
            label={`${w.title}. ${said}`}
          />
        )
      }
      legend={(['solid', 'hatch', 'dot'] as const).map((shape) => (
        <LegendLine key={shape} shape={shape} text={w.legend[shape]} />
      ))}
      picked={
        one && {
          line: one.seen
            ? w.line(picked ?? 0, ...of(one), span(one.low), span(one.high))
            : w.before(span(one.low), span(one.high)),
          potId: one.seen?.potId,
        }
      }
      heads={w.heads}
      rows={() => all.map((at, n) => [String(n), ...of(at), span(at.low), span(at.high)])}
      count={all.length}
    />
  )
}
