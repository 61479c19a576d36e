import { forecastOf } from '../../table/forecast/forecast.ts'
import { lastDip } from '../../table/model/plan.ts'
import { isClocked } from '../../table/steps/steps.ts'
import { stepsOf } from '../../table/steps/work.ts'
import { type Away, useApp } from '../app.ts'
import { nameOf, placeOf } from '../text/pot-text.ts'

const MOST_LINES = 6

/** Coming back after the phone slept: what came due meanwhile, the longest overdue first. */
export function WhileAway({ away }: { readonly away: Away }) {
  const { table, words, formats, now } = useApp()
  const w = words.value.bench
  const due = stepsOf(table.value, now.value)
    .flatMap(({ pot, step }) => {
      const byClock = step.is === 'dip' && isClocked(table.value)
      const at =
        step.is === 'touch' ? step.askAt : step.is === 'foot-check' || byClock ? readyAt(pot) : undefined
      return at !== undefined && at > away.from && at <= now.value ? [{ pot, at }] : []
    })
    .sort((a, b) => a.at - b.at)
  function readyAt(pot: (typeof table.value.pots)[string]): number | undefined {
    return lastDip(pot) && forecastOf(table.value, pot)?.ready.likely
  }
  return (
    <div class="face face-wide">
      <h1 class="title title-big">{w.backTitle(formats.value.span(away.to - away.from))}</h1>
      <p class="soft">{due.length > 0 ? w.backText : w.backNone}</p>
      <ol class="overdue figures">
        {due.slice(0, MOST_LINES).map(({ pot, at }) => (
          <li key={pot.facts.potId}>
            <strong>{nameOf(words.value, pot)}</strong>
            <span>{placeOf(pot)}</span>
            <span>{w.overdue(formats.value.span(now.value - at))}</span>
          </li>
        ))}
      </ol>
    </div>
  )
}
