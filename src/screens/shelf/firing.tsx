import { useState } from 'preact/hooks'
import type { ConeMake, FiringFacts } from '../../../shared/nouns.ts'
import {
  besideRise,
  endOf,
  firingOf,
  reachedBy,
  readLog,
  topQuery,
  USUAL_FIRING,
} from '../../table/firing/firing.ts'
import { Field } from '../../ui/field.tsx'
import { refusalText } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, useEntry } from '../desk/entry-field.tsx'
import { FiringFields, useFiring } from '../desk/firing-fields.tsx'
import { DeskHead } from '../desk/head.tsx'
import { amount } from '../text/amounts.ts'
import { ConeAhead, Cooling } from './kiln-readings.tsx'
import './firing.css'

/** Cone, rise and hold of the glaze firing to come, and what a firing's book says. */
export function FiringPage() {
  const { words } = useDesk()
  return (
    <div class="desk">
      <DeskHead title={words.value.desk.melt.firing.title} back={{ at: 'shelf' }} />
      <main class="desk-main-part">
        <Firing />
      </main>
    </div>
  )
}

/** The glaze firing to come: cone, make, rise, hold. What was typed is never changed; what disagrees is asked. */
function Firing() {
  const { table, words, act } = useDesk()
  const w = words.value.desk.melt.firing
  const said = table.value.firing
  const firing = firingOf(table.value) ?? USUAL_FIRING
  const entry = useFiring(firing)
  const top = useEntry('topC', said?.topC, true)
  const keep = (next: FiringFacts) => act({ do: 'plan-firing', firing: next })
  const done = (make?: ConeMake) => {
    const read = entry.read(make)
    if (!read || !top.check()) return
    const next = { ...read, ...(top.value === undefined ? {} : { topC: top.value }) }
    if (JSON.stringify(next) !== JSON.stringify(said)) keep(next)
  }
  return (
    <section class="firing">
      {said ? null : <p class="help">{Object.keys(table.value.tiles).length > 0 ? w.asTile : w.unsaid}</p>}
      <FiringFields entry={entry} onDone={done}>
        <EntryField entry={top} label={w.top} onDone={() => done()} />
      </FiringFields>
      {said ? <Query firing={said} keep={keep} /> : null}
      <Falls firing={firing} />
      <Log />
    </section>
  )
}

/** A top temperature that belongs to another cone: both are kept until somebody says which is meant. */
function Query({
  firing,
  keep,
}: {
  readonly firing: FiringFacts
  readonly keep: (next: FiringFacts) => unknown
}) {
  const { table, words } = useDesk()
  const w = words.value.desk.melt.firing
  const query = topQuery(firing)
  if (!query) return null
  const temp = (tempC: number) => amount('topC', Math.round(tempC), table.value.settings.units)
  const { topC: _top, ...bare } = firing
  return (
    <div class="firing-query" role="alert">
      <p class="alarm figures">
        {w.query(temp(query.typedC), query.nearest, query.cone, temp(query.coneTempC))}
      </p>
      <div class="pair">
        <button type="button" class="key" onClick={() => keep({ ...firing, cone: query.nearest })}>
          {w.wasCone(query.nearest)}
        </button>
        <button type="button" class="key" onClick={() => keep(bare)}>
          {w.dropTop(query.cone)}
        </button>
      </div>
    </div>
  )
}

/** Where the cone falls, and where at the rises next to that. */
function Falls({ firing }: { readonly firing: FiringFacts }) {
  const { table, words } = useDesk()
  const w = words.value.desk.melt.firing
  const { units } = table.value.settings
  const { cone, riseCPerH } = firing
  const end = endOf(firing)
  const temp = (tempC: number) => amount('topC', Math.round(tempC), units)
  const rise = (perH: number) => amount('riseCPerH', perH, units)
  if (!end) return null
  return (
    <>
      <p class="figures">
        {w.falls(cone, temp(end.tempC), rise(riseCPerH))} {end.sure ? null : w.unsure}
      </p>
      {besideRise(firing).map((row) => (
        <p key={row.rateCPerH} class="help figures">
          {w.besides(rise(row.rateCPerH ?? 0), temp(row.tempC))} {w.mark[row.mark]}
        </p>
      ))}
    </>
  )
}

/** Readings out of the firing's book, and the cone their heat brought down. */
function Log() {
  const { table, words, act } = useDesk()
  const w = words.value.desk.melt.firing
  const { units } = table.value.settings
  const [text, setText] = useState('')
  const [wrong, setWrong] = useState<string>()
  const reached = table.value.log && reachedBy(table.value.log)
  const keep = () => {
    const log = readLog(text, units === 'us' ? 'F' : 'C')
    const refusal = log ? act({ do: 'log-firing', log }) : undefined
    setWrong(log ? refusal && refusalText(words.value, refusal) : w.logWrong)
    if (log && !refusal) setText('')
  }
  return (
    <>
      <Field
        label={w.log}
        text={text}
        words
        hint={w.logHint}
        wrong={wrong}
        onText={(next) => {
          setText(next)
          setWrong(undefined)
        }}
      />
      <button type="button" class="key" onClick={keep}>
        {w.logKeep}
      </button>
      {reached ? (
        <p class="figures">
          {reached.reached === null ? w.reachedNone : w.reached(reached.reached)}{' '}
          {reached.next === null || reached.missedC === null
            ? null
            : w.next(
                reached.next,
                w.degrees[units](Math.ceil(reached.missedC * (units === 'us' ? 1.8 : 1))),
              )}{' '}
          {w.pyrometer}
        </p>
      ) : null}
      <ConeAhead />
      <Cooling />
    </>
  )
}
