import { LIMITS } from '../../table/model/limits.ts'
import { useDays } from '../days.ts'
import { useLoad } from './load-app.ts'

const MIN_MS = 60_000
/** Each goes so many minutes further back. */
const BACK_MIN = [5, 15, 60, 360] as const

interface AgoProps {
  readonly agoMin: number
  readonly choose: (agoMin: number) => void
}

/** When it was: now, or up to a day ago by keys that add up. */
export function AgoKeys({ agoMin, choose }: AgoProps) {
  const { now, words, formats } = useLoad()
  const w = words.value.desk.shelf
  const days = useDays()
  const span = (min: number) => formats.value.span(min * MIN_MS)
  return (
    <fieldset class="kiln-ago">
      <legend class="visually-hidden">{w.ago}</legend>
      <button type="button" class="key" aria-pressed={agoMin === 0} onClick={() => choose(0)}>
        {w.now}
      </button>
      {BACK_MIN.map((min) => (
        <button
          key={min}
          type="button"
          class="key figures"
          disabled={agoMin >= LIMITS.agoMin.most}
          onClick={() => choose(Math.min(LIMITS.agoMin.most, agoMin + min))}
        >
          {w.back(span(min))}
        </button>
      ))}
      {agoMin === 0 ? null : (
        <p class="figures" role="status">
          {w.when(days.moment(now.value - agoMin * MIN_MS), span(agoMin))}
        </p>
      )}
    </fieldset>
  )
}
