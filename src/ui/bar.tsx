import { type ComponentChildren, createContext } from 'preact'
import { useContext } from 'preact/hooks'
import { PressButton } from './press.tsx'
import './bar.css'

interface BarProps {
  readonly label: string
  readonly under?: string | undefined
  /** Being held means something else than a hit. */
  readonly holds?: boolean
  /** Nothing to do: no dark mass. */
  readonly rest?: boolean
}

/** What a bar says below its label besides. */
export const BarHint = createContext<ComponentChildren>(null)

/**
 * Held this long and let go, a bar means its other thing, ms. Knuckles are slow: no press of theirs may end up here,
 * and from 700 ms before on it is seen and heard coming.
 */
export const BAR_HOLD_MS = 2000

/** The one big action. Bottom 40 %, always the same place; painted edge to edge, live inside the edges. */
export function KnuckleBar({ label, under, holds = false, rest = false }: BarProps) {
  return (
    <div class={rest ? 'bar bar-rest' : 'bar'}>
      <button class="bar-live" type="button" data-press="bar" data-hold-ms={holds ? BAR_HOLD_MS : undefined}>
        <span class={label.length > 12 ? 'bar-label bar-long' : 'bar-label'}>{label}</span>
        {under === undefined ? null : <span class="bar-under">{under}</span>}
        {useContext(BarHint)}
      </button>
    </div>
  )
}

interface PairProps {
  readonly big: string
  readonly small: { readonly label: string; readonly onPress: (atMs: number) => void }
  /** The big answer sits on the side of the working hand. */
  readonly hand: 'right' | 'left'
}

/** Letters of the longest word. */
const longest = (label: string) => ({ '--n': Math.max(...label.split(' ').map((word) => word.length)) })

/** Two answers with a dead strip of 24 px between them: the big one is the bar. */
export function AnswerBars({ big, small, hand }: PairProps) {
  return (
    <div class={`bar bar-pair bar-pair-${hand}`}>
      <PressButton class="bar-answer bar-answer-small" onPress={small.onPress}>
        <span style={longest(small.label)}>{small.label}</span>
      </PressButton>
      <button class="bar-answer bar-answer-big" type="button" data-press="bar">
        <span style={longest(big)}>{big}</span>
        {useContext(BarHint)}
      </button>
    </div>
  )
}

interface CornerProps {
  readonly to: 'board' | 'hold' | 'other'
  readonly label: string
  readonly onPress: (atMs: number) => void
  readonly children: ComponentChildren
}

/** A bench secondary: 19 x 19 mm, top row, far from the bar. */
export function CornerButton({ to, label, onPress, children }: CornerProps) {
  return (
    <PressButton class={`corner corner-${to}`} onPress={onPress}>
      {children}
      <span>{label}</span>
    </PressButton>
  )
}

interface StripProps {
  readonly to: 'take-back' | 'put-back' | 'pan'
  readonly label: string
  readonly onPress: (atMs: number) => void
}

/** A line above the bar that undoes the last hit; gone after 10 s. */
export function BackStrip({ to, label, onPress }: StripProps) {
  return (
    <PressButton class={`back-strip strip-${to}`} onPress={onPress}>
      {label}
    </PressButton>
  )
}
