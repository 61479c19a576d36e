import { useComputed } from '@preact/signals'
import { useEffect, useState } from 'preact/hooks'
import { decideMeeting } from '../../table/decide/decide-meeting.ts'
import { freeLetter } from '../../table/entry/offer.ts'
import type { Action } from '../../table/model/action.ts'
import type { Answer, Ask, Said, ThingFacts } from '../../table/model/ask.ts'
import { freePlace, nextNumber } from '../../table/model/places.ts'
import { potsOnTable } from '../../table/model/plan.ts'
import { MEETING_WORDS, type MeetingWords } from '../../words/meeting.ts'
import { useApp } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import { DeskHead } from '../desk/head.tsx'
import { useAsks } from '../desk/use-asks.ts'
import { amount, placeText } from '../text/amounts.ts'
import { factLines } from './fact-lines.ts'
import './settle.css'

/** One of two ways: what it is, who said so and when, and the key that says it is so. */
interface Way {
  readonly lines: readonly string[]
  readonly said?: string
  readonly key: string
  readonly answer: Answer
}

interface Question {
  readonly title: string
  readonly why: string
  readonly ways: readonly Way[]
  readonly both?: { readonly key: string; readonly answer: Answer }
}

/** The program with the words of this screen, and with what decides on its answers. */
function useMeeting() {
  const app = useApp()
  const { words: desk } = useDesk()
  const words = useComputed<MeetingWords>(() => ({
    ...desk.value,
    meeting: MEETING_WORDS[app.table.value.settings.language],
  }))
  return { ...app, words, act: (action: Action) => app.act(action, undefined, decideMeeting) }
}

/** What phones that met have in two ways, one at a time. */
export function Settle() {
  const { table, words, act } = useMeeting()
  const [answered, setAnswered] = useState(0)
  const asks = useAsks(answered)
  const question = useQuestion(asks?.[0])
  const w = words.value.meeting
  // The last answer was below the fold; the next question begins at its title.
  useEffect(() => scrollTo(0, 0), [question?.title])
  const answer = (given: Answer) => {
    act({ do: 'settle', answer: given })
    setAnswered(answered + 1)
  }
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
            {question.ways.map((way) => (
              <section class="settle-way" key={JSON.stringify(way.answer)}>
                {way.said ? <p class="soft figures">{way.said}</p> : null}
                {way.lines.map((line) => (
                  <p key={line} class="figures">
                    <strong>{line}</strong>
                  </p>
                ))}
                <button type="button" class="desk-second" onClick={() => answer(way.answer)}>
                  {way.key}
                </button>
              </section>
            ))}
            {question.both ? (
              <button
                type="button"
                class="desk-main"
                onClick={() => question.both && answer(question.both.answer)}
              >
                {question.both.key}
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

function useQuestion(ask: Ask | undefined): Question | undefined {
  const { table: signal, words: said, formats } = useMeeting()
  const [table, words] = [signal.value, said.value]
  const w = words.meeting
  const who = ({ from, at }: Said) =>
    w.said(formats.value.clock(at + table.skewMs), from === undefined ? w.here : w.there)
  const all = potsOnTable(table)
  const pot = (potId: string) => table.pots[potId]?.facts
  const name = (bucketId: string) => table.buckets[bucketId]?.facts.name ?? ''
  const whose = (potId: string) => (table.pots[potId]?.from === undefined ? w.here : w.there)
  const changedTitle = (thing: ThingFacts, number: (potId: string) => number): string => {
    switch (thing.is) {
      case 'board':
        return w.changed.board
      case 'pot':
      case 'plan':
        return w.changed[thing.is](number(thing.facts.potId))
      default:
        return w.changed[thing.is](thing.facts.name)
    }
  }
  switch (ask?.is) {
    case 'coat':
      return {
        title: w.coat(pot(ask.potId)?.number ?? 0, name(ask.bucketId)),
        why: w.coatWhy,
        ways: ask.dips.map((dip, i) => {
          const other = ask.dips[1 - i] ?? dip
          const made = table.pots[ask.potId]?.dips.find(({ dipId }) => dipId === dip.dipId)
          return {
            lines: made ? [w.held(amount('heldS', made.holdS, table.settings.units))] : [],
            said: who(dip),
            key: w.only,
            answer: { is: 'never', dipId: other.dipId },
          }
        }),
        both: { key: w.both, answer: { is: 'both', dipIds: [ask.dips[0].dipId, ask.dips[1].dipId] } },
      }
    case 'changed': {
      const [one] = ask.ways
      if (!one) return undefined
      return {
        title: changedTitle(one, (potId) => pot(potId)?.number ?? 0),
        why: w.why,
        ways: ask.ways.map((own) => ({
          lines: factLines(
            words,
            formats.value,
            table,
            own,
            ask.ways.filter((way) => way !== own),
          ),
          said: who(own),
          key: w.so,
          answer: { is: 'so', thing: own },
        })),
      }
    }
    case 'gone': {
      const { potId, hit } = ask
      return {
        title: w.gone(table.pots[potId]?.facts.number ?? 0),
        why: w.goneWhy,
        ways: [
          { lines: [], said: who(ask.gone), key: w.off, answer: { is: 'off', potId } },
          { lines: [], said: who(ask.used), key: w.stillThere, answer: { is: 'there', potId, hit } },
        ],
      }
    }
    case 'number':
    case 'place': {
      const [first] = ask.potIds
      const facts = pot(first)
      const number = nextNumber(all.map((each) => each.facts.number))
      const place = placeText(freePlace(all.map((each) => each.facts.place)))
      if (!facts) return undefined
      return {
        title: ask.is === 'number' ? w.number(facts.number) : w.place(placeText(facts.place)),
        why: w.why,
        ways: ask.potIds.map((potId) => {
          const own = pot(potId)
          const theirs = own?.whose === undefined ? [] : [w.fact.whose(own.whose)]
          const at = own
            ? [words.desk.form[own.shape.form], w.fact.place(placeText(own.place)), ...theirs]
            : []
          return {
            lines:
              ask.is === 'number'
                ? at
                : own
                  ? [w.fact.number(own.number), words.desk.form[own.shape.form], ...theirs]
                  : [],
            said: whose(potId),
            key: ask.is === 'number' ? w.becomes(number) : w.goesTo(place),
            answer: { is: ask.is, potId },
          }
        }),
      }
    }
    case 'letter':
      return {
        title: w.letter(table.buckets[ask.bucketIds[0]]?.facts.letter ?? ''),
        why: w.why,
        ways: ask.bucketIds.map((bucketId) => ({
          lines: [name(bucketId)],
          key: w.relabel(freeLetter(table, name(bucketId), undefined)),
          answer: { is: 'letter', bucketId },
        })),
      }
    default:
      return undefined
  }
}
