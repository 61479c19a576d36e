import type { ComponentChildren } from 'preact'
import './bar.css'

interface BarProps {
  /** Name of the act the press rules report. */
  readonly act: string
  readonly label: string
  readonly under?: string | undefined
  /** Being held means something else than a hit. */
  readonly holds?: boolean
  /** Nothing to do: no dark mass. */
  readonly rest?: boolean
}

/**
 * Held this long and let go, a bar means its other thing, ms. Knuckles are slow: no press of theirs may end up here,
 * and from 700 ms before on it is seen and heard coming.
 */
export const BAR_HOLD_MS = 2000

/** The one big action. Bottom 40 %, always the same place; painted edge to edge, live inside the edges. */
export function KnuckleBar({ act, label, under, holds = false, rest = false }: BarProps) {
  return (
    <div class={rest ? 'bar bar-rest' : 'bar'}>
      <button
        class="bar-live"
        type="button"
        data-press="bar"
        data-act={act}
        data-hold-ms={holds ? BAR_HOLD_MS : undefined}
      >
        <span class={label.length > 12 ? 'bar-label bar-long' : 'bar-label'}>{label}</span>
        {under === undefined ? null : <span class="bar-under">{under}</span>}
      </button>
    </div>
  )
}

interface PairProps {
  readonly big: { readonly act: string; readonly label: string }
  readonly small: { readonly act: string; readonly label: string }
  /** The big answer sits on the side of the working hand. */
  readonly hand: 'right' | 'left'
}

/** Two answers with a dead strip of 24 px between them. */
export function AnswerBars({ big, small, hand }: PairProps) {
  return (
    <div class={`bar bar-pair bar-pair-${hand}`}>
      <button class="bar-answer" type="button" data-press="small" data-act={small.act}>
        {small.label}
      </button>
      <button class="bar-answer bar-answer-big" type="button" data-press="bar" data-act={big.act}>
        {big.label}
      </button>
    </div>
  )
}

interface CornerProps {
  readonly act: string
  readonly label: string
  readonly children: ComponentChildren
}

/** A bench secondary: 19 x 19 mm, top row, far from the bar. */
export function CornerButton({ act, label, children }: CornerProps) {
  return (
    <button class="corner" type="button" data-press="small" data-act={act}>
      {children}
      <span>{label}</span>
    </button>
  )
}

/** A line above the bar that undoes the last hit; gone after 10 s. */
export function BackStrip({ act, label }: { readonly act: string; readonly label: string }) {
  return (
    <button class="back-strip" type="button" data-press="small" data-act={act}>
      {label}
    </button>
  )
}
