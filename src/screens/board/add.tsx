import { useSignal } from '@preact/signals'
import type { Form } from '../../../shared/nouns.ts'
import { showEntry } from '../../table/entry/entry.ts'
import {
  BISQUE_CONES,
  FORMS,
  lastForm,
  lastStack,
  nextPot,
  outerOf,
  SIZES,
  type Size,
  stepShape,
} from '../../table/entry/offer.ts'
import { LIMITS } from '../../table/model/limits.ts'
import type { Table } from '../../table/model/state.ts'
import { Choice, Switch } from '../../ui/choice.tsx'
import { PotGlyph, scaleFor } from '../../ui/glyph.tsx'
import { Stepper } from '../../ui/stepper.tsx'
import { refusalText } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import { DeskHead } from '../desk/head.tsx'
import { placeText } from '../text/amounts.ts'
import { PotForm } from './pot-form.tsx'
import { StackChoice } from './stack-choice.tsx'
import './add.css'

/** Two taps a pot: its outline, its size. Number, place and stack follow by themselves. */
export function AddPots() {
  const { table, words, go, act } = useDesk()
  const form = useSignal<Form | 'own'>(lastForm(table.peek()))
  const stack = useSignal<string | undefined>(undefined)
  const copies = useSignal(1)
  const lid = useSignal(false)
  const lidStack = useSignal<string | undefined>(undefined)
  const cone = useSignal<string | undefined>(undefined)
  const said = useSignal<{ readonly text: string; readonly wrong: boolean } | undefined>(undefined)
  const w = words.value.desk.add
  const stackId = stack.value ?? lastStack(table.value)

  if (stackId === undefined)
    return (
      <div class="desk">
        <DeskHead title={w.title} back={{ at: 'board' }} />
        <main class="desk-main-part">
          <p>{w.noStack}</p>
          <button type="button" class="desk-main" onClick={() => go({ at: 'stacks', stackId: 'new' })}>
            {w.toStack}
          </button>
        </main>
      </div>
    )
  if (form.value === 'own')
    return <PotForm stackId={stackId} back={() => (form.value = lastForm(table.peek()))} />

  const bisqueCone = cone.value ?? table.value.board.bisqueCone
  const toCone = (by: 1 | -1) => {
    const next = BISQUE_CONES[BISQUE_CONES.indexOf(bisqueCone) + by]
    return next === undefined
      ? undefined
      : () => {
          cone.value = next === table.peek().board.bisqueCone ? undefined : next
        }
  }
  const add = (chosen: Form, size: Size) => {
    const before = new Set(Object.keys(table.peek().pots))
    const shape = stepShape(table.peek().board, chosen, size)
    const lidded = chosen === 'jar' && lid.peek()
    const refusal = act({
      do: 'set-pot',
      pot: { shape, stackId, ...(cone.peek() === undefined ? {} : { bisqueCone }) },
      copies: copies.peek(),
      ...(lidded ? { lid: { stackId: lidStack.peek() ?? stackId } } : {}),
    })
    said.value = refusal
      ? { text: refusalText(words.peek(), refusal), wrong: true }
      : { text: addedText(table.peek(), before, w.added), wrong: false }
    if (!refusal) copies.value = 1
  }
  const upcoming = nextPot(table.value)
  const chosen = form.value
  return (
    <div class="desk add">
      <DeskHead
        title={w.title}
        under={w.next(upcoming.number, placeText(upcoming.place))}
        back={{ at: 'board' }}
      >
        <button type="button" class="key" onClick={() => go({ at: 'board' })}>
          {words.value.desk.done}
        </button>
      </DeskHead>
      <main class="desk-main-part">
        <Forms chosen={chosen} onChoose={(next) => (form.value = next)} />
        <Sizes form={chosen} onChoose={(size) => add(chosen, size)} />
        <Stepper
          label={w.many}
          text={`${copies.value}`}
          less={{
            label: w.fewer,
            act: copies.value > LIMITS.copies.least ? () => copies.value-- : undefined,
          }}
          more={{ label: w.more, act: copies.value < LIMITS.copies.most ? () => copies.value++ : undefined }}
        />
        {chosen === 'jar' ? (
          <Switch label={w.lid} help={w.lidHelp} on={lid.value} onSwitch={(on) => (lid.value = on)} />
        ) : null}
        <p class="caution">{w.look}</p>
        <Stepper
          label={w.cone}
          text={bisqueCone}
          less={{ label: words.value.desk.pot.coneLess, act: toCone(-1) }}
          more={{ label: words.value.desk.pot.coneMore, act: toCone(1) }}
        />
        <StackChoice label={w.stack} value={stackId} onChoose={(next) => (stack.value = next)} />
        {chosen === 'jar' && lid.value ? (
          <StackChoice
            label={w.lidStack}
            value={lidStack.value ?? stackId}
            onChoose={(next) => (lidStack.value = next)}
          />
        ) : null}
      </main>
      {said.value ? (
        <footer class="desk-save add-said">
          <p class={said.value.wrong ? 'alarm' : 'figures'} role={said.value.wrong ? 'alert' : 'status'}>
            {said.value.text}
          </p>
          {said.value.wrong ? null : (
            <button
              type="button"
              class="key"
              onClick={() => {
                act({ do: 'take-back' })
                said.value = undefined
              }}
            >
              {words.value.desk.takeBack}
            </button>
          )}
        </footer>
      ) : null}
    </div>
  )
}

const GLYPH = { width: 60, height: 42 }

function Forms({
  chosen,
  onChoose,
}: {
  readonly chosen: Form
  readonly onChoose: (form: Form | 'own') => void
}) {
  const { table, words } = useDesk()
  const w = words.value.desk
  const drawn = FORMS.map((form) => ({
    value: form,
    name: w.form[form],
    label: (
      <>
        <PotGlyph outer={outerOf(stepShape(table.value.board, form, 'medium')) ?? []} {...GLYPH} />
        <span>{w.form[form]}</span>
      </>
    ),
  }))
  const own = {
    value: 'own' as const,
    name: w.add.ownName,
    label: (
      <>
        <RulerGlyph />
        <span>{w.add.own}</span>
      </>
    ),
  }
  return (
    <Choice
      label={w.add.which}
      hidden
      columns={4}
      options={[...drawn, own]}
      value={chosen}
      onChoose={onChoose}
    />
  )
}

/** A ruler: measures of one's own. */
const RulerGlyph = () => (
  <svg width={GLYPH.width} height={GLYPH.height} viewBox="0 5 60 42" aria-hidden="true" fill="none">
    <path d="M6 20 H54 V40 H6 Z" stroke="currentColor" stroke-width="3" stroke-linejoin="round" />
    <path d="M14 21 V30 M22 21 V27 M30 21 V30 M38 21 V27 M46 21 V30" stroke="currentColor" stroke-width="3" />
  </svg>
)

const SIZE_BOX = { width: 92, height: 98 }

function Sizes({ form, onChoose }: { readonly form: Form; readonly onChoose: (size: Size) => void }) {
  const { table, words, formats } = useDesk()
  const { units } = table.value.settings
  const w = words.value.desk
  const shapes = SIZES.map((size) => {
    const shape = stepShape(table.value.board, form, size)
    return { size, shape, outer: outerOf(shape) ?? [] }
  })
  const scale = Math.min(...shapes.map(({ outer }) => scaleFor(outer, SIZE_BOX.width, SIZE_BOX.height)))
  return (
    <fieldset class="sizes">
      <legend class="visually-hidden">{w.add.size}</legend>
      {shapes.map(({ size, shape, outer }) => (
        <button key={size} type="button" class="key size" onClick={() => onChoose(size)}>
          <PotGlyph outer={outer} {...SIZE_BOX} scale={scale} />
          <strong>{w.size[size]}</strong>
          <small class="figures">
            {w.add.measures(showEntry('heightMm', shape.heightMm, units), formats.value.mm(shape.rimMm))}
          </small>
        </button>
      ))}
    </fieldset>
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
