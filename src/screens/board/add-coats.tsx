import { useState } from 'preact/hooks'
import { freeStackName, USUAL_S } from '../../table/entry/offer.ts'
import { Choice } from '../../ui/choice.tsx'
import { Field } from '../../ui/field.tsx'
import { Swatch } from '../../ui/swatch.tsx'
import { refusalText } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import { useAddWords } from './add-words.ts'

type Written = { readonly stackId: string } | { readonly wrong: string }

/** A stack that is written while its first pots are added. */
export interface NewStack {
  /** Its buckets, the first coat first; undefined while none is being written. */
  readonly bucketIds: readonly string[] | undefined
  readonly name: string
  readonly setName: (name: string) => void
  readonly begin: () => void
  readonly drop: () => void
  /** Puts a bucket's coat on top of the others, or takes it out. */
  readonly toggle: (bucketId: string) => void
  /** Stores it. */
  readonly write: () => Written
}

/** `needed`: there is no stack yet. The name it is offered is that of `form`, in words. */
export function useNewStack(needed: boolean, form: string, onToggle: () => void): NewStack {
  const { table, words, act } = useDesk()
  const { coats: w } = useAddWords()
  const [draft, setDraft] = useState<readonly string[]>()
  const [named, setNamed] = useState<string>()
  const all = Object.keys(table.value.buckets)
  const start = all.length === 1 ? all : []
  const bucketIds = draft ?? (needed ? start : undefined)
  const name = named ?? freeStackName(table.value, form)
  const drop = () => {
    setDraft(undefined)
    setNamed(undefined)
  }
  return {
    bucketIds,
    name,
    setName: setNamed,
    begin: () => setDraft(start),
    drop,
    toggle: (id) => {
      onToggle()
      setDraft(bucketIds?.includes(id) ? bucketIds.filter((one) => one !== id) : [...(bucketIds ?? []), id])
    },
    write: () => {
      if (!bucketIds || bucketIds.length === 0) return { wrong: w.none }
      const before = new Set(Object.keys(table.peek().stacks))
      const coats = bucketIds.map((bucketId) => ({
        bucketId,
        cover: { kind: 'full' as const },
        holdS: USUAL_S,
      }))
      const refusal = act({ do: 'set-stack', stack: { name, coats } })
      if (refusal) return { wrong: refusalText(words.peek(), refusal) }
      drop()
      return { stackId: Object.keys(table.peek().stacks).find((id) => !before.has(id)) ?? '' }
    },
  }
}

interface AddCoatsProps {
  readonly stackId: string | undefined
  readonly fresh: NewStack
  readonly onChoose: (stackId: string) => void
}

/** Which coats the pots get: a stack of the table, kept behind its name, or a new one by its buckets. */
export function AddCoats({ stackId, fresh, onChoose }: AddCoatsProps) {
  const { table } = useDesk()
  const [open, setOpen] = useState(false)
  const { coats: w, stack: stackLabel } = useAddWords()
  const stack = table.value.stacks[stackId ?? '']
  const { bucketIds } = fresh
  if (bucketIds) return <NewCoats fresh={fresh} bucketIds={bucketIds} />
  return (
    <>
      <button type="button" class="key add-stack" aria-expanded={open} onClick={() => setOpen(!open)}>
        <span>{w.of(stack?.name ?? '')}</span>
        <CoatMarks stackId={stackId} />
      </button>
      {open ? (
        <div class="add-stacks">
          <Choice
            label={stackLabel}
            hidden
            options={Object.values(table.value.stacks).map((one) => ({
              value: one.stackId,
              name: one.name,
              label: (
                <span class="add-stack-name">
                  {one.name} <CoatMarks stackId={one.stackId} />
                </span>
              ),
            }))}
            value={stackId}
            onChoose={(next) => {
              onChoose(next)
              setOpen(false)
            }}
          />
          <button
            type="button"
            class="desk-second"
            onClick={() => {
              setOpen(false)
              fresh.begin()
            }}
          >
            {w.anew}
          </button>
        </div>
      ) : null}
    </>
  )
}

/** Marks of a stack's coats, the first one first. */
function CoatMarks({ stackId }: { readonly stackId: string | undefined }) {
  const { table } = useDesk()
  return (
    <span class="add-marks">
      {(table.value.stacks[stackId ?? '']?.coats ?? []).map(({ bucketId }, i) => {
        const facts = table.value.buckets[bucketId]?.facts
        return facts ? <Swatch key={i} pattern={facts.pattern} letter={facts.letter} size={28} /> : null
      })}
    </span>
  )
}

/** The buckets to be tapped in the order of their coats. */
function NewCoats({ fresh, bucketIds }: { readonly fresh: NewStack; readonly bucketIds: readonly string[] }) {
  const { table } = useDesk()
  const { coats: w } = useAddWords()
  return (
    <fieldset class="add-new">
      <legend>{w.title}</legend>
      <div class="add-buckets">
        {Object.values(table.value.buckets).map(({ facts }) => {
          const at = bucketIds.indexOf(facts.bucketId)
          return (
            <button
              key={facts.bucketId}
              type="button"
              class="key"
              aria-pressed={at >= 0}
              aria-label={at >= 0 ? w.nth(facts.name, at + 1) : facts.name}
              onClick={() => fresh.toggle(facts.bucketId)}
            >
              <Swatch pattern={facts.pattern} letter={facts.letter} size={28} />
              <span class="add-bucket-name">{facts.name}</span>
              {at >= 0 ? <strong class="figures">{at + 1}</strong> : null}
            </button>
          )
        })}
      </div>
      <p class="help">{w.help}</p>
    </fieldset>
  )
}

/** The name of the stack that is being written, as it is offered or typed. */
export function NewStackName({ fresh }: { readonly fresh: NewStack }) {
  const { coats } = useAddWords()
  if (!fresh.bucketIds) return null
  return <Field label={coats.name} text={fresh.name} words onText={fresh.setName} />
}
