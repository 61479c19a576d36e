import { Component, type ComponentChildren } from 'preact'

interface BoundaryProps {
  readonly children: ComponentChildren
  /** Told once for each failure. */
  readonly failed: (error: unknown) => void
  /** What shows instead; `again` draws the part anew. */
  readonly instead: (again: () => void) => ComponentChildren
}

/** A part of the page whose failure leaves the rest standing. */
export class Boundary extends Component<BoundaryProps, { readonly broken: boolean }> {
  override state = { broken: false }

  override componentDidCatch(error: unknown): void {
    this.props.failed(error)
    this.setState({ broken: true })
  }

  override render({ children, instead }: BoundaryProps): ComponentChildren {
    return this.state.broken ? instead(() => this.setState({ broken: false })) : children
  }
}
