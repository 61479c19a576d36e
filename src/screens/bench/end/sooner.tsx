import { useSignal } from '@preact/signals'
import { useEffect, useState } from 'preact/hooks'
import { type DrySooner, lastOf, soonerSteps } from '../../../table/card/dry-sooner.ts'
import { potsThatDry } from '../../../table/card/end-card.ts'
import { decideSetup } from '../../../table/decide/decide-setup.ts'
import { PressButton } from '../../../ui/press.tsx'
import { refusalText, useApp } from '../../app.ts'
import { useDays } from '../../days.ts'
import { useLateWords } from '../../late-words.ts'
import '../other.css'

/** What would have the pots dry sooner, a piece at a time between frames; undefined until all is known. */
function useSooner(): readonly DrySooner[] | undefined {
  const { table, now } = useApp()
  const [found, setFound] = useState<readonly DrySooner[]>()
  const of = table.value
  useEffect(() => {
    const steps = soonerSteps(of, now.peek())
    let timer: ReturnType<typeof setTimeout>
    const go = () => {
      const { done, value } = steps.next()
      if (done) setFound(value)
      else timer = setTimeout(go)
    }
    timer = setTimeout(go)
    return () => clearTimeout(timer)
  }, [of])
  return found
}

/** What would help: a fan, another board, candling, with what each gains; taken in one tap. */
export function Sooner({ close }: { readonly close: () => void }) {
  const app = useApp()
  const { table, words, formats } = app
  const said = useSignal<string | undefined>(undefined)
  const found = useSooner()
  const { between } = useDays()
  const { end: w, other } = useLateWords()
  const last = lastOf(potsThatDry(table.value))
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
      {said.value ? (
        <p class="said" role="alert">
          {said.value}
        </p>
      ) : null}
      <div class="ways-list">
        {found?.map((way) => (
          <PressButton key={way.cut} class="other-tile way" onPress={take(way)}>
            <span>{words.value.bench.way[way.cut](0)}</span>
            <small class="figures">
              {way.cut === 'candling'
                ? w.candled(between(way.last))
                : w.soonerBy(
                    between(way.last),
                    Number.isFinite(way.gainMs) ? formats.value.span(way.gainMs) : undefined,
                  )}
            </small>
          </PressButton>
        ))}
      </div>
      {found?.length ? null : <p class="soft">{found ? w.noSooner : w.looking}</p>}
    </section>
  )
}
