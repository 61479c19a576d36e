import { useEffect, useMemo, useState } from 'preact/hooks'
import { KnuckleBar } from '../../ui/bar.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { useBar } from '../desk/use-bar.ts'
import type { CodeSize, Passing } from '../passing.ts'
import { Code } from './code.tsx'
import { usePassingWords } from './words.ts'

/** A screen nobody reads is let go dark. */
const SHOWN_MS = 120_000

interface ShowProps {
  readonly passing: Passing
  /** Shown to the phone that was just read: what it lacks. */
  readonly back: boolean
  readonly onDone: () => void
}

/** The code for the other phone's camera. */
export function Show({ passing, back, onDone }: ShowProps) {
  const w = usePassingWords()
  const [size, setSize] = useState<CodeSize>('fine')
  const [over, setOver] = useState(false)
  const shown = useMemo(() => passing.show(size, back), [size])
  const showing = !over && !shown.tooMuch
  useEffect(() => {
    if (!showing) return
    passing.stayLit(true)
    const timer = setTimeout(() => setOver(true), SHOWN_MS)
    return () => {
      clearTimeout(timer)
      passing.stayLit(false)
    }
  }, [showing, size])
  useBar(() => (over ? setOver(false) : onDone()))
  const { records, of, seconds } = shown
  return (
    <>
      <KilnMain>
        {showing ? (
          <>
            <Code shown={shown} aSecond={passing.aSecond} label={w.hold} />
            <div class="codes-line">
              <p class="figures">
                <strong>
                  {back && records > 0 ? w.back(records, seconds) : w.shown(records, of, seconds)}
                </strong>{' '}
                {w.hold}
              </p>
              <button type="button" class="key" onClick={() => setSize(size === 'fine' ? 'coarse' : 'fine')}>
                {size === 'fine' ? w.coarse : w.fine}
              </button>
            </div>
            {records > 0 ? <p class="help">{w.notes}</p> : null}
          </>
        ) : (
          <p class="kiln-big">{shown.tooMuch ? w.tooMuch : w.shownLong}</p>
        )}
      </KilnMain>
      <KnuckleBar label={over ? w.again : w.done} />
    </>
  )
}
