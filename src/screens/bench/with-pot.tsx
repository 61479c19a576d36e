import type { ComponentChildren } from 'preact'
import { drawingOf } from '../../table/forecast/drawing.ts'
import type { PotState } from '../../table/model/state.ts'
import { PotOutline } from '../../ui/outline.tsx'
import { Swatch } from '../../ui/swatch.tsx'
import { useApp } from '../app.ts'
import { nameOf, placeOf } from '../text/pot-text.ts'

/** A pot's outline with the coats that are on, or the next one too, at the left; what is said of it at the right. */
export function WithPot({
  pot,
  alarm = false,
  drawn = 'as-is',
  children,
}: {
  readonly pot: PotState
  readonly alarm?: boolean
  readonly drawn?: 'with-next' | 'as-is'
  readonly children: ComponentChildren
}) {
  const { table, words } = useApp()
  const drawing = drawingOf(table.value, pot, drawn)
  return (
    <div class="face face-pot">
      <PotOutline {...drawing} width={132} height={196} alarm={alarm} label={`${nameOf(words.value, pot)}`} />
      <div class="face-text">{children}</div>
    </div>
  )
}

/** The middle of the top row: which pot, and where it stands. */
export function PotName({ pot }: { readonly pot: PotState }) {
  const { words } = useApp()
  return (
    <div class="name">
      <strong class="name-number figures">{pot.facts.number}</strong>
      <span class="name-place">
        {(pot.facts.lidOf === undefined ? words.value.bench.place : words.value.bench.lid)(placeOf(pot))}
      </span>
    </div>
  )
}

export function BucketName({ bucketId }: { readonly bucketId: string }) {
  const { table } = useApp()
  const facts = table.value.buckets[bucketId]?.facts
  return facts ? (
    <div class="name">
      <Swatch pattern={facts.pattern} letter={facts.letter} size={96} />
    </div>
  ) : null
}

/** A caution that stands at its step. */
export function Caution({ children }: { readonly children: ComponentChildren }) {
  return <p class="caution">{children}</p>
}

export const HoldIcon = () => (
  <svg viewBox="0 0 34 34" aria-hidden="true">
    <path d="M12 6 V28 M22 6 V28" stroke="currentColor" stroke-width="6" />
  </svg>
)

export const OtherIcon = () => (
  <svg viewBox="0 0 34 34" aria-hidden="true" fill="none" stroke="currentColor" stroke-width="4">
    <path d="M4 12 H28 L21 5 M30 22 H6 L13 29" />
  </svg>
)

export const BoardIcon = () => (
  <svg viewBox="0 0 34 34" aria-hidden="true" fill="none" stroke="currentColor" stroke-width="3.5">
    <rect x="4" y="5" width="11" height="10" rx="2" />
    <rect x="19" y="5" width="11" height="10" rx="2" />
    <rect x="4" y="19" width="11" height="10" rx="2" />
    <rect x="19" y="19" width="11" height="10" rx="2" />
  </svg>
)
