import { potsOnTable } from '../../table/plan.ts'
import { useApp } from '../app.ts'
import './first.css'

/** The first visit: the job in a sentence, the cautions that apply at once, two ways in. */
export function First() {
  const { words, act, go, table } = useApp()
  const w = words.value.first
  return (
    <main class="first">
      <Mark />
      <h1>{words.value.name}</h1>
      <p class="first-job">{w.job}</p>
      <div class="first-ways">
        <button type="button" class="desk-main" onClick={() => go({ at: 'board' })}>
          {potsOnTable(table.value).length > 0 ? w.back : w.own}
        </button>
        {potsOnTable(table.value).length > 0 ? null : (
          <>
            <button
              type="button"
              class="desk-second"
              onClick={() => {
                act({ do: 'lay-demo' })
                go({ at: 'bench' })
              }}
            >
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
