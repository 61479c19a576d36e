import { coneAheadOf } from '../../table/firing/cone-ahead.ts'
import { type Band, coolingOf, LID_C, UNLOAD_C } from '../../table/firing/cooling.ts'
import { useDesk } from '../desk/desk-app.ts'
import { amount } from '../text/amounts.ts'

const MIN_MS = 60_000
/** Nobody waits at the kiln for a single degree. */
const TENS = 10

/** When the cone of the firing will fall, as the kept readings of a rising kiln tell. */
export function ConeAhead() {
  const { table, words, formats } = useDesk()
  const w = words.value.desk.melt.firing
  const ahead = coneAheadOf(table.value)
  if (!ahead) return null
  const after = (min: number) =>
    Number.isFinite(min) ? formats.value.span(min * MIN_MS) : words.value.desk.melt.cooling.dayOn
  const { likely, lower, upper } = ahead.fallsMin
  return (
    <p class="figures">
      {w.ahead(ahead.cone, after(likely), after(lower), after(upper))} {w.pyrometer}
    </p>
  )
}

/** When the lid may be lifted and the pots taken out, as the kept readings of a cooling kiln tell. */
export function Cooling() {
  const { table, words, formats } = useDesk()
  const w = words.value.desk.melt.cooling
  const cooling = coolingOf(table.value)
  if (!cooling) return null
  const { lid, unload, readAgainC } = cooling
  const temp = (tempC: number) => amount('topC', Math.round(tempC), table.value.settings.units)
  const after = (min: number) => (Number.isFinite(min) ? formats.value.span(min * MIN_MS) : w.beyond)
  const line = (goal: string, band: Band) =>
    band.upper === 0
      ? w.reached(goal)
      : w.line(goal, after(band.likely), after(band.lower), after(band.upper))
  return (
    <div class="firing-cooling">
      <h3>{w.title}</h3>
      {lid && unload ? (
        <>
          <p class="figures">{line(w.lid(temp(LID_C)), lid)}</p>
          <p class="figures">{line(w.unload(temp(UNLOAD_C)), unload)}</p>
        </>
      ) : (
        <p>{w.more(temp(600))}</p>
      )}
      {readAgainC === undefined ? null : (
        <p class="figures">{w.again(temp(Math.round(readAgainC / TENS) * TENS))}</p>
      )}
      <p class="help">{w.care}</p>
    </div>
  )
}
