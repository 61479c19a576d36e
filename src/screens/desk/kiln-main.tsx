import type { ComponentChildren } from 'preact'
import './kiln.css'

/** A hit on what undoes the last one goes by those rules wherever it stands. */
const stop = (event: Event) => {
  if (!(event.target instanceof Element && event.target.closest('[data-press]'))) event.stopPropagation()
}

/**
 * All of a kiln's card but its bar. Here fingers type and drag: their touches are kept from the rules by which the bar
 * tells a hit from a splash.
 */
export const KilnMain = ({ children }: { readonly children: ComponentChildren }) => (
  <main class="kiln-main" onPointerDown={stop} onPointerMove={stop} onPointerUp={stop} onPointerCancel={stop}>
    {children}
  </main>
)
