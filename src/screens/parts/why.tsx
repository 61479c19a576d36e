import { useMemo } from 'preact/hooks'
import { filledAt, forecastOf } from '../../table/forecast/forecast.ts'
import { waterNowG } from '../../table/forecast/saturation.ts'
import { untaughtForecast } from '../../table/forecast/wall-forecast.ts'
import { thickest, zoneReports } from '../../table/forecast/zone-report.ts'
import { DEFAULT_AIR } from '../../table/model/defaults.ts'
import type { PotState } from '../../table/model/state.ts'
import { LATE_WORDS } from '../../words/late.ts'
import { useApp } from '../app.ts'
import { useDays } from '../days.ts'
import { warningText } from './warning-line.tsx'
import './why.css'

/** What stands behind the figures of a pot: coats by zone, water in the wall, the spread of the waits. */
export function Why({ pot }: { readonly pot: PotState }) {
  const { table, now, words, formats, card } = useApp()
  const w = LATE_WORDS[table.value.settings.language].why
  const f = formats.value
  const { skewMs } = table.value
  const days = useDays()
  const forecast = forecastOf(table.value, pot)
  const { readyMeans } = table.value.settings
  const taught = forecast !== undefined && forecast.learned.count > 0 && readyMeans !== 'clock'
  const before = useMemo(
    () => (taught ? untaughtForecast(table.value, pot).ready : undefined),
    [taught, pot, table.value],
  )
  const warnings =
    card.value.kind === 'armed' && card.value.armed.potId === pot.facts.potId ? card.value.armed.warnings : []
  const at = (ms: number) => (Number.isFinite(ms) ? f.clock(ms + skewMs) : words.value.units.never)
  const band = (b: { lower: number; likely: number; upper: number }) =>
    Number.isFinite(b.likely) ? w.band(at(b.lower), at(b.likely), at(b.upper)) : words.value.units.never
  return (
    <div class="why">
      {warnings.length > 0 ? (
        <ul class="why-warnings">
          {warnings.map((warning) => (
            <li key={warning.kind}>{warningText(f, table.value, warning)}</li>
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
              {zoneReports(forecast, thickest).map(({ label, zone }, i) => (
                <tr key={i}>
                  <th>{LATE_WORDS[table.value.settings.language].zone[label]}</th>
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
            <dt>{w.kiln}</dt>
            <dd>{days.between(forecast.kiln)}</dd>
            <dt>{w.water}</dt>
            <dd>{w.grams(Math.round(waterNowG(table.value, pot, now.value)))}</dd>
            <dt>{w.drinks}</dt>
            <dd>{w.part(Math.round(100 * (1 - filledAt(table.value, pot, now.value))))}</dd>
            <AirRow />
            <dt>{w.taught}</dt>
            <dd>{w.checks(forecast.learned.count)}</dd>
            {before ? (
              <>
                <dt>{w.untaught}</dt>
                <dd>{band(before)}</dd>
              </>
            ) : null}
          </dl>
        </>
      ) : (
        <p>{w.bare}</p>
      )}
      <p class="soft">{w.trust}</p>
    </div>
  )
}

/** The air that the waits rest on. */
function AirRow() {
  const { table, now, formats } = useApp()
  const w = LATE_WORDS[table.value.settings.language].why
  const spell = table.value.air.at(-1)
  const air = spell?.air ?? DEFAULT_AIR
  const said = w.airIs(formats.value.temp(air.tempC), Math.round(air.rh * 100), w.draughts[air.draught])
  const cloth = air.cloth ? w.cloth(Math.round((air.cloth.factor - 1) * 100)) : ''
  return (
    <>
      <dt>{w.air}</dt>
      <dd>
        {said}
        {cloth}
        {spell ? w.noted(formats.value.span(now.value - spell.at)) : ''}
      </dd>
    </>
  )
}
