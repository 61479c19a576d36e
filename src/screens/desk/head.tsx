import type { ComponentChildren } from 'preact'
import type { Route } from '../app.ts'
import { useDesk } from './desk-app.ts'

interface HeadProps {
  readonly title: string
  readonly under?: string
  /** Where it stands, on a plate before the title. */
  readonly place?: string | undefined
  /** Where it leads, or what leaving does. */
  readonly back: Route | (() => void)
  readonly children?: ComponentChildren
}

/** Top of a planning screen: the way back, what this is, at most one thing more. */
export function DeskHead({ title, under, place, back, children }: HeadProps) {
  const { words, go } = useDesk()
  return (
    <header class="desk-head">
      <button
        type="button"
        class="desk-back"
        aria-label={words.value.desk.back}
        onClick={typeof back === 'function' ? back : () => go(back)}
      >
        <svg viewBox="0 0 24 24" width="26" height="26" aria-hidden="true">
          <path d="M15 4 L6 12 L15 20" fill="none" stroke="currentColor" stroke-width="3.5" />
        </svg>
      </button>
      <div class="desk-title">
        <h1>
          {place === undefined ? null : <span class="desk-place figures">{place}</span>} {title}
        </h1>
        {under ? (
          <p class="soft figures" role="status">
            {under}
          </p>
        ) : null}
      </div>
      {children}
    </header>
  )
}
