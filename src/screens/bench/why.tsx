import { forecastOf } from '../../table/forecast.ts'
import type { PotState } from '../../table/state.ts'
import { useApp } from '../app.ts'
import { warningText } from './said.ts'

/** What stands behind the figures of a pot: coats by zone, water in the wall, the spread of the waits. */
export function Why({ pot }: { readonly pot: PotState }) {
  const { table, words, formats, card } = useApp()
  const w = words.value.why
  const f = formats.value
  const { skewMs } = table.value
  const forecast = forecastOf(table.value, pot)
  const warnings =
    card.value.kind === 'armed' && card.value.armed.potId === pot.facts.potId ? card.value.armed.warnings : []
  const at = (ms: number) => (Number.isFinite(ms) ? f.clock(ms + skewMs) : words.value.units.never)
  const band = (b: { early: number; likely: number; late: number }) =>
    Number.isFinite(b.likely) ? w.band(at(b.early), at(b.likely), at(b.late)) : words.value.units.never
  return (
    <div class="why">
      {warnings.length > 0 ? (
        <ul class="why-warnings">
          {warnings.map((warning) => (
            <li key={warning.kind}>{warningText(words.value, f, table.value, warning)}</li>
          ))}
        </ul>
      ) : null}
      {forecast ? (
        <>
          <table class="figures">
            <thead>
              <tr>
                <th>{w.zone}</th>
                <th>{w.likely}</th>
                <th>{w.upTo}</th>
                <th>{w.full}</th>
              </tr>
            </thead>
            <tbody>
              {forecast.pot.zones
                .filter((zone) => zone.coats.length > 0)
                .map((zone) => (
                  <tr key={`${zone.face}${zone.fromMm}`}>
                    <th>{words.value.zone[zone.name]}</th>
                    <td>{f.coat(zone.likelyMm)}</td>
                    <td>{f.coat(zone.upperMm)}</td>
                    <td>{Math.round(zone.filled * 100)} %</td>
                  </tr>
                ))}
            </tbody>
          </table>
          <dl class="why-times figures">
            <dt>{w.touch}</dt>
            <dd>{band(forecast.touch)}</dd>
            <dt>{w.thirsty}</dt>
            <dd>{band(forecast.thirsty)}</dd>
            <dt>{w.water}</dt>
            <dd>{w.grams(Math.round(forecast.pot.waterG))}</dd>
          </dl>
        </>
      ) : (
        <p>{w.bare}</p>
      )}
      <p class="soft">{w.trust}</p>
    </div>
  )
}
