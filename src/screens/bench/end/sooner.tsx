import { useSignal } from '@preact/signals'
import { type DrySooner, lastOf, soonerSteps } from '../../../table/card/dry-sooner.ts'
import { potsThatDry } from '../../../table/card/end-card.ts'
import { decideSetup } from '../../../table/decide/decide-setup.ts'
import { candlingSteps, roughly } from '../../../table/load/candle.ts'
import { lightingAt } from '../../../table/load/to-load.ts'
import { PressButton } from '../../../ui/press.tsx'
import { refusalText, useApp } from '../../app.ts'
import { useDays } from '../../days.ts'
import { useLateWords } from '../../late-words.ts'
import { useSteps } from '../../parts/use-steps.ts'
import { amount } from '../../text/amounts.ts'
import '../other.css'

const MIN_MS = 60_000

/** Hours in the kiln below boiling, and the water that leaves there, for pots that are lit at `litAt`, table time, ms. */
function CandledFor({ litAt }: { readonly litAt: number }) {
  const { table, formats } = useApp()
  const { end: w } = useLateWords()
  const of = table.value
  const pots = () => potsThatDry(of).flatMap(({ potId }) => of.pots[potId] ?? [])
  const found = useSteps(() => candlingSteps(of, pots(), litAt), [of])
  if (!found) return null
  const { likelyMin, lateMin, waterG } = roughly(found)
  if (waterG === 0) return null
  const [likely, late] = [likelyMin, lateMin].map((min) =>
    Number.isFinite(min) ? formats.value.span(min * MIN_MS) : w.never,
  )
  return <>{w.candledFor(likely ?? '', late ?? '', amount('grams', waterG, of.settings.units))}</>
}

/** What would help: a fan, another board, candling, with what each gains; taken in one tap. */
export function Sooner({ close }: { readonly close: () => void }) {
  const app = useApp()
  const { table, now, words, formats } = app
  const said = useSignal<string | undefined>(undefined)
  const of = table.value
  const found = useSteps(() => soonerSteps(of, now.peek()), [of])
  const { between } = useDays()
  const { end: w, other, ways } = useLateWords()
  const last = lastOf(potsThatDry(table.value))
  const litAt = (dryAt: number) => Math.max(dryAt, lightingAt(of, now.peek()))
  const take = (way: DrySooner) => (atMs: number) => {
    const refusal = app.act(way.action, atMs, decideSetup)
    if (refusal) said.value = refusalText(words.value, refusal)
    else close()
  }
  return (
    <section class="other ways">
      <header class="other-head">
        <h1>{w.soonerTitle}</h1>
        <PressButton class="other-close" onPress={close}>
          {other.back}
        </PressButton>
      </header>
      {last ? <p class="figures">{w.lastDry(between(last))}</p> : null}
      {last && of.settings.candle ? (
        <p class="figures">
          <CandledFor litAt={litAt(last.likely)} />
        </p>
      ) : null}
      {said.value ? (
        <p class="said" role="alert">
          {said.value}
        </p>
      ) : null}
      <div class="ways-list">
        {found?.map((way) => (
          <PressButton key={way.cut} class="other-tile way" onPress={take(way)}>
            <span>{ways.way[way.cut](0)}</span>
            <small class="figures">
              {way.cut === 'candling' ? (
                <>
                  {w.candled(between(way.last))}, <CandledFor litAt={litAt(way.last.likely)} />
                </>
              ) : (
                w.soonerBy(
                  between(way.last),
                  Number.isFinite(way.gainMs) ? formats.value.span(way.gainMs) : undefined,
                )
              )}
            </small>
          </PressButton>
        ))}
      </div>
      {found?.length ? null : <p class="soft">{found ? w.noSooner : w.looking}</p>}
    </section>
  )
}
