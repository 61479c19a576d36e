import { useState } from 'preact/hooks'
import type { FrontWords } from '../../words/front.ts'

interface UnopenedProps {
  readonly words: FrontWords
  readonly backUp: () => Promise<unknown>
  readonly passOn: () => Promise<unknown>
}

/** In place of all screens, where the program itself did not open: nothing is lost, and that is said. */
export function Unopened({ words, backUp, passOn }: UnopenedProps) {
  const [failed, setFailed] = useState(false)
  const w = words.unopened
  const tell = (job: () => Promise<unknown>) => () => {
    job().then(
      () => setFailed(false),
      () => setFailed(true),
    )
  }
  return (
    <main class="desk desk-main-part">
      <h1>{w.title}</h1>
      <p>{w.text}</p>
      <button type="button" class="desk-main" onClick={() => location.reload()}>
        {words.retry}
      </button>
      <button type="button" class="desk-second" onClick={tell(backUp)}>
        {w.backUp}
      </button>
      <button type="button" class="desk-second" onClick={tell(passOn)}>
        {w.passOn}
      </button>
      {failed ? (
        <p class="alarm" role="alert">
          {w.failed}
        </p>
      ) : null}
    </main>
  )
}
