import { useEffect, useRef, useState } from 'preact/hooks'
import type { Handout } from '../../../shared/nouns.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { useApp } from '../app.ts'
import { KilnMain } from '../desk/kiln-main.tsx'
import { useBar } from '../desk/use-bar.ts'
import type { Met, Passing, Read as Told } from '../passing.ts'
import { usePassingWords } from './words.ts'

/** So long nothing was read: how to hold it, and what the other phone can do. */
const CLOSER_MS = 4000
const COARSER_MS = 10_000

interface ReadProps {
  readonly passing: Passing
  readonly onMet: (met: Met) => void
  readonly onHandout: (handout: Handout) => void
  readonly onStop: () => void
}

/** What the camera sees, and how much of it is here. */
export function Read({ passing, onMet, onHandout, onStop }: ReadProps) {
  const w = usePassingWords()
  const { formats } = useApp()
  const frame = useRef<HTMLDivElement>(null)
  const [told, setTold] = useState<Told>({ is: 'nothing' })
  const [part, setPart] = useState<{ readonly known: number; readonly of: number }>()
  const [hint, setHint] = useState<'looking' | 'closer' | 'coarser'>('looking')
  useEffect(() => {
    let [closed, readAt] = [false, performance.now()]
    let close = () => {}
    const hear = (news: Told) => {
      if (closed) return
      const since = performance.now() - readAt
      setHint(since > COARSER_MS ? 'coarser' : since > CLOSER_MS ? 'closer' : 'looking')
      if (news.is === 'nothing') return
      readAt = performance.now()
      if (news.is === 'part') setPart(news)
      // It goes on saying who it is.
      setTold((now) => (news.is === 'greeted' && now.is === 'newer' ? now : news))
      if (news.is === 'met') onMet(news.met)
      if (news.is === 'handout') onHandout(news.handout)
    }
    passing.stayLit(true)
    void passing.read(hear).then((reader) => {
      close = () => reader?.close()
      if (closed) close()
      else if (reader) frame.current?.prepend(reader.video)
    })
    return () => {
      closed = true
      close()
      passing.stayLit(false)
    }
  }, [])
  useBar(onStop)
  const lost = told.is === 'no-camera'
  return (
    <>
      <KilnMain>
        {lost ? (
          <p class="kiln-big">{w.camera[told.why]}</p>
        ) : (
          <>
            <div class="codes-eye" ref={frame}>
              {part ? <Ring known={part.known} of={part.of} /> : null}
            </div>
            <p class={isWrong(told) ? 'alarm' : 'kiln-big figures'} role="status">
              {isWrong(told)
                ? told.is === 'clock'
                  ? w.ownClock(formats.value.span(Math.abs(told.aheadMs)), told.aheadMs > 0)
                  : w[told.is]
                : part && hint === 'looking'
                  ? w.part(part.known, part.of)
                  : w[hint]}
            </p>
            <p class="help">{w.camPrivate}</p>
          </>
        )}
      </KilnMain>
      <KnuckleBar label={w.stop} />
    </>
  )
}

type Wrong = Extract<Told, { is: 'own' | 'clock' | 'damaged' | 'unkept' | 'newer' }>
const isWrong = (told: Told): told is Wrong =>
  told.is === 'own' ||
  told.is === 'clock' ||
  told.is === 'damaged' ||
  told.is === 'unkept' ||
  told.is === 'newer'

const RADIUS = 46
const ROUND = 2 * Math.PI * RADIUS

/** Fills as blocks come. */
function Ring({ known, of }: { readonly known: number; readonly of: number }) {
  return (
    <svg class="codes-ring" viewBox="0 0 100 100" aria-hidden="true">
      <circle cx="50" cy="50" r={RADIUS} />
      <circle
        class="codes-ring-in"
        cx="50"
        cy="50"
        r={RADIUS}
        stroke-dasharray={`${(ROUND * known) / of} ${ROUND}`}
      />
    </svg>
  )
}
