import type { ComponentChildren } from 'preact'
import { useLayoutEffect, useRef } from 'preact/hooks'

type OnPress = (atMs: number) => void

const handlers = new WeakMap<Element, OnPress>()

/** What a hit on a button that is shown does; `atMs` is the touch-down in page time. */
export const pressedOf = (element: Element): OnPress | undefined =>
  element.isConnected ? handlers.get(element) : undefined

interface PressButtonProps {
  readonly onPress: OnPress
  readonly class?: string
  /** What erases wants a hold of 700 ms. */
  readonly kind?: 'small' | 'hold'
  readonly label?: string
  /** One of those that are chosen among: whether it is. */
  readonly chosen?: boolean
  readonly children: ComponentChildren
}

/** A button that goes through the press rules, for screens that are hit with wet knuckles. */
export function PressButton({ onPress, kind = 'small', label, chosen, children, ...rest }: PressButtonProps) {
  const button = useRef<HTMLButtonElement>(null)
  useLayoutEffect(() => {
    if (button.current) handlers.set(button.current, onPress)
  })
  return (
    <button
      ref={button}
      type="button"
      class={rest.class}
      data-press={kind}
      aria-label={label}
      aria-pressed={chosen}
    >
      {children}
    </button>
  )
}
