import { useMemo, useState } from 'preact/hooks'
import { type DensityPoint, densityCourse } from '../../table/opening/density-course.ts'
import { Choice } from '../../ui/choice.tsx'
import { Plot, ticksTo } from '../../ui/plot.tsx'
import { Swatch } from '../../ui/swatch.tsx'
import { tagOf } from '../../words/languages.ts'
import { useDays } from '../days.ts'
import { nameOf } from '../text/pot-text.ts'
import { useOpening } from './opening-app.ts'
import { LegendLine, PlotPart, useBackWords } from './plot-part.tsx'

const DAY_MS = 86_400_000
const STEPS = [0.01, 0.02, 0.05, 0.1, 0.2]
/** With more of them the letters would lie on each other. */
const LETTERS = 24
/** Nearer than this is at the edge of the target, g/mL. */
const SAME = 1e-9

/** What a bucket's coats were dipped at over time, against its target. */
export function DensityPlot() {
  const { table, words, formats } = useOpening()
  const w = useBackWords().density
  const days = useDays()
  const [picked, setPicked] = useState<number>()
  const buckets = Object.values(table.value.buckets)
  const [chosen, setChosen] = useState<string>()
  const bucket = buckets.find(({ facts }) => facts.bucketId === chosen) ?? buckets[0]
  const bucketId = bucket?.facts.bucketId ?? ''
  const course = useMemo(() => densityCourse(table.value, bucketId), [table.value.pots, bucket])
  if (!bucket || !course) return null
  const { points, filledAt, low, high } = course
  const { skewMs, settings } = table.value
  const f = formats.value
  const coats = points.filter(({ pot }) => pot !== undefined)
  const held = coats.map(({ gramsPerMl }) => f.density(gramsPerMl)).toSorted()
  const thinner = points.filter((point) => point.thinner).length
  const inside = coats.filter(({ gramsPerMl }) => gramsPerMl > low - SAME && gramsPerMl < high + SAME)
  const said = [
    ...(coats.length > 0
      ? [
          w.said(bucket.facts.name, coats.length, held[0] ?? '', held.at(-1) ?? ''),
          w.within(inside.length, f.density(low), f.density(high)),
        ]
      : []),
    points.length > coats.length ? w.weighed(points.length - coats.length) : '',
    thinner > 0 ? w.thinner(thinner) : '',
  ]
    .filter(Boolean)
    .join(' ')
  const lineOf = ({ pot, at, gramsPerMl }: DensityPoint) =>
    pot
      ? w.dipped(String(nameOf(words.value, pot)), days.moment(at), f.density(gramsPerMl))
      : w.cup(days.moment(at), f.density(gramsPerMl))
  const one = picked === undefined ? undefined : points[picked]
  const [from, to] = spanOf(points.map(({ at }) => at))
  const all = points.map(({ gramsPerMl }) => gramsPerMl)
  const [least, most] = [Math.min(low, ...all) - 0.01, Math.max(high, ...all) + 0.01]
  const day = new Intl.DateTimeFormat(tagOf(settings.language), { day: 'numeric', month: 'short' })
  const isFilled = filledAt !== undefined && filledAt > from && filledAt < to
  return (
    <PlotPart
      title={w.title}
      choice={
        <Choice
          label={w.bucket}
          hidden
          options={buckets.map(({ facts }) => ({
            value: facts.bucketId,
            label: <Swatch pattern={facts.pattern} letter={facts.letter} size={34} />,
            name: facts.name,
          }))}
          value={bucketId}
          onChoose={(id) => {
            setChosen(id)
            setPicked(undefined)
          }}
        />
      }
      said={points.length === 0 ? w.none : said}
      drawn={
        points.length === 0 ? undefined : (
          <Plot
            x={{
              from,
              to,
              ticks: [0.12, 0.5, 0.88].map((share) => {
                const at = from + share * (to - from)
                return { at, text: to - from < 2 * DAY_MS ? f.clock(at + skewMs) : day.format(at + skewMs) }
              }),
              label: w.x,
            }}
            y={{
              from: least,
              to: most,
              ticks: ticksTo(least, most, 6, STEPS).map((at) => ({ at, text: f.density(at) })),
              label: w.y,
            }}
            bands={[
              {
                pattern: 'hatch',
                points: [
                  { x: from, low, high },
                  { x: to, low, high },
                ],
              },
            ]}
            lines={
              isFilled
                ? [
                    [
                      [filledAt, least],
                      [filledAt, most],
                    ],
                  ]
                : []
            }
            marks={points.map(({ at, gramsPerMl, pot, thinner: isThinner }) => ({
              x: at,
              y: gramsPerMl,
              shape: pot ? 'ring' : 'square',
              ...(isThinner && thinner <= LETTERS ? { letter: 'w' } : {}),
            }))}
            picked={picked}
            onPick={setPicked}
            label={`${w.title}. ${said}`}
          />
        )
      }
      legend={
        <>
          <LegendLine shape="ring" text={w.legend.ring} />
          {coats.length < points.length ? <LegendLine shape="square" text={w.legend.square} /> : null}
          <LegendLine shape="hatch" text={w.legend.hatch} />
          {isFilled ? <LegendLine shape="letter" text={w.legend.line} /> : null}
          {thinner > 0 && thinner <= LETTERS ? <li>{w.legend.w}</li> : null}
        </>
      }
      picked={one && { line: lineOf(one), potId: one.pot?.facts.potId }}
      heads={w.heads}
      rows={() =>
        points
          .toReversed()
          .map(({ pot, at, gramsPerMl }) => [
            pot ? String(nameOf(words.value, pot)) : w.cupName,
            days.moment(at),
            f.density(gramsPerMl),
          ])
      }
      count={points.length}
    />
  )
}

/** From the first to the last of these moments with room at both ends, half a day at least. */
function spanOf(moments: readonly number[]): readonly [number, number] {
  const [from, to] = [Math.min(...moments), Math.max(...moments)]
  const room = Math.max(DAY_MS / 4, (to - from) * 0.04)
  return [from - room, to + room]
}
