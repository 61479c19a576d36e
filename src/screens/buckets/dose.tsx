import { useMemo } from 'preact/hooks'
import { doseOf, SHORTEST_S } from '../../table/advice/dose.ts'
import type { BucketState } from '../../table/model/state.ts'
import { More } from '../../ui/more.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, useEntry } from '../desk/entry-field.tsx'
import { amount } from '../text/amounts.ts'

/** Seconds and coat of a bucket: what its seconds give now and on target, and what gives a wanted coat. */
export function DoseFor({ bucket }: { readonly bucket: BucketState }) {
  const { table, now, words, formats } = useDesk()
  const w = words.value.desk.measured.glaze
  const { units } = table.value.settings
  const f = formats.value
  const { facts, gramsPerMl } = bucket
  const target = facts.targetGramsPerMl
  const dose = useMemo(() => doseOf(table.peek(), facts, now.peek()), [bucket, table.value.board])
  const planned = useMemo(() => dose.coatMm(target), [dose])
  const wanted = useEntry('pinMm', Math.round(planned * 100) / 100)
  const mm = (value: number) => amount('pinMm', value, units)
  const seconds = (s: number) => words.value.bench.seconds(s)
  const s = seconds(dose.holdS)
  const { shape } = dose.pot
  const form = words.value.desk.form[shape.form]
  const found = useMemo(
    () =>
      wanted.value === undefined
        ? undefined
        : { at: dose.densityFor(wanted.value), by: dose.secondsFor(wanted.value, gramsPerMl) },
    [dose, wanted.value],
  )
  const drifted = Math.abs(gramsPerMl - target) > 1e-9
  return (
    <More label={w.dose}>
      <p class="figures">
        {w.on(s, form, amount('wallMm', shape.wallMm, units))}{' '}
        <strong>
          {w.at(mm(planned), f.density(target))}
          {drifted ? `, ${w.at(mm(dose.coatMm(gramsPerMl)), f.density(gramsPerMl))}` : null}
        </strong>
      </p>
      <EntryField entry={wanted} label={w.wanted} />
      {found ? (
        <p class="figures" role="status">
          {found.at === undefined ? w.noDensity(s) : w.density(s, f.density(found.at))}{' '}
          {found.by.holdS === undefined
            ? w.noSeconds(mm(found.by.likelyMm), f.density(gramsPerMl))
            : found.by.holdS < SHORTEST_S
              ? w.tooQuick(seconds(SHORTEST_S), f.density(gramsPerMl))
              : w.seconds(seconds(Math.round(found.by.holdS * 2) / 2), f.density(gramsPerMl))}
        </p>
      ) : null}
    </More>
  )
}
