import type { ComponentChildren } from 'preact'
import './kiln.css'

const stop = (event: Event) => event.stopPropagation()

/**
 * All of a kiln's card but its bar. Here fingers type and drag: their touches are kept from the rules by which the bar
 * tells a hit from a splash.
 */
export const KilnMain = ({ children }: { readonly children: ComponentChildren }) => (
  <main class="kiln-main" onPointerDown={stop} onPointerMove={stop} onPointerUp={stop} onPointerCancel={stop}>
    {children}
  </main>
)
