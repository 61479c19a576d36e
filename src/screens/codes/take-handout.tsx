import { useState } from 'preact/hooks'
import type { Handout, PotFacts } from '../../../shared/nouns.ts'
import { decideHandout } from '../../table/decide/decide-handout.ts'
import { atTable, namesIn } from '../../table/entry/handout.ts'
import { twinsOf } from '../../table/meeting/asks.ts'
import { AnswerBars, KnuckleBar } from '../../ui/bar.tsx'
import { refusalText, useApp } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { useSet } from '../desk/settings.ts'
import { useBar } from '../desk/use-bar.ts'
import { cautionText } from '../text/pot-text.ts'
import { StackLines } from './handout-lines.tsx'
import { usePassingWords } from './words.ts'

interface TakeProps {
  readonly handout: Handout
  readonly done: () => void
}

/** What was read off another phone or a sheet: of a class the own pots, by name, and then whether this phone shows more than the bench. */
export function TakeHandout({ handout, done }: TakeProps) {
  const names = namesIn(handout.class?.pots ?? [])
  const [of, setOf] = useState<{ readonly name?: string } | undefined>(names.length > 0 ? undefined : {})
  const [taken, setTaken] = useState(false)
  if (taken) return <BenchAlone />
  if (!of) return <ByName names={names} choose={setOf} stop={done} />
  return <Take handout={handout} name={of.name} done={done} onTaken={() => setTaken(true)} />
}

interface ByNameProps {
  readonly names: readonly string[]
  readonly choose: (of: { readonly name?: string }) => void
  readonly stop: () => void
}

/** Whose phone this is, by the names of the plan. */
function ByName({ names, choose, stop }: ByNameProps) {
  const w = usePassingWords()
  useBar(stop)
  return (
    <>
      <KilnMain>
        <p class="kiln-big">{w.class.whose}</p>
        <div class="kiln-keys codes-names">
          {names.map((name) => (
            <button key={name} type="button" class="key" onClick={() => choose({ name })}>
              {name}
            </button>
          ))}
          <button type="button" class="key" onClick={() => choose({})}>
            {w.class.everyone}
          </button>
        </div>
      </KilnMain>
      <KnuckleBar label={w.handout.no} />
    </>
  )
}

interface OneProps extends TakeProps {
  readonly name: string | undefined
  /** Pots were among it. */
  readonly onTaken: () => void
}

/** Taken, or left, and nothing of it before that. */
function Take({ handout, name, done, onTaken }: OneProps) {
  const { table, words, go } = useDesk()
  const app = useApp()
  const w = usePassingWords()
  const [said, setSaid] = useState<string>()
  const { stacks, buckets, pots, plans, kept, away } = atTable(table.value, handout, name)
  const fresh = stacks.filter(({ is }) => is !== 'here')
  const nothing = fresh.length + buckets.length + pots.length + plans.length + away.length === 0
  const take = (atMs: number) => {
    const refusal = app.act(
      { do: 'take-handout', handout, ...(name === undefined ? {} : { name }) },
      atMs,
      decideHandout,
    )
    if (refusal) setSaid(refusalText(words.value, refusal))
    else if (handout.class) onTaken()
    else go({ at: 'stacks' })
  }
  useBar((atMs) => (nothing ? done() : take(atMs)))
  // A class dips into the buckets of its table.
  const newHere = handout.class ? w.class : w.handout
  const numbers = numbersOf(pots)
  const gone = numbersOf(away.map((pot) => pot.facts))
  return (
    <>
      <KilnMain>
        <Alarm said={said} />
        <p class="kiln-big figures">
          {nothing
            ? kept.length > 0
              ? w.class.kept(numbersOf(kept))
              : w.nothingNew
            : numbers.length > 0
              ? w.class.take(name, numbers)
              : gone.length > 0
                ? w.class.changes
                : w.handout.take(fresh.map(({ stack }) => stack.name))}
        </p>
        {gone.length > 0 ? <p>{w.class.away(gone)}</p> : null}
        {kept.length > 0 && !nothing ? <p>{w.class.kept(numbersOf(kept))}</p> : null}
        {numbers.length > 0 ? <p>{w.class.coats}</p> : null}
        {fresh.map(({ stack, is }) => (
          <div key={stack.stackId}>
            <StackLines stack={stack} buckets={[...handout.buckets, ...facts(table.value.buckets)]} />
            {is === 'other' ? <p class="alarm">{w.handout.other(stack.name)}</p> : null}
          </div>
        ))}
        {buckets.length > 0 ? <p>{newHere.buckets(buckets.map((bucket) => bucket.name))}</p> : null}
        {buckets.map((bucket) => {
          const harm = cautionText(words.value, bucket.cautions)
          return harm ? (
            <p key={bucket.bucketId} class="caution">
              {bucket.name}: {harm}
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

/** Asked once the own pots are here. */
function BenchAlone() {
  const { table, go } = useDesk()
  const set = useSet()
  const w = usePassingWords().class
  const toBench = (student: boolean) => {
    if (student !== table.value.settings.student) set('student', student)
    go({ at: twinsOf(table.value).length > 0 ? 'settle' : 'bench' })
  }
  useBar(() => toBench(true))
  return (
    <>
      <KilnMain>
        <p class="kiln-big">{w.alone}</p>
        <p>{w.aloneHelp}</p>
      </KilnMain>
      <AnswerBars
        big={w.aloneYes}
        small={{ label: w.aloneNo, onPress: () => toBench(false) }}
        hand={table.value.settings.hand}
      />
    </>
  )
}

const facts = <Facts,>(buckets: Readonly<Record<string, { readonly facts: Facts }>>): readonly Facts[] =>
  Object.values(buckets).map((bucket) => bucket.facts)

const numbersOf = (pots: readonly PotFacts[]): readonly number[] =>
  [...new Set(pots.map(({ number }) => number))].sort((a, b) => a - b)
