import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { Card } from '../../table/card/card.ts'
import { drawingOf } from '../../table/forecast/drawing.ts'
import type { BandMs } from '../../table/forecast/forecast.ts'
import { wetnessAt } from '../../table/forecast/wetness.ts'
import type { PotState, Table } from '../../table/model/state.ts'
import { dueAt, dueWhat } from '../../table/steps/steps.ts'
import { stepsOf } from '../../table/steps/work.ts'
import { PotOutline } from '../../ui/outline.tsx'
import { PressButton } from '../../ui/press.tsx'
import { Swatch } from '../../ui/swatch.tsx'
import { useApp } from '../app.ts'
import { nameOf, placeOf } from '../text/pot-text.ts'
import './wait-rows.css'

type Wait = Extract<Card, { kind: 'wait' }>

/** Something that wants the hands later: a pot, a bucket, or a pot that is kept for one. */
interface Row {
  readonly at: number
  readonly what: 'touch' | 'wax-sets' | 'wipe-dries' | 'damp-dries' | 'foot-check' | 'stir' | 'dip'
  readonly pot?: PotState | undefined
  readonly bucketId?: string | undefined
  readonly band?: BandMs | undefined
}

/** Past the likely end of the last of them. */
const AXIS_PART = 1.25
const SHORTEST_AXIS_MS = 5 * 60_000
const MOST_ROWS = 6
/** As in the style sheet, with its border. */
const LEAST_ROW_PX = 60

/** All that waits, soonest first. */
function rowsOf(table: Table, card: Wait, now: number): readonly Row[] {
  const kept = (card.kept ?? []).flatMap(({ potIds, bucketId, at }) =>
    potIds.map((potId): Row => ({ at, what: 'dip', pot: table.pots[potId], bucketId })),
  )
  const waiting = stepsOf(table, now).flatMap(({ pot, step }): Row[] => {
    const what = kept.some((row) => row.pot === pot) ? undefined : dueWhat(table, pot, step)
    return what ? [{ at: dueAt(step), what, pot, band: 'dry' in step ? step.dry : undefined }] : []
  })
  const stirs = [card.next, ...card.after].flatMap((due): Row[] =>
    due?.what === 'stir' ? [{ at: due.at, what: 'stir', bucketId: due.bucketId }] : [],
  )
  return [...kept, ...waiting, ...stirs].sort((a, b) => a.at - b.at)
}

/** How many rows the list has room for; all clocks of the rows shown are on one axis, so the others may not stretch it. */
function useHolds() {
  const list = useRef<HTMLUListElement>(null)
  const [holds, setHolds] = useState(MOST_ROWS)
  useLayoutEffect(() => {
    const of = list.current
    if (!of) return
    const look = () => setHolds(Math.min(MOST_ROWS, Math.max(1, Math.floor(of.clientHeight / LEAST_ROW_PX))))
    look()
    const observer = new ResizeObserver(look)
    observer.observe(of)
    return () => observer.disconnect()
  }, [])
  return { list, holds }
}

/** A row a pot: where its film still shines and where it is damp under it, when it may be dry at the soonest, likely and at the latest; a touch opens it. */
export function WaitRows({ card }: { readonly card: Wait }) {
  const { table, words, formats, now, go } = useApp()
  const w = words.value.bench
  const { list, holds } = useHolds()
  const rows = rowsOf(table.value, card, now.value).slice(0, holds)
  const ends = rows.map(({ at, band }) => band?.likely ?? at).filter(Number.isFinite)
  const axisMs = Math.max(SHORTEST_AXIS_MS, (Math.max(now.value, ...ends) - now.value) * AXIS_PART)
  const along = (at: number) => `${Math.min(100, Math.max(0, ((at - now.value) / axisMs) * 100))}%`
  return (
    <ul ref={list} class="dues figures">
      {rows.map((row) => {
        const { at, what, pot, bucketId, band } = row
        const glaze = table.value.buckets[bucketId ?? '']?.facts
        const clock = Number.isFinite(at) ? formats.value.clock(at + table.value.skewMs) : w.waitNever
        const mark = glaze && <Swatch pattern={glaze.pattern} letter={glaze.letter} size={36} />
        const told = (
          <>
            <span class="due-what">
              <span>{w.dueWhat[what]}</span>
              {pot ? mark : null}
            </span>
            <span class={Number.isFinite(at) ? 'due-clock' : 'due-never'}>{clock}</span>
            <span class="due-span" aria-hidden="true">
              {band && Number.isFinite(band.upper) ? (
                <i style={{ left: along(band.lower), right: `calc(100% - ${along(band.upper)})` }} />
              ) : null}
              {Number.isFinite(at) ? <b style={{ left: along(band?.likely ?? at) }} /> : null}
            </span>
          </>
        )
        if (!pot)
          return (
            <li key={`stir ${bucketId}`} class="due">
              {mark}
              <strong style={{ '--n': glaze?.name.length ?? 1, '--clock': clock.length }}>
                {glaze?.name}
              </strong>
              {told}
            </li>
          )
        const drawing = drawingOf(table.value, pot, 'as-is')
        const high = drawing.outer.at(-1)?.zMm ?? 0
        const wet = wetnessAt(table.value, pot, now.value)
        return (
          <li key={pot.facts.potId}>
            <PressButton class="due" onPress={() => go({ at: 'pot', potId: pot.facts.potId, from: 'bench' })}>
              <PotOutline
                {...drawing}
                width={48}
                height={52}
                label={placeOf(pot)}
                on={(x, y) =>
                  (['damp', 'film'] as const).map((of) => (
                    <rect
                      key={of}
                      class={`due-${of}`}
                      x={x(-20, 0)}
                      width={x(20, 0) - x(-20, 0)}
                      y={y(wet[of] * high)}
                      height={y(0) - y(wet[of] * high)}
                    />
                  ))
                }
              />
              <strong>{nameOf(words.value, pot)}</strong>
              {told}
            </PressButton>
          </li>
        )
      })}
    </ul>
  )
}
