import type { ComponentChildren } from 'preact'
import './fields.css'

interface MoreProps {
  readonly label: string
  /** What filling it in is good for. */
  readonly buys?: string
  readonly children: ComponentChildren
}

/** Something that is seldom wanted, behind its own name. */
export function More({ label, buys, children }: MoreProps) {
  return (
    <details class="more">
      <summary class="key">
        {buys === undefined ? (
          label
        ) : (
          <span>
            {label}
            <small>{buys}</small>
          </span>
        )}
      </summary>
      <div class="more-part">{children}</div>
    </details>
  )
}
