import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'
import './fields.css'

export interface Option<T extends string> {
  readonly value: T
  readonly label: ComponentChildren
  /** Said where the label is a drawing. */
  readonly name?: string
}

interface ChoiceProps<T extends string> {
  readonly label: string
  readonly hidden?: boolean
  readonly options: readonly Option<T>[]
  readonly value: T | undefined
  readonly onChoose: (value: T) => void
  /** Columns of the grid; without it the options flow. */
  readonly columns?: number
  readonly help?: string
}

/** One of a few: big keys in a row, the chosen one inked. */
export function Choice<T extends string>(props: ChoiceProps<T>) {
  const { label, hidden = false, options, value, onChoose, columns, help } = props
  const id = useId()
  return (
    <div class="choice">
      <span id={id} class={hidden ? 'visually-hidden' : 'choice-label'}>
        {label}
      </span>
      <div
        role="radiogroup"
        aria-labelledby={id}
        class={columns ? 'choice-keys choice-grid' : 'choice-keys'}
        style={columns ? { '--columns': columns } : undefined}
      >
        {options.map((option) => (
          // A key of a group, as a push button would be: a radio input can't hold a drawing to scale.
          // biome-ignore lint/a11y/useSemanticElements: see above
          <button
            key={option.value}
            type="button"
            role="radio"
            aria-checked={option.value === value}
            aria-label={option.name}
            class="key"
            onClick={() => onChoose(option.value)}
          >
            {option.label}
          </button>
        ))}
      </div>
      {help ? <p class="help">{help}</p> : null}
    </div>
  )
}

interface SwitchProps {
  readonly label: string
  readonly on: boolean
  readonly onSwitch: (on: boolean) => void
  readonly help?: string
}

/** A box to tick, the whole line to be hit. */
export function Switch({ label, on, onSwitch, help }: SwitchProps) {
  return (
    <label class="switch">
      <input type="checkbox" checked={on} onChange={(event) => onSwitch(event.currentTarget.checked)} />
      <span class="switch-box">
        <svg viewBox="0 0 24 24" aria-hidden="true">
          <path d="M4 13 L10 19 L20 5" fill="none" stroke="currentColor" stroke-width="4" />
        </svg>
      </span>
      <span>
        {label}
        {help ? <small class="help">{help}</small> : null}
      </span>
    </label>
  )
}
