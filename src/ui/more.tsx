import type { ComponentChildren } from 'preact'
import './fields.css'

/** Something that is seldom wanted, behind its own name. */
export function More({ label, children }: { readonly label: string; readonly children: ComponentChildren }) {
  return (
    <details class="more">
      <summary class="key">{label}</summary>
      <div class="more-part">{children}</div>
    </details>
  )
}
