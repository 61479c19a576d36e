import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { ConeMake, FiringFacts } from '../../../shared/nouns.ts'
import { MAKES, parseCone, USUAL_FIRING } from '../../table/firing/firing.ts'
import { Choice } from '../../ui/choice.tsx'
import { Field } from '../../ui/field.tsx'
import { useDesk } from './desk-app.ts'
import { EntryField, type NumberEntry, useEntry } from './entry-field.tsx'

/** A firing while it is being typed. */
export interface FiringEntry {
  readonly cone: string
  readonly make: ConeMake
  readonly wrong?: string | undefined
  readonly rise: NumberEntry
  readonly hold: NumberEntry
  readonly setCone: (text: string) => void
  readonly setMake: (make: ConeMake) => void
  /** Says beside the fields what is wrong, if anything is; the firing where all of it can be stored. */
  readonly read: (make?: ConeMake) => FiringFacts | undefined
}

/** What is typed for the firing `of`: another one begins anew. */
interface TypedCone {
  readonly of: string
  readonly cone: string
  readonly make: ConeMake
  readonly wrong?: string | undefined
}

/** Fields of a firing, begun from `stored`, else from a usual one. */
export function useFiring(stored: FiringFacts | undefined): FiringEntry {
  const { words } = useDesk()
  const w = words.value.desk.melt.firing
  const start = stored ?? USUAL_FIRING
  const of = `${start.cone} ${start.make}`
  const fresh: TypedCone = { of, cone: start.cone, make: start.make }
  const [typed, setTyped] = useState(fresh)
  const now = typed.of === of ? typed : fresh
  const rise = useEntry('riseCPerH', start.riseCPerH)
  const hold = useEntry('fireHoldMin', start.holdMin)
  return {
    ...now,
    rise,
    hold,
    setCone: (cone) => setTyped({ ...now, cone, wrong: undefined }),
    setMake: (make) => setTyped({ ...now, make, wrong: undefined }),
    read: (make = now.make) => {
      const parsed = parseCone(now.cone, make)
      const { accepted } = parsed.ok ? { accepted: [] } : parsed
      const wrong = parsed.ok
        ? undefined
        : parsed.code === 'otherMake'
          ? w.otherMake
          : w.notACone(accepted[0] ?? '', accepted.at(-1) ?? '')
      setTyped({ ...now, make, wrong })
      const right = [rise.check(), hold.check()].every(Boolean)
      if (!parsed.ok || !right || rise.value === undefined || hold.value === undefined) return undefined
      return { cone: parsed.cone, make, riseCPerH: rise.value, holdMin: hold.value }
    },
  }
}

interface FiringFieldsProps {
  readonly entry: FiringEntry
  /** A field was left, or the make chosen. */
  readonly onDone?: (make?: ConeMake) => void
  readonly children?: ComponentChildren
}

/** Cone and its make, how fast it rises, how long it is held. */
export function FiringFields({ entry, onDone, children }: FiringFieldsProps) {
  const { words } = useDesk()
  const w = words.value.desk.melt.firing
  const accepted = parseCone('', entry.make)
  const [first, last] = accepted.ok ? ['', ''] : [accepted.accepted[0] ?? '', accepted.accepted.at(-1) ?? '']
  const done = () => onDone?.()
  return (
    <>
      <Choice
        label={w.make}
        options={MAKES.map((value) => ({ value, label: w.makes[value] }))}
        value={entry.make}
        help={w.makeHelp}
        onChoose={(make) => {
          entry.setMake(make)
          onDone?.(make)
        }}
      />
      <p class="caution">{w.care}</p>
      <div class="fields">
        <Field
          label={w.cone}
          text={entry.cone}
          words
          hint={w.coneHint(first, last)}
          wrong={entry.wrong}
          onText={entry.setCone}
          onDone={done}
        />
        <EntryField entry={entry.rise} label={w.rise} help={w.riseHelp} onDone={done} />
        <EntryField entry={entry.hold} label={w.hold} onDone={done} />
        {children}
      </div>
    </>
  )
}
