import { useState } from 'preact/hooks'
import type { Handout } from '../../../shared/nouns.ts'
import { decideHandout } from '../../table/decide/decide-handout.ts'
import { atTable } from '../../table/entry/handout.ts'
import { AnswerBars, KnuckleBar } from '../../ui/bar.tsx'
import { refusalText, useApp } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { useBar } from '../desk/use-bar.ts'
import { cautionText } from '../text/pot-text.ts'
import { StackLines } from './handout-lines.tsx'
import { usePassingWords } from './words.ts'

interface TakeProps {
  readonly handout: Handout
  readonly done: () => void
}

/** Stacks that were read off another phone: taken, or left, and nothing of them before that. */
export function TakeHandout({ handout, done }: TakeProps) {
  const { table, words, go } = useDesk()
  const app = useApp()
  const w = usePassingWords()
  const [said, setSaid] = useState<string>()
  const { stacks, buckets } = atTable(table.value, handout)
  const fresh = stacks.filter(({ is }) => is !== 'here')
  const nothing = fresh.length === 0 && buckets.length === 0
  const take = (atMs: number) => {
    const refusal = app.act({ do: 'take-handout', handout }, atMs, decideHandout)
    if (refusal) setSaid(refusalText(words.value, refusal))
    else go({ at: 'stacks' })
  }
  useBar((atMs) => (nothing ? done() : take(atMs)))
  return (
    <>
      <KilnMain>
        <Alarm said={said} />
        <p class="kiln-big">
          {nothing ? w.nothingNew : w.handout.take(fresh.map(({ stack }) => stack.name))}
        </p>
        {fresh.map(({ stack, is }) => (
          <div key={stack.stackId}>
            <StackLines stack={stack} buckets={[...handout.buckets, ...facts(table.value.buckets)]} />
            {is === 'other' ? <p class="alarm">{w.handout.other(stack.name)}</p> : null}
          </div>
        ))}
        {buckets.length > 0 ? <p>{w.handout.buckets(buckets.map(({ name }) => name))}</p> : null}
        {buckets.map(({ bucketId, name, cautions }) => {
          const harm = cautionText(words.value, cautions)
          return harm ? (
            <p key={bucketId} class="caution">
              {name}: {harm}
            </p>
          ) : null
        })}
      </KilnMain>
      {nothing ? (
        <KnuckleBar label={w.done} />
      ) : (
        <AnswerBars
          big={w.handout.yes}
          small={{ label: w.handout.no, onPress: done }}
          hand={table.value.settings.hand}
        />
      )}
    </>
  )
}

const facts = <Facts,>(buckets: Readonly<Record<string, { readonly facts: Facts }>>): readonly Facts[] =>
  Object.values(buckets).map((bucket) => bucket.facts)
