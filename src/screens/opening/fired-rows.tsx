import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { firedOf } from '../../table/fired/fired-pot.ts'
import type { PotState } from '../../table/model/state.ts'
import { placeIn } from '../../table/opening/queue.ts'
import { endOf, namesOn } from '../../table/opening/story.ts'
import { tagOf } from '../../words/languages.ts'
import { nameOf } from '../text/pot-text.ts'
import { lookedText, useOpening } from './opening-app.ts'

/** So many are listed at once, and more with each tap: a year's rows need not all be there. */
const LISTED = 60

interface Texts {
  readonly month: string
  readonly found: string
}

/** When a fired pot was judged, and what was found of it, in words; kept while the pots stay the same. */
export function useFiredTexts(): (pot: PotState) => Texts {
  const { table, words, formats } = useOpening()
  const { pots, settings, skewMs } = table.value
  return useMemo(() => {
    const texts = new Map<PotState, Texts>()
    const month = new Intl.DateTimeFormat(tagOf(settings.language), { month: 'long', year: 'numeric' })
    return (pot) => {
      const text = texts.get(pot) ?? {
        month: month.format(endOf(table.value, pot) + skewMs),
        found: lookedText(words.value, formats.value, pot),
      }
      texts.set(pot, text)
      return text
    }
  }, [pots])
}

interface RowsProps {
  readonly pots: readonly PotState[]
}

/** Fired pots, a row each: number, photo, what is on it, where it stood, what was found. A tap opens its story. */
export function FiredRows({ pots }: RowsProps) {
  const { table, words, go } = useOpening()
  const textsOf = useFiredTexts()
  const [most, setMost] = useState(LISTED)
  const left = pots.length - most
  return (
    <>
      <ul class="open-fired">
        {pots.slice(0, most).map((pot) => {
          const { potId } = pot.facts
          const { month, found } = textsOf(pot)
          const { photos } = firedOf(pot)
          const photo = photos.findLast(({ side }) => side === 'front') ?? photos.at(-1)
          return (
            <li key={potId}>
              <button type="button" onClick={() => go({ at: 'story', potId })}>
                <span class="open-fired-pot">
                  <strong class="figures">{nameOf(words.value, pot)}</strong>
                  {photo ? <Thumb photoId={photo.photoId} /> : null}
                </span>
                <span>
                  {namesOn(table.value, pot)[0] ?? ''}
                  <small class="figures">
                    {[placeIn(table.value, pot), month].filter(Boolean).join(', ')}
                  </small>
                </span>
                <span class="figures">{found}</span>
              </button>
            </li>
          )
        })}
      </ul>
      {left > 0 ? (
        <button type="button" class="desk-second" onClick={() => setMost(most + LISTED)}>
          {words.value.opening.story.more(Math.min(LISTED, left), left)}
        </button>
      ) : null}
    </>
  )
}

const THUMB = { width: 104, height: 78 }

/** A photo as small as a thumbnail: read, and drawn, once its row comes near. One that is gone leaves its place empty. */
function Thumb({ photoId }: { readonly photoId: string }) {
  const { photos } = useOpening()
  const canvas = useRef<HTMLCanvasElement>(null)
  const [drawn, setDrawn] = useState(false)
  useEffect(() => {
    const element = canvas.current
    if (!element) return undefined
    let here = true
    const draw = async () => {
      const picture = await (await photos()).get(photoId)
      if (!picture || !here) return
      const small = await createImageBitmap(picture, { resizeWidth: THUMB.width, resizeQuality: 'medium' })
      const top = (THUMB.height - small.height) / 2
      element.getContext('2d')?.drawImage(small, 0, top)
      small.close()
      setDrawn(true)
    }
    const watch = new IntersectionObserver(
      (seen) => {
        if (!seen.some(({ isIntersecting }) => isIntersecting)) return
        watch.disconnect()
        draw().catch(() => undefined)
      },
      { rootMargin: '200px' },
    )
    watch.observe(element)
    return () => {
      here = false
      watch.disconnect()
    }
  }, [photoId])
  return <canvas ref={canvas} class={drawn ? 'is-drawn' : undefined} {...THUMB} />
}
