import { useState } from 'preact/hooks'
import {
  type Entry,
  type Range,
  rangeBetween,
  rangeOf,
  readEntry,
  showEntry,
} from '../../table/entry/entry.ts'
import type { Units } from '../../table/entry/measure.ts'
import type { Refusal } from '../../table/model/action.ts'
import type { LimitedField } from '../../table/model/limits.ts'
import { Field } from '../../ui/field.tsx'
import type { DeskWords } from '../../words/desk.ts'
import { marked } from '../../words/number.ts'
import { refusalText } from '../app.ts'
import { useDesk } from './desk-app.ts'

/** A text while it is being typed, and what is wrong with it, if anything is. */
export interface Typed {
  readonly text: string
  readonly wrong?: string | undefined
}

/** A number while it is being typed. */
export interface NumberEntry {
  readonly field: LimitedField
  readonly units: Units
  readonly text: string
  readonly setText: (text: string) => void
  /** What would be stored; undefined when it is empty or can't be. */
  readonly value: number | undefined
  /** Whether it can be stored as it stands. */
  readonly ok: boolean
  readonly optional: boolean
  readonly entry: Entry
  readonly wrong: string | undefined
  readonly changed: boolean
  /** Says beside the field what is wrong with it, if anything is. Answers whether it can be stored. */
  readonly check: () => boolean
  readonly refuse: (text: string) => void
}

interface Told {
  readonly of: string
  readonly text: string
  readonly wrong?: string
}

/**
 * A number to be typed, begun from what is stored, in the person's units. A text that was not touched stands for
 * the stored number exactly. Starts anew when the stored number or the units change.
 */
export function useEntry(field: LimitedField, stored: number | undefined, optional = false): NumberEntry {
  const { table, words } = useDesk()
  const { units } = table.value.settings
  const start = stored === undefined ? '' : marked(showEntry(field, stored, units))
  const of = `${stored} ${units}`
  const [told, setTold] = useState<Told>({ of, text: start })
  const now = told.of === of ? told : { of, text: start }
  const untouched = now.text === start && stored !== undefined
  const entry: Entry = untouched ? { ok: true, value: stored } : readEntry(field, now.text, units)
  const ok = entry.ok || (optional && entry.why === 'missing')
  return {
    field,
    units,
    text: now.text,
    setText: (text) => setTold({ of, text }),
    value: entry.ok ? entry.value : undefined,
    ok,
    optional,
    entry,
    wrong: now.wrong,
    changed: now.text !== start,
    check: () => {
      setTold({ of, text: now.text, wrong: ok || entry.ok ? undefined : wrongText(words.value, entry) })
      return ok
    },
    refuse: (wrong) => setTold({ of, text: now.text, wrong }),
  }
}

const wrongText = (words: DeskWords, entry: Extract<Entry, { ok: false }>): string =>
  words.desk.wrong[entry.why](rangeText(words, entry.range))

/** A range with its unit. */
const rangeText = (words: DeskWords, { least, most, unit }: Range): string =>
  [words.desk.range(marked(least), marked(most)), unit].filter(Boolean).join(' ')

/** A refusal of what several measures come to together, beside the field it names, in the person's units. */
export function refusalBeside(words: DeskWords, refusal: Refusal, entries: readonly NumberEntry[]): boolean {
  const at = entries.find((entry) => entry.field === refusal.field)
  if (!at) return false
  const { least, most } = refusal.facts ?? {}
  const range =
    refusal.code === 'out-of-range' && typeof least === 'number' && typeof most === 'number'
      ? rangeBetween(at.field, least, most, at.units)
      : undefined
  at.refuse(range ? words.desk.wrong['out-of-range'](rangeText(words, range)) : refusalText(words, refusal))
  return true
}

interface EntryFieldProps {
  readonly entry: NumberEntry
  readonly label: string
  readonly help?: string
  readonly onDone?: () => void
}

/** The field of an entry, with its range, and what to take instead where a slip is likely. */
export function EntryField({ entry, label, help, onDone }: EntryFieldProps) {
  const { words } = useDesk()
  const w = words.value.desk
  const { least, most, unit } = rangeOf(entry.field, entry.units)
  const within = w.range(marked(least), marked(most))
  const range = entry.optional ? w.optional(within) : within
  const said = entry.entry.ok ? undefined : entry.entry.meant
  const meant = said && marked(said)
  return (
    <Field
      label={label}
      text={entry.text}
      unit={unit}
      hint={help ? `${range}. ${help}` : range}
      wrong={entry.wrong}
      offer={meant ? { label: w.meant(meant), take: () => entry.setText(meant) } : undefined}
      onText={entry.setText}
      onDone={() => {
        if (entry.changed || entry.wrong) entry.check()
        onDone?.()
      }}
    />
  )
}

interface SavedNumberProps {
  readonly field: LimitedField
  readonly stored: number
  readonly label: string
  readonly help?: string
  /** Stores the number, or says why not. */
  readonly save: (value: number) => Refusal | undefined
}

/** A number that is stored as soon as it is left, if it can be. */
export function SavedNumber({ field, stored, label, help, save }: SavedNumberProps) {
  const { words } = useDesk()
  const entry = useEntry(field, stored)
  const done = () => {
    if (!entry.changed || entry.value === undefined || entry.value === stored) return
    const refusal = save(entry.value)
    if (refusal && !refusalBeside(words.value, refusal, [entry]))
      entry.refuse(refusalText(words.value, refusal))
  }
  return <EntryField entry={entry} label={label} help={help} onDone={done} />
}
