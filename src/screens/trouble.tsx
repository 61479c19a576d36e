import { TROUBLE_WORDS, type TroubleWords } from '../words/trouble.ts'
import { type App, type Health, useApp } from './app.ts'
import './trouble.css'

interface Trouble {
  readonly title: string
  readonly text: string
  /** Nothing was lost: told, and that is all. */
  readonly mended?: true
  readonly key?: { readonly label: string; readonly does: () => void }
  /** It stays until it's over. */
  readonly stays?: true
}

/** The worst of what is wrong with keeping, if anything is. */
function troubleOf(health: Health, w: TroubleWords, app: App): Trouble | undefined {
  if (health.saved === 'not-saved')
    return {
      title: w.notSaved,
      text: w.notSavedText,
      key: { label: w.again, does: app.retrySave },
      stays: true,
    }
  if (health.unread) return { title: w.unread, text: w.unreadText, stays: true }
  if (health.readOnly) return { title: w.readOnly, text: w.readOnlyText, stays: true }
  const key = { label: w.takeIn, does: () => app.go({ at: 'room', door: 'keep' }) }
  if (health.lost > 0) return { title: w.lost(health.lost), text: w.lostText, key }
  const { recovered, recoveredOf } = health
  if (recovered > 0 && recovered < recoveredOf)
    return { title: w.some(recovered, recoveredOf), text: w.someText(recoveredOf - recovered), key }
  if (recovered > 0) return { title: w.recovered(recovered), text: w.recoveredText, mended: true }
  if (health.fellBack) return { title: w.fellBack, text: w.fellBackText, mended: true }
  return undefined
}

/** Nothing may look kept that is not: on every screen, above all else. A file always gets out. */
export function TroubleLine() {
  const app = useApp()
  const { health, table, demo, backUp, noted } = app
  const w = TROUBLE_WORDS[table.value.settings.language]
  const trouble = troubleOf(health.value, w, app)
  if (!trouble) return null
  const { title, text, mended, key, stays } = trouble
  return (
    <section class={mended ? 'trouble is-mended' : 'trouble not-saved'} role="alert">
      <strong>{title}</strong>
      <p>{text}</p>
      <div class="trouble-keys">
        {demo ? null : (
          <button type="button" onClick={() => void backUp().catch(() => {})}>
            {w.file}
          </button>
        )}
        {key ? (
          <button type="button" onClick={key.does}>
            {key.label}
          </button>
        ) : null}
        {stays ? null : (
          <button type="button" onClick={noted}>
            {w.noted}
          </button>
        )}
      </div>
    </section>
  )
}
