import { notHad } from '../../ui/not-had.ts'
import type { FrontWords } from '../../words/front.ts'
import './first.css'

interface FirstProps {
  readonly words: FrontWords
  /** Pots are on the own table, or may be. */
  readonly back: boolean
  /** False while what is kept cannot be read. */
  readonly demo?: boolean
  /** Something the app needs could not be fetched. */
  readonly failed?: boolean
  readonly onOwn: () => void
  readonly onDemo: () => void
}

/**
 * The first visit: the job in a sentence, the cautions that apply at once, two ways in. Knows nothing of the
 * program, so that it can show before the program is fetched.
 */
export function First({ words, back, demo = true, failed = false, onOwn, onDemo }: FirstProps) {
  const w = words.first
  return (
    <main class="first">
      <Mark />
      <h1>{words.name}</h1>
      <p class="first-job">{w.job}</p>
      <div class="first-ways">
        {failed ? <p role="alert">{notHad(words)}</p> : null}
        <button type="button" class="desk-main" onClick={onOwn}>
          {back ? w.back : w.own}
        </button>
        {!demo ? null : (
          <>
            <button type="button" class="desk-second" onClick={onDemo}>
              {w.demo}
            </button>
            <p class="soft">{w.demoText}</p>
          </>
        )}
      </div>
      <h2>{w.cautionTitle}</h2>
      <ul class="first-cautions">
        {w.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <p class="soft">{w.keep}</p>
    </main>
  )
}

/** A bucket from the side, a pot's foot above it. Our own drawing, as on the icon. */
function Mark() {
  return <img class="first-mark" src="./icon.svg" alt="" width="72" height="72" />
}
