import { useDesk } from './desk-app.ts'
import './save.css'

/** Why something was refused, where it was. */
export const Alarm = ({ said }: { readonly said: string | undefined }) =>
  said ? (
    <p class="alarm" role="alert">
      {said}
    </p>
  ) : null

interface SaveProps {
  readonly said: string | undefined
  readonly save: () => void
  /** What the key says, where it isn't Save. */
  readonly label?: string
  /** Another way to save. */
  readonly other?: { readonly label: string; readonly save: () => void }
}

/** Foot of a planning screen that is saved as a whole: the key, and above it why it was refused. */
export function DeskSave({ said, save, label, other }: SaveProps) {
  const { words } = useDesk()
  return (
    <footer class="desk-save">
      <Alarm said={said} />
      <div class={other ? 'pair' : undefined}>
        {other ? (
          <button type="button" class="desk-second" onClick={other.save}>
            {other.label}
          </button>
        ) : null}
        <button type="button" class="desk-main" onClick={save}>
          {label ?? words.value.desk.save}
        </button>
      </div>
    </footer>
  )
}
