import { type ComponentChildren, createContext } from 'preact'
import { useContext, useEffect, useState } from 'preact/hooks'

/** What the hits on a bench screen's own buttons do, by the name the press rules report. */
export type ActMap = Map<string, (atMs: number) => void>

export const Acts = createContext<ActMap>(new Map())

let last = 0

interface PressButtonProps {
  readonly onPress: (atMs: number) => void
  readonly class?: string
  /** What erases wants a hold of 700 ms. */
  readonly kind?: 'small' | 'hold'
  readonly label?: string
  readonly children: ComponentChildren
}

/** A button that goes through the press rules, for screens that are hit with wet knuckles. */
export function PressButton({ onPress, kind = 'small', label, children, ...rest }: PressButtonProps) {
  const acts = useContext(Acts)
  const [act] = useState(() => `own-${++last}`)
  acts.set(act, onPress)
  useEffect(() => () => void acts.delete(act), [acts, act])
  return (
    <button type="button" class={rest.class} data-press={kind} data-act={act} aria-label={label}>
      {children}
    </button>
  )
}
