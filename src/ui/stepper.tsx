import './fields.css'

interface StepperProps {
  readonly label: string
  readonly text: string
  readonly less: { readonly label: string; readonly act?: () => void }
  readonly more: { readonly label: string; readonly act?: () => void }
  /** Smaller, beside other things. */
  readonly plain?: boolean
}

/** A small number with a key on either side. A key without an act is at its end. */
export function Stepper({ label, text, less, more, plain = false }: StepperProps) {
  return (
    <div class={plain ? 'stepper stepper-plain' : 'stepper'}>
      <span class="stepper-label">{label}</span>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would draw and announce a frame of its own */}
      <div class="stepper-keys" role="group" aria-label={label}>
        <button type="button" aria-label={less.label} disabled={!less.act} onClick={less.act}>
          <Sign d="M5 12 H19" />
        </button>
        <output class="figures">{text}</output>
        <button type="button" aria-label={more.label} disabled={!more.act} onClick={more.act}>
          <Sign d="M5 12 H19 M12 5 V19" />
        </button>
      </div>
    </div>
  )
}

const Sign = ({ d }: { readonly d: string }) => (
  <svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
    <path d={d} stroke="currentColor" stroke-width="3.5" fill="none" />
  </svg>
)
