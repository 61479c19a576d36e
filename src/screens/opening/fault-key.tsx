interface KeyProps {
  readonly label: string
  readonly on: boolean
  /** What is known of it, in a few letters. */
  readonly under?: string | undefined
  readonly press: () => void
}

/** What can be wrong: a key as large as a glove. */
export const FaultKey = ({ label, on, under, press }: KeyProps) => (
  <button type="button" class="key open-key" aria-pressed={on} onClick={press}>
    {label}
    {under ? <small class="figures">{under}</small> : null}
  </button>
)
