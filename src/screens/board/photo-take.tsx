import { useRef } from 'preact/hooks'
import { PhotoInput } from '../../ui/photo-input.tsx'
import { PHOTO_WORDS } from '../../words/photo-outline.ts'
import { useDesk } from '../desk/desk-app.ts'

/** How to stand, and the two ways to a photo. */
export function Take({ read }: { readonly read: (file: File | undefined) => void }) {
  const w = PHOTO_WORDS[useDesk().table.value.settings.language]
  const camera = useRef<HTMLInputElement>(null)
  const file = useRef<HTMLInputElement>(null)
  return (
    <>
      <ol class="trace-list">
        {[w.one, ...w.stand].map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ol>
      <p class="caution">{w.round}</p>
      <PhotoInput inputRef={camera} label={w.camera} capture={true} read={read} />
      <PhotoInput inputRef={file} label={w.file} capture={false} read={read} />
      <button type="button" class="desk-main" onClick={() => camera.current?.click()}>
        {w.camera}
      </button>
      <button type="button" class="key" onClick={() => file.current?.click()}>
        {w.file}
      </button>
      <p class="help">{w.stays}</p>
    </>
  )
}
