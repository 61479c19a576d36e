import { useSignal } from '@preact/signals'
import type { Form } from '../../../shared/nouns.ts'
import { BISQUE_CONES, lastForm, lastStack, nextPot, type Size, stepShape } from '../../table/entry/offer.ts'
import { LIMITS } from '../../table/model/limits.ts'
import type { Table } from '../../table/model/state.ts'
import { Switch } from '../../ui/choice.tsx'
import { Stepper } from '../../ui/stepper.tsx'
import { refusalText } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, useEntry } from '../desk/entry-field.tsx'
import { DeskHead } from '../desk/head.tsx'
import { placeText } from '../text/amounts.ts'
import { AddCoats, NewStackName, useNewStack } from './add-coats.tsx'
import { useAddWords } from './add-words.ts'
import { Forms, Sizes } from './form-keys.tsx'
import { PotForm } from './pot-form.tsx'
import { StackChoice } from './stack-choice.tsx'
import '../desk/save.css'
import './add.css'

interface Said {
  readonly text: string
  /** Of what was added: the number it began at, to which taking it back leads. Without it nothing was. */
  readonly from?: number
}

/** Two taps a pot: its outline, its size. Number and place follow by themselves; a stack is written in passing. */
export function AddPots() {
  const { table, words, go, act } = useDesk()
  const form = useSignal<Form>(lastForm(table.peek()))
  const own = useSignal(false)
  const stack = useSignal<string | undefined>(undefined)
  const copies = useSignal(1)
  const lid = useSignal(false)
  const lidStack = useSignal<string | undefined>(undefined)
  const cone = useSignal<string | undefined>(undefined)
  const said = useSignal<Said | undefined>(undefined)
  const from = useSignal<number | undefined>(undefined)
  const upcoming = nextPot(table.value, from.value)
  const numbered = useEntry('number', upcoming.number)
  const w = useAddWords()
  const stackId = stack.value ?? lastStack(table.value)
  const fresh = useNewStack(stackId === undefined, words.value.desk.form[form.value], () => {
    said.value = undefined
  })

  if (Object.keys(table.value.buckets).length === 0) return <NoBucket />
  if (own.value && stackId !== undefined)
    return <PotForm stackId={stackId} back={() => (own.value = false)} />

  const bisqueCone = cone.value ?? table.value.board.bisqueCone
  const toCone = (by: 1 | -1) => {
    const next = BISQUE_CONES[BISQUE_CONES.indexOf(bisqueCone) + by]
    return next === undefined
      ? undefined
      : () => {
          cone.value = next === table.peek().board.bisqueCone ? undefined : next
        }
  }
  /** The stack that is chosen, stored if it is a new one; undefined where it can't be, which is said. */
  const stackToUse = (): string | undefined => {
    if (!fresh.bucketIds) return stackId
    const written = fresh.write()
    if ('wrong' in written) said.value = { text: written.wrong }
    else stack.value = written.stackId
    return 'wrong' in written ? undefined : written.stackId
  }
  const add = (size: Size) => {
    if (!numbered.check()) {
      said.value = { text: w.wrongNumber }
      return
    }
    const first = numbered.value ?? upcoming.number
    const coats = stackToUse()
    if (coats === undefined) return
    const before = new Set(Object.keys(table.peek().pots))
    const refusal = act({
      do: 'set-pot',
      pot: {
        shape: stepShape(table.peek().board, form.peek(), size),
        stackId: coats,
        number: first,
        ...(cone.peek() === undefined ? {} : { bisqueCone }),
      },
      copies: copies.peek(),
      ...(form.peek() === 'jar' && lid.peek() ? { lid: { stackId: lidStack.peek() ?? coats } } : {}),
    })
    if (refusal) {
      said.value = { text: refusalText(words.peek(), refusal) }
      return
    }
    said.value = { text: addedText(table.peek(), before, w.added), from: first }
    from.value = first
    copies.value = 1
  }
  const takeBack = () => {
    act({ do: 'take-back' })
    from.value = said.peek()?.from
    said.value = undefined
  }
  const chosen = form.value
  return (
    <div class="desk add">
      <DeskHead
        title={w.title}
        under={w.next(numbered.value ?? upcoming.number, placeText(upcoming.place))}
        back={{ at: 'board' }}
      >
        <button type="button" class="key" onClick={() => go({ at: 'board' })}>
          {words.value.desk.done}
        </button>
      </DeskHead>
      <main class="desk-main-part">
        <AddCoats stackId={stackId} fresh={fresh} onChoose={(next) => (stack.value = next)} />
        <Forms
          chosen={chosen}
          onChoose={(next) => {
            if (next !== 'own') form.value = next
            else if (stackToUse() !== undefined) own.value = true
          }}
        />
        <Sizes form={chosen} onChoose={add} />
        <div class="add-number">
          <EntryField entry={numbered} label={w.number} />
        </div>
        <Stepper
          label={w.many}
          text={`${copies.value}`}
          less={{
            label: w.fewer,
            act: copies.value > LIMITS.copies.least ? () => copies.value-- : undefined,
          }}
          more={{ label: w.more, act: copies.value < LIMITS.copies.most ? () => copies.value++ : undefined }}
        />
        <NewStackName fresh={fresh} />
        {chosen === 'jar' ? (
          <Switch label={w.lid} help={w.lidHelp} on={lid.value} onSwitch={(on) => (lid.value = on)} />
        ) : null}
        {chosen === 'jar' && lid.value && stackId !== undefined ? (
          <StackChoice
            label={w.lidStack}
            value={lidStack.value ?? stackId}
            onChoose={(next) => (lidStack.value = next)}
          />
        ) : null}
        <p class="caution">{w.look}</p>
        <Stepper
          label={w.cone}
          text={bisqueCone}
          less={{ label: words.value.desk.pot.coneLess, act: toCone(-1) }}
          more={{ label: words.value.desk.pot.coneMore, act: toCone(1) }}
        />
      </main>
      {said.value ? (
        <footer class="desk-save add-said">
          <p
            class={said.value.from === undefined ? 'alarm' : 'figures'}
            role={said.value.from === undefined ? 'alert' : 'status'}
          >
            {said.value.text}
          </p>
          {said.value.from === undefined ? null : (
            <button type="button" class="key" onClick={takeBack}>
              {words.value.desk.takeBack}
            </button>
          )}
        </footer>
      ) : null}
    </div>
  )
}

/** Without a bucket there is nothing to dip pots into. */
function NoBucket() {
  const { go } = useDesk()
  const w = useAddWords()
  return (
    <div class="desk">
      <DeskHead title={w.title} back={{ at: 'board' }} />
      <main class="desk-main-part">
        <p>{w.noBucket}</p>
        <button
          type="button"
          class="desk-main"
          onClick={() => go({ at: 'buckets', bucketId: 'new', onward: { at: 'pot' } })}
        >
          {w.toBucket}
        </button>
      </main>
    </div>
  )
}

/** "34 to 39 on B 1 to C 2" of what was not there before. */
function addedText(
  table: Table,
  before: ReadonlySet<string>,
  say: (numbers: string, places: string) => string,
): string {
  const added = Object.values(table.pots).filter((pot) => !before.has(pot.facts.potId))
  const [first, last] = [added[0]?.facts, added.at(-1)?.facts]
  if (!first || !last) return ''
  const span = (a: string, b: string) => (a === b ? a : `${a} – ${b}`)
  return say(span(`${first.number}`, `${last.number}`), span(placeText(first.place), placeText(last.place)))
}
