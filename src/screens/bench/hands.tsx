import { cardOf } from '../../table/bench.ts'
import type { Card } from '../../table/card.ts'
import { type HandsLine, handsLine, otherLane } from '../../table/hands-line.ts'
import type { Table } from '../../table/state.ts'
import type { Words } from '../../words/index.ts'
import { useApp } from '../app.ts'
import { nameOf } from './said.ts'

/**
 * The hands line: where this visit stands and why, then the next bucket and its hour; or how the sitting ends.
 * `brief`: one line of it.
 */
export function HandsText({ card, brief }: { readonly card: Card; readonly brief: boolean }) {
  const { table, told, now, words, formats } = useApp()
  const line = handsLine(table.value, told.value, now.value)
  if (!line) return null
  const w = words.value.bench
  const { skewMs } = table.value
  const why = card.reason && card.kind !== 'wait' ? w.reason[card.reason] : undefined
  const visit = card.kind === 'armed' ? card.visit : undefined
  const here = [visit && w.visit(visit.nth, visit.of), why].filter(Boolean).join(', ')
  const next = line.follows && table.value.buckets[line.follows.bucketId]?.facts
  const free = line.freeMs >= 60_000 ? w.free(formats.value.span(line.freeMs)) : undefined
  const follows =
    next && line.follows
      ? [w.follows(next.name, formats.value.clock(line.follows.at + skewMs)), free].filter(Boolean).join(', ')
      : w.done(formats.value.clock(line.finishAt + skewMs))
  const late = lateness(line)
  if (late > 0) return <span class="alarm">{w.late(formats.value.span(late))}</span>
  if (card.kind === 'wait') return <span>{endText(line)}</span>
  return (
    <>
      {here && !brief ? <span>{here}</span> : null}
      <span>{follows}</span>
    </>
  )

  function endText({ finishAt, slackMs }: HandsLine): string {
    const done = w.done(formats.value.clock(finishAt + skewMs))
    return slackMs === undefined ? done : `${done}, ${w.spare(formats.value.span(slackMs))}`
  }
}

/** Late by so much, ms; a minute's half is rounded away. */
export const lateness = (line: HandsLine | undefined): number =>
  line?.slackMs !== undefined && line.slackMs <= -30_000 ? -line.slackMs : 0

/** What the other pair of hands has on its card, in a few words, on the way to it. */
export function LaneButton() {
  const { table, told, now, words } = useApp()
  const other = otherLane(table.value)
  const card = cardOf(other.table, now.value, told.value)
  const w = words.value.bench
  return (
    <button class="back-strip lane-strip" type="button" data-press="small" data-act="lane">
      <span>{w.lane(other.lane + 1)}</span>
      <small class="figures">{laneText(other.table, card, words.value)}</small>
    </button>
  )
}

function laneText(table: Table, card: Card, words: Words): string {
  const potId = 'potId' in card ? card.potId : card.kind === 'armed' ? card.armed.potId : undefined
  const first = card.kind === 'ready' ? card.potIds[0] : potId
  const bucketId = card.kind === 'armed' ? card.armed.bucketId : 'bucketId' in card ? card.bucketId : ''
  const number = nameOf(words, table.pots[first ?? ''])
  const name = card.kind === 'ready' ? undefined : table.buckets[bucketId]?.facts.name
  return [words.bench.laneDoes[card.kind], number, name].filter(Boolean).join(' ')
}
