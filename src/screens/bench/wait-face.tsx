import type { Card, Due } from '../../table/card/card.ts'
import { forecastOf } from '../../table/forecast/forecast.ts'
import { coatsOn, potsOnTable } from '../../table/model/plan.ts'
import type { PotState, Table } from '../../table/model/state.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import type { Words } from '../../words/bench.ts'
import { useApp } from '../app.ts'
import { useDays } from '../days.ts'
import { nameOf, placeOf } from '../text/pot-text.ts'
import { keptLines } from './kept-lines.ts'
import { WaitRows } from './wait-rows.tsx'

type Wait = Extract<Card, { kind: 'wait' }>

/** Nothing for the hands: until when, what comes then, and why they wait. */
export function WaitFace({ card }: { readonly card: Wait }) {
  const { table, words, formats, now } = useApp()
  const w = words.value.bench
  const f = formats.value
  const dueText = useDueText()
  const { about } = useDays()
  const { next, reason, kept = [] } = card
  if (!next)
    return (
      <div class="face face-wide">
        <h1 class="title title-big">{w.waitTitle}</h1>
        {table.value.settings.potters === 2 ? <p class="strong">{w.othersRest}</p> : null}
      </div>
    )
  const { skewMs } = table.value
  const never = !Number.isFinite(next.at)
  const leftMs = next.at - now.value
  // Nobody reads 0 s.
  const soon = leftMs < 500
  const washed = washedPot(table.value, now.value)
  const known = next.band && Number.isFinite(next.band.upper) ? [next.band.lower, next.band.upper] : []
  const [early = '', late = ''] = known.map((at) => f.clock(at + skewMs))
  // The other potter's strip takes a line.
  const crowded = table.value.settings.potters === 2
  return (
    <div class="face face-wide">
      <h1 class="title">{never || soon ? w.waitTitle : w.head.wait}</h1>
      <p class="wait-span figures">{never ? w.waitNever : soon ? w.waitSoon : f.span(leftMs)}</p>
      <p class="strong figures">
        {never || soon ? '' : `${w.waitUntil(f.clock(next.at + skewMs))}, `}
        {dueText(next)}
      </p>
      {washed ? (
        <p class="soft">
          {w.washed(nameOf(words.value, washed.pot))}. {w.drinksAgain(about(washed.at))}
        </p>
      ) : null}
      {kept.length > 0 && !(washed && crowded)
        ? keptLines(
            words.value,
            f.clock,
            table.value,
            kept,
            now.value,
            crowded || washed ? 1 : KEPT_SHOWN,
          ).map((line) => (
            <p key={line} class="strong figures kept">
              {line}
            </p>
          ))
        : null}
      {washed || (crowded && kept.length > 0) ? null : reason ? (
        <p class="soft">{w.reason[reason]}</p>
      ) : kept.length > 0 ? null : early !== late ? (
        <p class="soft figures">{(known[0] ?? 0) < now.value ? w.waitLate(late) : w.waitBand(early, late)}</p>
      ) : null}
    </div>
  )
}

/** Groups of pots that are kept on purpose, named in a line each. */
const KEPT_SHOWN = 2

/** A pot that was washed off and does not drink yet: the one that is next, and when it does. */
function washedPot(table: Table, now: number): { readonly pot: PotState; readonly at: number } | undefined {
  return potsOnTable(table)
    .filter((pot) => pot.washedAt !== undefined && coatsOn(pot).length === 0)
    .map((pot) => ({ pot, at: forecastOf(table, pot)?.thirsty.likely ?? now }))
    .filter(({ at }) => at > now)
    .sort((a, b) => a.at - b.at)[0]
}

/** What the hands do when something comes due, in words. */
function useDueText(): (due: Due) => string {
  const { table, words } = useApp()
  const w = words.value.bench
  return ({ what, potId = '', bucketId = '' }) => {
    const pot = table.value.pots[potId]
    const number = nameOf(words.value, pot)
    switch (what) {
      case 'stir':
        return w.waitStir(table.value.buckets[bucketId]?.facts.name ?? '')
      case 'touch':
        return w.waitTouch(number, pot ? placeOf(pot) : '')
      case 'dip':
        return w.waitDip(number)
      case 'foot-check':
        return w.waitFoot(number)
      case 'wax-sets':
        return w.waitWax(number)
      case 'wipe-dries':
        return w.waitDamp(number)
      case 'damp-dries':
        return w.waitWall(number)
    }
  }
}

/** Time to read: what waits, a row each, and the bar at rest below. */
export function RestList({ card }: { readonly card: Wait }) {
  const { table, words } = useApp()
  const w = words.value.bench
  const { offer, touch } = card
  const offered =
    offer?.do === 'pick' ? [card.next, ...card.after].find((due) => due?.potId === offer.potId) : undefined
  const number = (potId: string) => nameOf(words.value, table.value.pots[potId])
  return (
    <section class="rest-list">
      <WaitRows card={card} />
      {touch ? <p class="strong figures">{w.touchFirst(number(touch.potId), touch.others)}</p> : null}
      {offer?.do === 'pick' ? (
        <KnuckleBar
          label={card.kept?.length ? w.oneNow : nowText(w, offered?.what)(number(offer.potId))}
          rest
        />
      ) : null}
    </section>
  )
}

/** What the bar at rest offers to do at once with a pot that waits. */
function nowText(w: Words['bench'], what: Due['what'] | undefined) {
  return what === 'damp-dries' ? w.dipNow : what === 'foot-check' ? w.footNow : w.touchNow
}
