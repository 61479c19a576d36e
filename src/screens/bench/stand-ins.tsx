/** Parts of the bench that are fetched once its first card is drawn, each with what stands in its place until then. */

import type { Card } from '../../table/card/card.ts'
import type { HandStepName } from '../../table/steps/step-rows.ts'
import { type Away, useApp } from '../app.ts'
import type { Extras } from '../extras.ts'
import { withStandIn } from '../lazy.tsx'

const load = () => import('./lazy-bench.tsx')

export interface FaceProps {
  readonly card: Card
}

export interface HandProps {
  readonly card: Extract<Card, { kind: HandStepName }>
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

/** What is said at a step of the hands: how, and how many are left. */
export const HandStepLines = withStandIn<HandProps>(
  () => load().then((part) => part.HandStepLines),
  PlainHand,
)

function PlainHand({ card }: HandProps) {
  const said = useApp().words.value.bench.step[card.kind]
  return (
    <>
      <p>{said.text}</p>
      <p class="soft">{said.more(card.left)}</p>
    </>
  )
}

/** No count starts before its screen is here; one that a new page finds running can be stopped at once. */
export const CountScreen = withStandIn<{ readonly card: Extract<Card, { kind: 'count' | 'out' }> }>(
  () => load().then((part) => part.CountScreen),
  () => <button class="count" data-press="bar" type="button" />,
)

export const WhileAway = withStandIn<{ readonly away: Away }>(
  () => load().then((part) => part.WhileAway),
  PlainWhileAway,
)

function PlainWhileAway({ away }: { readonly away: Away }) {
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

export interface ClosedProps {
  readonly card: Extract<Card, { kind: 'closed' }>
}

export interface EndProps {
  readonly card: Extract<Card, { kind: 'lid' | 'tools' | 'floor' }>
}

export const EndBar = withStandIn<EndProps>(() => load().then((part) => part.EndBar), RestingBar)

export const ClosedKeys = withStandIn<ClosedProps>(() => load().then((part) => part.ClosedKeys), RestingBar)

/** Keys to count the coats of a pot that has an unknown number. */
export const CoatKeys = withStandIn<{ readonly potId: string }>(
  () => load().then((part) => part.CoatKeys),
  RestingBar,
)

const Nothing = () => null

export const ClosedSum = withStandIn<ClosedProps>(
  () => load().then((part) => part.ClosedSum),
  () => <span />,
)

export const Hint = withStandIn<FaceProps>(() => load().then((part) => part.Hint), Nothing)

export const RingAsk = withStandIn(() => load().then((part) => part.RingAsk), Nothing)
export const OtherPotterDoes = withStandIn(() => load().then((part) => part.OtherPotterDoes), Nothing)

export const SlipLine = withStandIn<{ readonly dipId: string }>(
  () => load().then((part) => part.SlipLine),
  Nothing,
)

export interface LowProps {
  /** What of the phone does not work now, a line each. */
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
