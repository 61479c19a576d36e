import { useEffect, useRef, useState } from 'preact/hooks'
import { firedOf } from '../../table/fired/fired-pot.ts'
import type { PotState } from '../../table/model/state.ts'
import { PHOTO_SIDES } from '../../table/opening/faults.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { PhotoInput } from '../../ui/photo-input.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { useBar } from '../desk/use-bar.ts'
import { openingRefusal, useOpening } from './opening-app.ts'

interface PhotoProps {
  readonly pot: PotState
  readonly close: () => void
}

/** A photo of the pot from the same side as the last, which shows through; it stays on this phone and in backups. */
export function PhotoPage({ pot, close }: PhotoProps) {
  const { table, words, formats, act, photos, fault } = useOpening()
  const w = words.value.opening
  const camera = useRef<HTMLInputElement>(null)
  const file = useRef<HTMLInputElement>(null)
  const [side, setSide] = useState<(typeof PHOTO_SIDES)[number]>('front')
  const [picture, setPicture] = useState<Blob>()
  const [busy, setBusy] = useState(false)
  const [said, setSaid] = useState<string>()
  const own = firedOf(pot).photos.findLast((photo) => photo.side === side)
  const last = own ?? latestOf(Object.values(table.value.pots), side)
  const taken = useUrl(picture)
  const read = (chosen: File | undefined) => {
    if (!chosen) return
    setBusy(true)
    setSaid(undefined)
    photos()
      .then((store) => store.drawn(chosen))
      .then(setPicture, () => setSaid(w.photos.notRead))
      .finally(() => setBusy(false))
  }
  const keep = async (atMs: number): Promise<void> => {
    if (!picture) return
    setBusy(true)
    try {
      // The picture first: a record never names one that was not stored.
      const photoId = await (await photos()).keep(picture)
      const { potId } = pot.facts
      const refusal = act({ do: 'keep-photo', potId, photoId, side, bytes: picture.size }, atMs)
      if (refusal) setSaid(openingRefusal(words.value, formats.value, refusal))
      else close()
    } catch (error) {
      fault('photo', error)
      setSaid(w.photos.notKept)
    } finally {
      setBusy(false)
    }
  }
  useBar((atMs) => {
    if (busy) return
    if (picture) void keep(atMs)
    else camera.current?.click()
  })
  return (
    <>
      <KilnMain>
        <Alarm said={said} />
        <div class="open-photo">
          {taken ? <img src={taken} alt={w.photos.taken} /> : null}
          {last ? <Kept photoId={last.photoId} ghost={taken !== undefined} alt={w.photos.last} /> : null}
          {taken || last ? null : <p class="help">{w.photos.first}</p>}
        </div>
        <PhotoInput inputRef={camera} label={w.photos.camera} capture={true} read={read} />
        <PhotoInput inputRef={file} label={w.photos.file} capture={false} read={read} />
        <fieldset class="kiln-keys">
          <legend class="visually-hidden">{w.photos.side}</legend>
          {PHOTO_SIDES.map((one) => (
            <button
              key={one}
              type="button"
              class="key"
              aria-pressed={one === side}
              onClick={() => setSide(one)}
            >
              {w.photos.sides[one]}
            </button>
          ))}
        </fieldset>
        <div class="kiln-keys">
          {picture ? (
            <button type="button" class="key" onClick={() => setPicture(undefined)}>
              {w.photos.again}
            </button>
          ) : (
            <button type="button" class="key" onClick={() => file.current?.click()}>
              {w.photos.file}
            </button>
          )}
        </div>
        <p class="help">{w.photos.stays}</p>
      </KilnMain>
      <KnuckleBar label={busy ? w.photos.wait : picture ? w.photos.keep : w.photos.camera} />
    </>
  )
}

/** The last photo of any pot from this side: how far away, and in which light. */
function latestOf(pots: readonly PotState[], side: string) {
  return pots
    .flatMap((pot) => (pot.fired ? firedOf(pot).photos : []))
    .filter((photo) => photo.side === side)
    .sort((a, b) => a.at - b.at)
    .at(-1)
}

/** An address for a picture while it shows. */
function useUrl(picture: Blob | undefined): string | undefined {
  const [url, setUrl] = useState<string>()
  useEffect(() => {
    if (!picture) {
      setUrl(undefined)
      return undefined
    }
    const made = URL.createObjectURL(picture)
    setUrl(made)
    return () => URL.revokeObjectURL(made)
  }, [picture])
  return url
}

interface KeptProps {
  readonly photoId: string
  /** It shows through, over another. */
  readonly ghost?: boolean
  readonly alt: string
}

/** A kept photo; where it is gone that is said, and its record stays. */
export function Kept({ photoId, ghost = false, alt }: KeptProps) {
  const { photos, words } = useOpening()
  const [picture, setPicture] = useState<Blob>()
  const [none, setNone] = useState<'gone' | 'unread'>()
  useEffect(() => {
    let here = true
    const shown = (found?: Blob, why: typeof none = 'gone') => {
      if (!here) return
      setPicture(found)
      setNone(found ? undefined : why)
    }
    photos()
      .then((store) => store.get(photoId))
      .then(
        (found) => shown(found),
        () => shown(undefined, 'unread'),
      )
    return () => {
      here = false
    }
  }, [photoId])
  const url = useUrl(picture)
  if (none) return ghost ? null : <p class="help">{words.value.opening.photos[none]}</p>
  // Bytes that are none of a picture show here alone.
  const torn = () => setNone('unread')
  return url ? <img class={ghost ? 'is-ghost' : undefined} src={url} alt={alt} onError={torn} /> : null
}
