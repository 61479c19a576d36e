import { useEffect, useRef, useState } from 'preact/hooks'
import './hold.css'

/** How long what erases is held, ms. */
const ERASE_MS = 700

/** What a key is given that does something for as long as it is held, by finger or by Enter and space. */
export const heldBy = (begin: () => void, end: () => void) => ({
  onPointerDown: begin,
  onPointerUp: end,
  onPointerLeave: end,
  onPointerCancel: end,
  onContextMenu: (event: Event) => event.preventDefault(),
  onKeyDown: (event: KeyboardEvent) => {
    if ((event.key === 'Enter' || event.key === ' ') && !event.repeat) begin()
  },
  onKeyUp: end,
})

interface HoldProps {
  readonly label: string
  /** Shown after a touch too short. */
  readonly hint: string
  readonly onHeld: () => void
  /** How long, where it isn't what erases. */
  readonly ms?: number
}

/** A key that erases: it acts only after being held, and fills while it is. */
export function HoldKey({ label, hint, onHeld, ms = ERASE_MS }: HoldProps) {
  const [state, setState] = useState<'rest' | 'held' | 'short'>('rest')
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)
  useEffect(() => () => clearTimeout(timer.current), [])
  const begin = () => {
    clearTimeout(timer.current)
    setState('held')
    timer.current = setTimeout(() => {
      timer.current = undefined
      setState('rest')
      onHeld()
    }, ms)
  }
  const end = () => {
    if (timer.current === undefined) return
    clearTimeout(timer.current)
    timer.current = undefined
    setState('short')
  }
  return (
    <button
      type="button"
      class={state === 'held' ? 'hold-key is-held' : 'hold-key'}
      style={{ '--held': `${ms}ms` }}
      {...heldBy(begin, end)}
    >
      <span aria-live="polite">{state === 'short' ? hint : label}</span>
    </button>
  )
}
