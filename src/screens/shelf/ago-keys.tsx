import { useDesk } from '../desk/desk-app.ts'

const MIN_MS = 60_000
/** What is said late was so many minutes ago. */
const AGO_MIN = [0, 5, 15, 30, 60, 120] as const

interface AgoProps {
  readonly agoMin: number
  readonly choose: (agoMin: number) => void
}

/** When it was: now, or a while ago. */
export function AgoKeys({ agoMin, choose }: AgoProps) {
  const { words, formats } = useDesk()
  const w = words.value.desk.shelf
  return (
    <fieldset class="kiln-ago">
      <legend class="visually-hidden">{w.ago}</legend>
      {AGO_MIN.map((min) => (
        <button key={min} type="button" class="key" aria-pressed={min === agoMin} onClick={() => choose(min)}>
          {min === 0 ? w.now : formats.value.span(min * MIN_MS)}
        </button>
      ))}
    </fieldset>
  )
}
