import { useSignal } from '@preact/signals'
import type { Card, PotDry } from '../../../table/card/card.ts'
import { lastOf, lateBy } from '../../../table/card/dry-sooner.ts'
import type { Action } from '../../../table/model/action.ts'
import type { Table } from '../../../table/model/state.ts'
import { KnuckleBar } from '../../../ui/bar.tsx'
import { PressButton } from '../../../ui/press.tsx'
import { useApp } from '../../app.ts'
import { useDays } from '../../days.ts'
import { useLateWords } from '../../late-words.ts'
import { useCopyDue } from '../../parts/copy-due.ts'
import { nameOf } from '../../text/pot-text.ts'
import { Caution } from '../with-pot.tsx'
import { type EndWords, useEndWords } from './end-words.ts'
import './closed.css'

type Closed = Extract<Card, { kind: 'closed' }>

/** As many lines as can be read at a metre. */
const LINES = 8
/** The same above keys of their own. */
const FEWER_LINES = 6
/** And above keys that have a line of their own. */
const FEWEST_LINES = 4

/** Letters of two clocks by 24 hours, and what joins them. */
const CLOCKS = 11

/** Between the corners: what the sitting came to. */
export function ClosedSum({ card }: { readonly card: Closed }) {
  const { words } = useApp()
  const w = useEndWords()
  return (
    <p class="closed-sum figures">
      {card.coats > 0 ? (
        <>
          <span>
            <strong>{card.pots}</strong> {w.pots(card.pots)}
          </span>
          <span>
            <strong>{card.coats}</strong> {w.coats(card.coats)}
          </span>
        </>
      ) : (
        words.value.bench.head.closed
      )}
    </p>
  )
}

/** When each pot is dry for the kiln, and what was left out. */
export function ClosedFace({ card }: { readonly card: Closed }) {
  const { table, now, formats, bench } = useApp()
  const w = useEndWords()
  const f = formats.value
  const from = useSignal(0)
  const { dry } = card
  const left = card.left[0]
  const lines = left || dry.length > LINES ? FEWER_LINES : LINES
  const start = from.value < dry.length ? from.value : 0
  const shown = dry.slice(start, start + lines)
  const late = lateBy(table.value, dry, now.value)
  const next = () => {
    from.value = start + lines
  }
  return (
    <div class="face closed">
      <h1 class="closed-head figures">
        {table.value.settings.candle ? w.dryToCandle : w.dry}
        {late === undefined ? null : late > 0 ? (
          <span class="alarm">, {w.late(f.span(late))}</span>
        ) : (
          <span>, {w.early(f.span(-late))}</span>
        )}
      </h1>
      <ul class="closed-dry figures">
        {shown.map((pot) => (
          <DryLine key={pot.potId} pot={pot} />
        ))}
      </ul>
      <Caution>{w.caution}</Caution>
      {!left && dry.length <= FEWEST_LINES ? <CopyKeys /> : null}
      {left || dry.length > lines ? (
        <div class="closed-more">
          {dry.length > lines ? (
            <PressButton class="closed-next figures" onPress={next}>
              {w.next(start + 1, start + shown.length, dry.length)}
            </PressButton>
          ) : null}
          {left ? (
            <PressButton class="closed-next" onPress={(atMs) => bench.hit(left, atMs)}>
              {w.leftOut(leftText(w, table.value, left))}
            </PressButton>
          ) : null}
        </div>
      ) : null}
    </div>
  )
}

/** Where there is room for it: the copy outside the phone that is due. */
function CopyKeys() {
  const w = useEndWords()
  const due = useCopyDue()
  if (!due) return null
  return (
    <div class="closed-copy">
      <p class="figures">{due.text}</p>
      <div class="closed-more">
        <PressButton class="closed-next" onPress={due.backUp}>
          {w.backUp}
        </PressButton>
        <PressButton class="closed-next" onPress={due.notNow}>
          {w.notNow}
        </PressButton>
      </div>
    </div>
  )
}

function DryLine({ pot: { potId, dry } }: { readonly pot: PotDry }) {
  const { table, now, words, formats } = useApp()
  const { dayOf } = useDays()
  const w = useEndWords()
  const ends = Number.isFinite(dry.upper) ? dry.upper : dry.likely
  const both = (text: (at: number) => string): [string, string] => [text(dry.likely), text(ends)]
  const settled = !Number.isFinite(dry.likely) ? w.never : dry.upper <= now.value ? w.isDry : undefined
  const hours = settled ?? w.fromTo(...both((at) => formats.value.clock(at + table.value.skewMs)))
  const [first, last] = both(dayOf)
  return (
    <li class={hours.length > CLOCKS ? 'closed-long' : undefined}>
      <strong>{nameOf(words.value, table.value.pots[potId])}</strong>
      <span>{hours}</span>
      <small class={first === last ? undefined : 'closed-days'}>{settled ? '' : w.days(first, last)}</small>
    </li>
  )
}

function leftText({ left }: EndWords, table: Table, action: Action): string {
  switch (action.do) {
    case 'lid-on':
      return left['lid-on'](table.buckets[action.bucketId]?.facts.name ?? '')
    case 'tools-washed':
    case 'floor-mopped':
      return left[action.do]
    default:
      return ''
  }
}

/** What can be done from here, where the bar is otherwise: nothing has to be. */
export function ClosedKeys({ card }: { readonly card: Closed }) {
  const { now, extras, bench, go } = useApp()
  const { end: w, ring } = useLateWords()
  const dries = (lastOf(card.dry)?.likely ?? now.value) > now.value
  const hasWaits = (extras.value?.longWaits() ?? 0) > 0
  return (
    <section class="closed-keys">
      {dries ? (
        <PressButton
          class="closed-key"
          onPress={() => {
            bench.sheet.value = 'sooner'
          }}
        >
          {w.sooner}
        </PressButton>
      ) : null}
      {hasWaits ? <KnuckleBar label={ring.calendar} rest /> : null}
      <PressButton class="closed-key" onPress={() => go({ at: 'shelf' })}>
        {w.load}
      </PressButton>
    </section>
  )
}
