import type { Card } from '../../table/card/card.ts'
import { isFresh } from '../../table/model/fresh.ts'
import type { Table } from '../../table/model/state.ts'
import { type HandsLine, handsLine, lateness, mayBeLate } from '../../table/order/hands-line.ts'
import { PressButton } from '../../ui/press.tsx'
import type { Words } from '../../words/bench.ts'
import { useApp } from '../app.ts'
import { useLateWords } from '../late-words.ts'
import { nameOf } from '../text/pot-text.ts'
import { ringLine } from './ring-offer.tsx'
import type { LowProps } from './stand-ins.tsx'
import { useUnsettled } from './unsettled.ts'

/**
 * The hands line: where this visit stands and why, then the next bucket and its hour; or how the sitting ends.
 * `brief`: one line of it.
 */
function HandsText({ card, brief }: { readonly card: Card; readonly brief: boolean }) {
  const { table, schedule, now, words, formats } = useApp()
  const stirs = card.kind === 'stir' ? card.bucketId : null
  const line = handsLine(table.value, schedule.value, now.value, stirs)
  if (!line) return null
  const w = words.value.bench
  const { skewMs } = table.value
  // An early stir says its reason itself.
  const saysWhy =
    card.kind === 'wait' || (card.kind === 'stir' && isFresh(table.value, card.bucketId, now.value))
  const why = card.reason && !saysWhy ? w.reason[card.reason] : undefined
  const nth = card.kind === 'armed' ? card.nth : undefined
  const here = [nth && w.visit(nth), why].filter(Boolean).join(', ')
  const next = line.follows && table.value.buckets[line.follows.bucketId]?.facts
  const free = line.freeMs >= 60_000 ? w.free(formats.value.span(line.freeMs)) : undefined
  const follows =
    next && line.follows
      ? [w.follows(next.name, formats.value.clock(line.follows.at + skewMs)), brief ? undefined : free]
          .filter(Boolean)
          .join(', ')
      : doneText(line)
  const late = lateness(line)
  if (late > 0) return <span class="alarm">{w.late(formats.value.span(late))}</span>
  const may = mayBeLate(line)
  if (may > 0) return <span class="alarm">{w.mayBeLate(may)}</span>
  if (card.kind === 'wait')
    return (
      <>
        <span>{endText(line)}</span>
        {brief || (line.interruptionMs ?? 0) < 60_000 ? null : (
          <span>{w.tenMore(formats.value.span(line.interruptionMs ?? 0))}</span>
        )}
      </>
    )
  return (
    <>
      {here && !brief ? <span>{here}</span> : null}
      <span>{follows}</span>
    </>
  )

  function endText(end: HandsLine): string {
    const done = doneText(end)
    return brief || end.slackMs === undefined ? done : `${done}, ${w.spare(formats.value.span(end.slackMs))}`
  }

  function doneText({ finishAt, finish }: HandsLine): string {
    const [early = '', late = ''] = [finish?.early ?? finishAt, finish?.late ?? finishAt].map((at) =>
      formats.value.clock(at + skewMs),
    )
    return early === late ? w.done(early) : w.doneBetween(early, late)
  }
}

/** What the other pair of hands has on its card, in a few words. */
export function OtherPotterDoes() {
  const { table, elsewhere, words } = useApp()
  const card = elsewhere.value
  return <>{card && otherPotterText(table.value, card, words.value)}</>
}

function otherPotterText(table: Table, card: Card, words: Words): string {
  const potId = 'potId' in card ? card.potId : card.kind === 'armed' ? card.armed.potId : undefined
  const first = card.kind === 'ready' ? card.potIds[0] : potId
  const bucketId = card.kind === 'armed' ? card.armed.bucketId : 'bucketId' in card ? card.bucketId : ''
  const number = nameOf(words, table.pots[first ?? ''])
  const name = card.kind === 'ready' ? undefined : table.buckets[bucketId]?.facts.name
  return [words.bench.potterDoes[card.kind], number, name].filter(Boolean).join(' ')
}

/** So long each of two lines shows, ms. */
const TURN_MS = 8000

/** What does not work, or what is to be settled, then the hands line; late for the kiln, all of it is the way to the ways out. */
export function LowLines({ faults: known }: LowProps) {
  const { table, now, card, schedule, words, extras, health, bench } = useApp()
  const faults = health.value.soundsElsewhere ? [words.value.bench.elsewhere, ...known] : known
  const ring = ringLine(extras.value, card.value, useLateWords())
  const unsettled = useUnsettled()
  const own = ring === undefined ? faults : [...faults, ring]
  // Two lines would cover what a full card says: they take turns.
  const settles = unsettled !== undefined && (own.length === 0 || Math.floor(now.value / TURN_MS) % 2 === 1)
  const lines = settles ? [`${unsettled}: ${words.value.bench.other}`] : own
  const line = handsLine(table.value, schedule.value, now.value)
  const late = lateness(line) > 0 || mayBeLate(line) > 0
  const said =
    lines.length > 0 ? (
      <span class={faults.length > 0 || settles ? 'alarms' : 'ring-line'} role="status">
        {lines.join(' · ')}
      </span>
    ) : null
  const two = table.value.settings.potters === 2
  const brief = late || lines.length > 0 || two
  // Beside the key of the other potter it is half as wide: what does not work takes all of it.
  const room = two ? 0 : 1
  if (late)
    return (
      <PressButton
        class="back-strip hands-line ways-strip"
        onPress={() => {
          bench.sheet.value = 'ways'
        }}
      >
        {said}
        {lines.length > room ? null : <HandsText card={card.value} brief />}
      </PressButton>
    )
  return (
    <p class="hands-line figures">
      {said}
      {lines.length > room ? null : <HandsText card={card.value} brief={brief} />}
    </p>
  )
}
