import { useMemo } from 'preact/hooks'
import { guessesScored } from '../../table/fired/guess.ts'
import type { PotState } from '../../table/model/state.ts'
import { nextLookAt } from '../../table/opening/queue.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { useDays } from '../days.ts'
import { BackLine } from '../desk/back-line.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { useBar } from '../desk/use-bar.ts'
import { tallyText, useOpening } from './opening-app.ts'
import { PotList } from './pot-list.tsx'
import { scaleOf } from './run-scale.ts'

interface DoneProps {
  readonly pots: readonly PotState[]
  /** How many are to be looked at again by now. */
  readonly again: number
  readonly look: () => void
  readonly elsewhere: () => void
  readonly choose: (potId: string) => void
}

/** All of a load is judged: what came out of it, and what was guessed. */
export function DoneCard({ pots, again, look, elsewhere, choose }: DoneProps) {
  const { words, go } = useOpening()
  const w = words.value.opening
  const days = useDays()
  const tally = useMemo(() => tallyText(words.value, pots), [pots])
  const nextAt = Math.min(...pots.map((pot) => nextLookAt(pot) ?? Number.POSITIVE_INFINITY))
  useBar(() => go({ at: 'board' }))
  return (
    <>
      <KilnMain>
        {pots.length > 0 ? <p class="kiln-big figures">{tally}</p> : <p>{w.none}</p>}
        {again > 0 ? (
          <button type="button" class="desk-main" onClick={look}>
            {w.again.count(again)}
          </button>
        ) : Number.isFinite(nextAt) ? (
          <p class="figures">{w.again.next(days.moment(nextAt))}</p>
        ) : null}
        <Scores />
        <PotList pots={pots} isOpen choose={choose} />
        <div class="kiln-keys">
          <button type="button" class="key" onClick={() => go({ at: 'taught' })}>
            {w.taught.title}
          </button>
          <button type="button" class="key" onClick={() => go({ at: 'fired' })}>
            {w.story.title}
          </button>
          <button type="button" class="key" onClick={elsewhere}>
            {w.elsewhere}
          </button>
        </div>
        <p class="help">{w.care.food}</p>
      </KilnMain>
      <BackLine />
      <KnuckleBar label={w.done} />
    </>
  )
}

/** Who told the runs better, the person or the app: said of all pots that were opened so far. */
function Scores() {
  const { table, words, formats } = useOpening()
  const w = words.value.opening.score
  const score = useMemo(() => guessesScored(table.value), [table.value.pots])
  const { both, personMm, appMm, nearer, told, held, tooNarrow } = score
  if (both === 0 || personMm === null || appMm === null) return null
  const { units } = table.value.settings
  const mark = formats.value.mm(scaleOf(units).markMm)
  // Means of millimetres are told in tenths, of sixteenths of an inch by the same ruler.
  const mm = (off: number) =>
    units === 'metric'
      ? formats.value.coat(off)
      : off > 0 && off < scaleOf(units).markMm / 2
        ? w.under(mark)
        : formats.value.mm(off)
  return (
    <div class="open-score figures">
      <p class="kiln-big">{w.off(mm(personMm), mm(appMm), both)}</p>
      <p>
        {nearer === null ? w.early : w.nearer[nearer]} {told > 0 ? w.held(held, told) : ''}{' '}
        {tooNarrow ? w.narrow : ''}
      </p>
    </div>
  )
}
