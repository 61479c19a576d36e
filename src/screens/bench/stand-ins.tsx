/** What the bench fetches as soon as its first card is drawn. Until then a card shows its head and its bar. */

import type { Card } from '../../table/card/card.ts'
import { type Away, useApp } from '../app.ts'
import type { Extras } from '../extras.ts'
import { withStandIn } from '../lazy.tsx'

const load = () => import('./lazy-faces.tsx')

export interface FaceProps {
  readonly card: Card
}

export const LazyFace = withStandIn<FaceProps>(() => load().then((part) => part.LazyFace), PlainFace)

function PlainFace({ card }: FaceProps) {
  const heads: Readonly<Partial<Record<Card['kind'], string>>> = useApp().words.value.bench.head
  return <Plain head={heads[card.kind] ?? ''} />
}

const Plain = ({ head }: { readonly head: string }) => (
  <div class="face face-wide">
    <h1 class="title title-big">{head}</h1>
  </div>
)

/** No count starts before its screen is here; one that a new page finds running can be stopped at once. */
export const CountScreen = withStandIn<{ readonly card: Extract<Card, { kind: 'count' | 'out' }> }>(
  () => load().then((part) => part.CountScreen),
  () => <button class="count" data-press="bar" type="button" />,
)

export const Returned = withStandIn<{ readonly away: Away }>(
  () => load().then((part) => part.Returned),
  PlainReturned,
)

function PlainReturned({ away }: { readonly away: Away }) {
  const { words, formats } = useApp()
  return <Plain head={words.value.bench.backTitle(formats.value.span(away.to - away.from))} />
}

export const RestList = withStandIn<{ readonly card: Extract<Card, { kind: 'wait' }> }>(
  () => load().then((part) => part.RestList),
  () => <section class="rest-list" />,
)

const RestingBar = () => <div class="bar bar-rest" />

export const RingOffer = withStandIn<{ readonly extras: Extras }>(
  () => load().then((part) => part.RingOffer),
  RestingBar,
)
export const CalendarBar = withStandIn(() => load().then((part) => part.CalendarBar), RestingBar)

/** A pot whose coats are not known. */
export const CoatKeys = withStandIn<{ readonly potId: string }>(
  () => load().then((part) => part.CoatKeys),
  RestingBar,
)

const Nothing = () => null

export const RingAsk = withStandIn(() => load().then((part) => part.RingAsk), Nothing)
export const OtherPotterDoes = withStandIn(() => load().then((part) => part.OtherPotterDoes), Nothing)

export const SlipLine = withStandIn<{ readonly dipId: string }>(
  () => load().then((part) => part.SlipLine),
  Nothing,
)

export interface LowProps {
  /** What does not work. */
  readonly faults: readonly string[]
}

export const LowLines = withStandIn<LowProps>(() => load().then((part) => part.LowLines), PlainLines)

function PlainLines({ faults }: LowProps) {
  return (
    <p class="hands-line">
      <span class="alarms" role="status">
        {faults.join(' · ')}
      </span>
    </p>
  )
}
