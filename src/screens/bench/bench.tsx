import { useEffect, useRef } from 'preact/hooks'
import { cardKey } from '../../table/card/bar-action.ts'
import { BarHint, KnuckleBar } from '../../ui/bar.tsx'
import { refusalText, useApp } from '../app.ts'
import { fetchFaces, lazyPart } from '../lazy.tsx'
import { Guard } from '../parts/guard.tsx'
import { BigBar } from './big-bar.tsx'
import { Face } from './card-face.tsx'
import { CountScreen, Hint, SlipLine, WhileAway } from './stand-ins.tsx'
import { Strip } from './strip.tsx'
import { TopRow } from './top-row.tsx'
import './bench.css'

/** Other and its pages come after the first card, as do the ways out of being late. */
const other = () => import('./other.tsx')
const Other = lazyPart(() => other().then(({ Other }) => Other))
const Ways = lazyPart(() => other().then(({ Ways }) => Ways))
const Sooner = lazyPart(() => other().then(({ Sooner }) => Sooner))

const NoisePattern = lazyPart(() => import('./noise.tsx').then(({ NoisePattern }) => NoisePattern))

/** The bench: one step card at a time, one big action. */
export function Bench() {
  const app = useApp()
  const { bench } = app
  const root = useRef<HTMLDivElement>(null)
  const binding = useRef<ReturnType<typeof app.attachBench> | undefined>(undefined)
  const card = app.card.value
  const key = cardKey(card, app.potter.value)

  useEffect(() => {
    binding.current?.cardChanged()
    bench.cardShown(performance.now())
  }, [key])

  useEffect(() => {
    if (!root.current) return
    fetchFaces()
    binding.current = app.attachBench(root.current)
    return () => {
      bench.sheet.value = undefined
      binding.current?.detach()
    }
  }, [])

  const close = () => {
    bench.sheet.value = undefined
  }
  const said = bench.said.value
  const slip = bench.slip.value
  const sheet = bench.sheet.value
  const away = app.away.value
  const counts = card.kind === 'count' || card.kind === 'out'
  const second = app.table.value.potter === 1 && !counts
  const theme = ['bench', counts ? 'bench-count' : '', second ? 'bench-second' : ''].filter(Boolean).join(' ')
  return (
    <div class={theme} ref={root}>
      {away && card.kind !== 'count' ? (
        <>
          <main class="bench-main bench-returned">
            <WhileAway away={away} />
          </main>
          <KnuckleBar label={app.words.value.bench.backBar} />
        </>
      ) : card.kind === 'count' || card.kind === 'out' ? (
        <CountScreen card={card} />
      ) : (
        <>
          <TopRow card={card} />
          <main class="bench-main">
            {said && app.now.value < said.until ? (
              <p class="said" role="alert">
                {refusalText(app.words.value, said.refusal)}
              </p>
            ) : null}
            {slip && app.now.value < slip.until ? <SlipLine dipId={slip.dipId} /> : null}
            <Guard key={key} where={`card ${card.kind}`} small>
              <Face card={card} />
            </Guard>
          </main>
          <Guard where="strip" small>
            <Strip />
          </Guard>
          <BarHint.Provider value={<Hint card={card} />}>
            <BigBar card={card} />
          </BarHint.Provider>
        </>
      )}
      {sheet === 'other' ? <Other close={close} /> : null}
      {sheet === 'warnings' ? <Other close={close} at="warnings" /> : null}
      {sheet === 'ways' ? <Ways close={close} /> : null}
      {sheet === 'sooner' ? <Sooner close={close} /> : null}
      {app.table.value.settings.noisy ? <NoisePattern card={card} /> : null}
    </div>
  )
}
