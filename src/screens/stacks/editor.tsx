import { useState } from 'preact/hooks'
import type { CoatFacts, StackFacts } from '../../../shared/nouns.ts'
import { AS_IS } from '../../table/advice/what-if.ts'
import { NAME_MOST, samplePot, USUAL_S } from '../../table/entry/offer.ts'
import { potsOnTable } from '../../table/model/plan.ts'
import type { Table } from '../../table/model/state.ts'
import { Field } from '../../ui/field.tsx'
import { HoldKey } from '../../ui/hold.tsx'
import { More } from '../../ui/more.tsx'
import { type Route, refusalText } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import type { Typed } from '../desk/entry-field.tsx'
import { DeskHead } from '../desk/head.tsx'
import { DeskSave } from '../desk/save.tsx'
import { useShowWrong } from '../desk/show-wrong.ts'
import { lazyPart } from '../lazy.tsx'
import { isGrave } from '../text/pot-text.ts'
import { Coat } from './coat.tsx'
import { StackFit } from './fit.tsx'
import { Outlook, potName, useOutlook } from './outlook.tsx'
import { WhatIf } from './what-if.tsx'

const LookAhead = lazyPart(() => import('./look-ahead.tsx').then((part) => part.LookAhead))

/** A coat while it is being edited. `right` is false while a field of it can't be stored. */
export interface DraftCoat {
  readonly key: number
  readonly coat: CoatFacts
  readonly right: boolean
}

interface StackEditorProps {
  readonly stack: StackFacts | undefined
  /** Where one was going. */
  readonly onward: Route | undefined
}

/** The coats of a stack in order, and what they come to on a pot, while they are being changed. */
export function StackEditor({ stack, onward }: StackEditorProps) {
  const { table, words, act, demo, go } = useDesk()
  const w = words.value.desk.stacks
  const [name, setName] = useState<Typed>({ text: stack?.name ?? '' })
  const [coats, setCoats] = useState<readonly DraftCoat[]>(() => firstCoats(table.peek(), stack))
  const [open, setOpen] = useState<number | undefined>(stack ? undefined : 0)
  const [asked, setAsked] = useState(0)
  const [said, setSaid] = useState<string>()
  const [turn, setTurn] = useState(0)
  const { page, tried } = useShowWrong()
  const [suppose, setSuppose] = useState(AS_IS)

  const pots = potsToShow(table.value, stack?.stackId)
  const pot = pots[turn % pots.length] ?? samplePot(table.value)
  const plan = coats.map(({ coat }) => coat)
  const { outlook, warnings } = useOutlook(pot, plan, suppose)

  const change = (key: number, coat: CoatFacts, right: boolean) =>
    setCoats((now) => now.map((one) => (one.key === key ? { key, coat, right } : one)))
  const move = (from: number, to: number) => {
    const next = [...coats]
    const [moved] = next.splice(from, 1)
    if (moved) next.splice(to, 0, moved)
    setCoats(next)
  }
  const add = () => {
    const key = Math.max(-1, ...coats.map((one) => one.key)) + 1
    const bucketId = nextBucketOf(table.value, coats)
    setCoats([...coats, { key, right: true, coat: { bucketId, cover: { kind: 'full' }, holdS: USUAL_S } }])
    setOpen(key)
  }
  /** Coats from elsewhere: new keys, so that their fields begin anew. */
  const takeAll = (next: readonly CoatFacts[]) => {
    const from = Math.max(-1, ...coats.map((one) => one.key)) + 1
    setCoats(next.map((coat, i) => ({ key: from + i, coat, right: true })))
    setOpen(undefined)
  }
  const save = () => {
    tried()
    const wrong = coats.find((one) => !one.right)
    const named = name.text.trim() !== '' && [...name.text.trim()].length <= NAME_MOST
    if (!named) setName({ ...name, wrong: words.value.desk.wrong.name(NAME_MOST) })
    if (wrong) {
      setOpen(wrong.key)
      setAsked(asked + 1)
    }
    if (wrong || !named) return
    const refusal = act({
      do: 'set-stack',
      stack: { name: name.text, coats: plan, ...(stack ? { stackId: stack.stackId } : {}) },
    })
    if (!refusal)
      return go(onward ?? (potsOnTable(table.value).length === 0 ? { at: 'board' } : { at: 'stacks' }))
    if (refusal.field === 'stack') setName({ ...name, wrong: refusalText(words.value, refusal) })
    else setSaid(refusalText(words.value, refusal))
  }

  const nameField = (
    <Field
      label={w.name}
      text={name.text}
      words
      hint={words.value.desk.letters(NAME_MOST)}
      wrong={name.wrong}
      onText={(text) => setName({ text, wrong: undefined })}
    />
  )
  return (
    <div class="desk">
      <DeskHead title={stack?.name ?? w.newTitle} back={onward ?? { at: 'stacks' }} />
      <main class="desk-main-part has-save" ref={page}>
        <Outlook
          pot={pot}
          plan={plan}
          outlook={outlook}
          other={pots.length > 1 ? () => setTurn(turn + 1) : undefined}
        />
        <WhatIf suppose={suppose} set={setSuppose} />
        {plan.some(({ cover }) => cover.kind === 'side') ? <p class="help">{w.overlap}</p> : null}
        <StackFit pot={pot} plan={plan} take={takeAll} />
        <ol class="coats">
          {coats.map((one, i) => (
            <Coat
              key={one.key}
              draft={one}
              index={i}
              last={coats.length - 1}
              open={open === one.key}
              asked={asked}
              waitMin={outlook?.coats.at(i - coats.length)?.waitMin.likely}
              warning={warnings.at(i - coats.length)?.find(isGrave)}
              toggle={() => setOpen(open === one.key ? undefined : one.key)}
              change={(coat, right) => change(one.key, coat, right)}
              move={(to) => move(i, to)}
              remove={() => setCoats(coats.filter(({ key }) => key !== one.key))}
            />
          ))}
        </ol>
        {coats.length === 0 ? <p>{w.noCoats}</p> : null}
        <button type="button" class="desk-second" onClick={add}>
          {w.addCoat}
        </button>
        <LookAhead pot={pot} name={potName(words.value, pot)} plan={plan} outlook={outlook} take={takeAll} />
        {stack ? (
          <More label={w.more}>
            {nameField}
            {demo ? null : (
              <button
                type="button"
                class="desk-second"
                onClick={() => go({ at: 'handout', stackId: stack.stackId })}
              >
                {w.handOn}
              </button>
            )}
            <p class="help">{w.kept}</p>
            <HoldKey
              label={w.remove}
              hint={words.value.desk.holdHint}
              onHeld={() => {
                const refusal = act({ do: 'remove-stack', stackId: stack.stackId })
                if (refusal) setSaid(refusalText(words.value, refusal))
                else go({ at: 'stacks' })
              }}
            />
          </More>
        ) : (
          nameField
        )}
      </main>
      <DeskSave said={said} save={save} />
    </div>
  )
}

function firstCoats(table: Table, stack: StackFacts | undefined): readonly DraftCoat[] {
  const coats = stack?.coats ?? [
    { bucketId: nextBucketOf(table, []), cover: { kind: 'full' as const }, holdS: USUAL_S },
  ]
  return coats.map((coat, key) => ({ key, coat, right: true }))
}

/** A bucket that the stack does not have yet, else the first. */
function nextBucketOf(table: Table, coats: readonly DraftCoat[]): string {
  const ids = Object.keys(table.buckets)
  return ids.find((id) => !coats.some(({ coat }) => coat.bucketId === id)) ?? ids[0] ?? ''
}

/** Pots that have this stack, each shape once; else any pot; else a sample. */
function potsToShow(table: Table, stackId: string | undefined) {
  const all = potsOnTable(table).map((pot) => pot.facts)
  const own = all.filter((facts) => facts.stackId === stackId)
  const shown = own.length > 0 ? own : all
  return shown.length > 0 ? shown : [samplePot(table)]
}
