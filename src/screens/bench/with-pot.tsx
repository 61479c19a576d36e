import type { ComponentChildren, ComponentProps } from 'preact'
import { drawingOf } from '../../table/forecast/drawing.ts'
import type { PotState } from '../../table/model/state.ts'
import { PotOutline } from '../../ui/outline.tsx'
import { Swatch } from '../../ui/swatch.tsx'
import { useApp } from '../app.ts'
import { nameOf, placeOf } from '../text/pot-text.ts'

/**
 * What a card is about, as wide as the card; below it at the left the pot's outline with the coats that are on, or the
 * next one too, down to the bar; at the right what is said of it.
 */
export function WithPot({
  pot,
  title,
  above,
  mark,
  alarm,
  drawn = 'as-is',
  on,
  much,
  children,
}: {
  readonly pot: PotState
  readonly title: string
  readonly above?: ComponentChildren
  readonly mark?: ComponentChildren
  readonly alarm?: boolean | undefined
  readonly drawn?: 'with-next' | 'as-is'
  readonly on?: ComponentProps<typeof PotOutline>['on']
  /** More is said than stands beside it. */
  readonly much?: boolean | undefined
  readonly children: ComponentChildren
}) {
  const { table, words } = useApp()
  return (
    <div class={much ? 'face face-pot face-much' : 'face face-pot'}>
      {above}
      <h1
        class={mark ? 'title glaze' : 'title'}
        style={{ '--n': title.length + 0.6 * (title.split(/[mMW]/).length - 1) }}
      >
        {mark}
        {title}
      </h1>
      <PotOutline
        {...drawingOf(table.value, pot, drawn)}
        width={172}
        height={206}
        alarm={alarm}
        on={on}
        label={`${nameOf(words.value, pot)}`}
      />
      <div class="face-text">{children}</div>
    </div>
  )
}

/** The middle of the top row: which pot, and where it stands, as large as each other. */
export function PotName({ pot }: { readonly pot: PotState }) {
  const { words } = useApp()
  const place = placeOf(pot)
  const said = pot.facts.lidOf === undefined ? place : words.value.bench.lid(place)
  return (
    <div class="name figures">
      <strong class="name-number">{pot.facts.number}</strong>
      <strong class="name-place" style={{ '--n': said.length }}>
        {said}
      </strong>
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
