import { useId, useLayoutEffect, useRef } from 'preact/hooks'
import './fields.css'

interface FieldProps {
  readonly label: string
  readonly text: string
  readonly onText: (text: string) => void
  /** The field was left, or Enter was hit. */
  readonly onDone?: () => void
  readonly unit?: string
  /** What may be typed: always shown, unless something is wrong. */
  readonly hint?: string
  /** Why what stands there can't be taken. */
  readonly wrong?: string
  /** A likelier reading of it, to be taken with one tap. */
  readonly offer?: { readonly label: string; readonly take: () => void }
  readonly words?: boolean
  readonly maxLength?: number
  /** The one thing its page asks for: it can be typed into at once. */
  readonly first?: boolean
}

/** One thing to type, its range beside it. What was typed stays, right or wrong. */
export function Field(props: FieldProps) {
  const {
    label,
    text,
    onText,
    onDone,
    unit,
    hint,
    wrong,
    offer,
    words = false,
    maxLength,
    first = false,
  } = props
  const id = useId()
  const input = useRef<HTMLInputElement>(null)
  useLayoutEffect(() => {
    if (first) input.current?.focus()
  }, [])
  return (
    <div class={wrong ? 'field is-wrong' : 'field'}>
      <label for={id}>{label}</label>
      <div class="field-box">
        <input
          ref={input}
          id={id}
          class="figures"
          type="text"
          inputMode={words ? 'text' : 'decimal'}
          autocomplete="off"
          autocapitalize={words ? 'sentences' : 'off'}
          spellcheck={false}
          enterkeyhint="done"
          value={text}
          maxLength={maxLength}
          aria-invalid={wrong !== undefined}
          aria-describedby={`${id}-said`}
          onInput={(event) => onText(event.currentTarget.value)}
          onBlur={onDone}
          onKeyDown={(event) => {
            if (event.key === 'Enter') event.currentTarget.blur()
          }}
        />
        {unit ? <span class="field-unit">{unit}</span> : null}
      </div>
      <p id={`${id}-said`} class="field-said" role={wrong ? 'alert' : undefined}>
        {wrong ?? hint}
      </p>
      {wrong && offer ? (
        <button type="button" class="field-offer" onClick={offer.take}>
          {offer.label}
        </button>
      ) : null}
    </div>
  )
}
