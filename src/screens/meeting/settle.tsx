import { useEffect, useState } from 'preact/hooks'
import { decideMeeting } from '../../table/decide/decide-meeting.ts'
import type { Action } from '../../table/model/action.ts'
import type { Answer } from '../../table/model/ask.ts'
import { useApp } from '../app.ts'
import { DeskHead } from '../desk/head.tsx'
import { useAsks } from '../desk/use-asks.ts'
import { useMeetingWords, useQuestion } from './use-question.ts'
import './settle.css'

/** What phones that met have in two ways, one at a time. */
export function Settle() {
  const { table, act: hit, hear } = useApp()
  const words = useMeetingWords()
  const act = (action: Action) => hit(action, undefined, decideMeeting)
  const [answered, setAnswered] = useState(0)
  const asks = useAsks(answered)
  const question = useQuestion(asks)
  const w = words.value.meeting
  // The last answer was below the fold; the next question begins at its title.
  useEffect(() => scrollTo(0, 0), [question?.title])
  const answer = (given: Answer) => {
    act({ do: 'settle', answer: given })
    setAnswered(answered + 1)
  }
  const read = (keys: readonly string[]) => void hear(keys).then(() => setAnswered(answered + 1))
  const both = question?.both
  return (
    <div class="desk">
      <DeskHead
        title={w.title}
        under={asks && asks.length > 0 ? w.left(asks.length) : ''}
        back={{ at: 'board' }}
      />
      <main class="desk-main-part" key={table.value.hits.at(-1)?.hit}>
        {question ? (
          <>
            <h2 class="settle-title">{question.title}</h2>
            <p>{question.why}</p>
            {question.ways.map((way, i) => (
              <section class="settle-way" key={way.answer ? JSON.stringify(way.answer) : i}>
                {way.title ? <h3>{way.title}</h3> : null}
                {way.said ? <p class="soft figures">{way.said}</p> : null}
                {way.lines.map((line) => (
                  <p key={line} class="figures">
                    <strong>{line}</strong>
                  </p>
                ))}
                {way.key && way.answer ? (
                  <button type="button" class="desk-second" onClick={() => way.answer && answer(way.answer)}>
                    {way.key}
                  </button>
                ) : null}
              </section>
            ))}
            {question.caution ? <p class="caution">{question.caution}</p> : null}
            {both ? (
              <button
                type="button"
                class="desk-main"
                onClick={() => ('is' in both.answer ? answer(both.answer) : read(both.answer))}
              >
                {both.key}
              </button>
            ) : null}
          </>
        ) : asks ? (
          <p>{w.none}</p>
        ) : null}
      </main>
    </div>
  )
}
