import type { Ref } from 'preact'

interface PhotoInputProps {
  readonly inputRef: Ref<HTMLInputElement>
  readonly label: string
  /** Opens the camera, where the phone has one, instead of its pictures. */
  readonly capture: boolean
  readonly read: (file: File | undefined) => void
}

/** What a key opens that asks for a photo: never seen itself. */
export const PhotoInput = ({ inputRef, label, capture, read }: PhotoInputProps) => (
  <input
    ref={inputRef}
    class="visually-hidden"
    type="file"
    accept="image/*"
    capture={capture ? 'environment' : undefined}
    tabIndex={-1}
    aria-label={label}
    onChange={(event) => {
      read(event.currentTarget.files?.[0])
      event.currentTarget.value = ''
    }}
  />
)
