import { useMemo, useState } from 'preact/hooks'
import { type ToldFound, toldFound } from '../../table/opening/told-found.ts'
import { Plot, type PlotMark, ticksTo } from '../../ui/plot.tsx'
import { nameOf } from '../text/pot-text.ts'
import { reachText, useOpening } from './opening-app.ts'
import { LegendLine, PlotPart, useBackWords, useLater } from './plot-part.tsx'
import { scaleOf } from './run-scale.ts'

const LEAST_MM = 5
const NONE: readonly ToldFound[] = []

/** What is none, and what is on the shelf, stand in the lanes. */
const toldAt = (mm: number, roomMm: number): number =>
  mm <= 0 ? Number.NEGATIVE_INFINITY : mm >= roomMm ? Number.POSITIVE_INFINITY : mm

function markOf({ lowMm, likelyMm, highMm, roomMm, found, by }: ToldFound): PlotMark {
  const x = toldAt(likelyMm, roomMm)
  const reach = { along: 'x', from: toldAt(lowMm, roomMm), to: toldAt(highMm, roomMm) } as const
  switch (found.kind) {
    case 'none':
      return { x, y: Number.NEGATIVE_INFINITY, shape: 'down', reach }
    case 'shelf':
      return { x, y: Number.POSITIVE_INFINITY, shape: 'up', reach }
    case 'some':
      return { x, y: roomMm / 2, shape: 'bar', reach: { along: 'y', from: 1, to: roomMm } }
    case 'within':
      return { x, y: found.mm / 2, shape: 'bar', reach: { along: 'y', from: 0, to: found.mm } }
    case 'measured':
      return { x, y: found.mm, shape: by === 'guess' ? 'dot' : 'ring', reach }
  }
}

/** Where each melt was told to end, and where it did; a run that is none, or beyond the wall, stands at the edge. */
export function RunsPlot() {
  const { table, words, formats } = useOpening()
  const w = useBackWords().runs
  const [picked, setPicked] = useState<number>()
  const { pots, tiles, settings } = table.value
  const { units } = settings
  const made = useLater(() => toldFound(table.value), [pots, tiles])
  const all = made ?? NONE
  const count = (test: (one: ToldFound) => boolean) => all.filter(test).length
  const mm = (at: number, roomMm: number) =>
    reachText(words.value, formats.value, at >= roomMm ? 'shelf' : at)
  const foundText = ({ found }: ToldFound): string =>
    found.kind === 'some'
      ? words.value.opening.run.some
      : found.kind === 'within'
        ? words.value.opening.is.good
        : reachText(
            words.value,
            formats.value,
            found.kind === 'none' ? 0 : found.kind === 'shelf' ? 'shelf' : found.mm,
          )
  const cells = (one: ToldFound): readonly [string, string, string, string, string] => [
    String(nameOf(words.value, one.pot)),
    mm(one.likelyMm, one.roomMm),
    mm(one.lowMm, one.roomMm),
    mm(one.highMm, one.roomMm),
    foundText(one),
  ]
  const one = picked === undefined ? undefined : all[picked]
  const said = w.said(
    all.length,
    count(({ is }) => is === 'within'),
    count(({ is }) => is === 'farther'),
    count(({ is }) => is === 'less'),
  )
  const edges = w.edges(
    count(({ found }) => found.kind === 'none'),
    count(({ shelved }) => shelved),
  )
  const marks = useMemo(() => all.map(markOf), [all])
  const most = Math.max(LEAST_MM, ...marks.flatMap(({ x, y }) => [x, y].filter((at) => Number.isFinite(at))))
  // As on the ruler by which a run is tapped.
  const { markMm, every, number } = scaleOf(units)
  const stepsMm = every.map((marks) => marks * markMm)
  const steps = ticksTo(0, most, 6, stepsMm)
  const step = (steps[1] ?? LEAST_MM) - (steps[0] ?? 0)
  const to = Math.ceil(most / step) * step
  const ticks = ticksTo(0, to, 6, stepsMm).map((at) => ({ at, text: number(Math.round(at / markMm)) }))
  const shown = new Set(marks.map(({ shape }) => shape))
  return (
    <PlotPart
      title={w.title}
      said={!made ? '' : all.length === 0 ? w.none : `${said} ${edges}`}
      drawn={
        all.length === 0 ? undefined : (
          <Plot
            x={{ from: 0, to, ticks: ticks.slice(1, -1), label: w.x[units], lanes: [w.noRun, w.shelf] }}
            y={{ from: 0, to, ticks: ticks.slice(1, -1), label: w.y[units], lanes: [w.noRun, w.shelf] }}
            marks={marks}
            lines={[
              [
                [0, 0],
                [to, to],
              ],
            ]}
            picked={picked}
            onPick={setPicked}
            label={`${w.title}. ${said} ${edges}`}
          />
        )
      }
      legend={(['dot', 'ring', 'down', 'up', 'bar'] as const)
        .filter((shape) => shown.has(shape))
        .map((shape) => <LegendLine key={shape} shape={shape} text={w.legend[shape]} />)}
      picked={one && { line: w.line(...cells(one)), potId: one.pot.facts.potId }}
      heads={w.heads}
      rows={() => all.toReversed().map(cells)}
      count={all.length}
    />
  )
}
