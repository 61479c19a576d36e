import { HELP_WORDS } from '../../words/help.ts'
import { useDesk } from '../desk/desk-app.ts'
import { DeskHead } from '../desk/head.tsx'
import './help.css'

/** The work in plain words: its stages, or the one that the route names. */
export function Help({ stage }: { readonly stage?: string | undefined }) {
  const { table, go } = useDesk()
  const w = HELP_WORDS[table.value.settings.language]
  const of = Object.entries(w.stages).find(([name]) => name === stage)?.[1]
  return (
    <div class="desk">
      <DeskHead title={of?.title ?? w.title} back={of ? { at: 'help' } : { at: 'room' }}>
        <button type="button" class="key" onClick={() => go({ at: 'bench' })}>
          {w.toBench}
        </button>
      </DeskHead>
      <main class="desk-main-part help-page">
        {of ? (
          <>
            <ol>
              {of.lines.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ol>
            <p class="caution">{of.caution}</p>
          </>
        ) : (
          Object.entries(w.stages).map(([name, { title }], i) => (
            <button key={name} type="button" class="key" onClick={() => go({ at: 'help', stage: name })}>
              <strong class="figures">{i + 1}</strong> {title}
            </button>
          ))
        )}
        <p class="help">{w.more}</p>
      </main>
    </div>
  )
}
