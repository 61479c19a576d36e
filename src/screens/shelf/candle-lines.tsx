import { candlingSteps, roughly } from '../../table/load/candle.ts'
import { potsIn } from '../../table/load/loads.ts'
import type { LoadState } from '../../table/model/load-state.ts'
import { useDays } from '../days.ts'
import { useSteps } from '../parts/use-steps.ts'
import { amount } from '../text/amounts.ts'
import { thingName, useLoad } from './load-app.ts'

const MIN_MS = 60_000
/** Told to a quarter of an hour, as nobody knows it finer; before the kiln is on it is computed anew so often. */
const QUARTER_MS = 15 * MIN_MS

/**
 * How long a load is candled by the water in its thickest pot: while the lid waits in hours from now, once the kiln is on by
 * the clock.
 */
export function CandleLines({ load }: { readonly load: LoadState }) {
  const { table, now, words, formats } = useLoad()
  const w = words.value.desk.shelf
  const { things, litAt } = load
  const quarter = litAt === undefined ? Math.floor(now.value / QUARTER_MS) : 0
  const found = useSteps(
    () => candlingSteps(table.peek(), potsIn(table.peek(), load), litAt ?? now.peek()),
    [table.value.pots, table.value.air, things, litAt, quarter],
  )
  const days = useDays()
  if (!found) return null
  const { likelyMin, lateMin, waterG, potId } = roughly(found)
  if (waterG === 0) return null
  const water = amount('grams', waterG, table.value.settings.units)
  const told = (min: number) =>
    !Number.isFinite(min)
      ? words.value.units.never
      : litAt === undefined
        ? formats.value.span(min * MIN_MS)
        : days.moment(litAt + min * MIN_MS)
  const say = litAt === undefined ? w.candleFor : w.candleUntil
  return (
    <p class="figures">
      {say(told(likelyMin), told(lateMin), water, thingName(words.value, table.value, potId))}
    </p>
  )
}
