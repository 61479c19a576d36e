import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import type { Card } from '../../table/card/card.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { type BenchHit, refusalText, useApp } from '../app.ts'
import { fetchSoon, lazyPart } from '../lazy.tsx'
import { BigBar } from './big-bar.tsx'
import { CountScreen } from './count.tsx'
import { Face } from './middle.tsx'
import { type ActMap, Acts } from './press.tsx'
import { Returned } from './soon.tsx'
import { NotSaved, Strip } from './strip.tsx'
import { TopRow } from './top-row.tsx'
import './bench.css'

/** How long a refusal stands. */
const SAID_MS = 4000
/** And what a mended dip came to: it is to be read before the next. */
const NOTED_MS = 10_000

/** A line above the card for a moment: why a hit was refused, or what it came to. */
interface Said {
  readonly text: string
  /** Table time, ms. */
  readonly until: number
  readonly note?: true
}

/** Other and its pages come after the first card, as do the ways out of being late. */
const other = () => import('./other.tsx')
const Other = lazyPart(() => other().then(({ Other }) => Other))
const Ways = lazyPart(() => other().then(({ Ways }) => Ways))

const NoisePattern = lazyPart(() => import('./noise.tsx').then(({ NoisePattern }) => NoisePattern))

/** The bench: one step card at a time, one big action. */
export function Bench() {
  const app = useApp()
  const root = useRef<HTMLDivElement>(null)
  const binding = useRef<ReturnType<typeof app.attachBench> | undefined>(undefined)
  const sheet = useSignal<'other' | 'warnings' | 'ways' | undefined>(undefined)
  const acts = useRef<ActMap>(new Map())
  const out = useSignal<ReadonlySet<string>>(new Set())
  const said = useSignal<Said | undefined>(undefined)
  const card = app.card.value
  const key = cardKey(card, app.potter.value)

  useEffect(() => {
    out.value = new Set()
    binding.current?.cardChanged()
  }, [key])

  const onHit = (hit: BenchHit) => {
    const own = acts.current.get(hit.act)
    if (own) return own(hit.atMs)
    const now = app.card.peek()
    const act = meaning(now, hit, out.peek())
    if (hit.act === 'other' || hit.act === 'warnings') sheet.value = hit.act
    else if (hit.act === 'ways') sheet.value = 'ways'
    else if (hit.act === 'lane') app.potter.value = app.potter.peek() === 1 ? 0 : 1
    else if (hit.act === 'board') app.go({ at: 'board' })
    else if (hit.act === 'back') app.back()
    else if (hit.act.startsWith('leave-out:')) out.value = toggled(out.peek(), hit.act.slice(10))
    else if (act) {
      const refusal = app.act(act, hit.atMs)
      said.value = refusal && {
        text: refusalText(app.words.peek(), refusal),
        until: app.now.peek() + SAID_MS,
      }
    } else if (hit.act !== 'hush') app.refused()
    if (hit.act === 'hush') app.hush()
  }
  const onHitNow = useRef(onHit)
  onHitNow.current = onHit

  useEffect(() => {
    if (!root.current) return
    fetchSoon()
    binding.current = app.attachBench(root.current, (hit) => onHitNow.current(hit))
    return () => binding.current?.detach()
  }, [])

  const close = (text?: string) => {
    sheet.value = undefined
    if (text !== undefined) said.value = { text, until: app.now.peek() + NOTED_MS, note: true }
  }
  const away = app.away.value
  const counts = card.kind === 'count' || card.kind === 'out'
  const second = app.table.value.potter === 1 && !counts
  const theme = ['bench', counts ? 'bench-count' : '', second ? 'bench-second' : ''].filter(Boolean).join(' ')
  return (
    <Acts.Provider value={acts.current}>
      <div class={theme} ref={root}>
        {away && card.kind !== 'count' ? (
          <>
            <main class="bench-main">
              <Returned away={away} />
            </main>
            <KnuckleBar act="back" label={app.words.value.bench.backBar} />
          </>
        ) : card.kind === 'count' || card.kind === 'out' ? (
          <CountScreen card={card} />
        ) : (
          <>
            <TopRow card={card} />
            <main class="bench-main">
              {said.value && app.now.value < said.value.until ? (
                <p class={said.value.note ? 'said said-note' : 'said'} role="alert">
                  {said.value.text}
                </p>
              ) : null}
              <Face card={card} out={out.value} />
            </main>
            <Strip />
            <BigBar card={card} />
          </>
        )}
        {sheet.value === 'other' ? <Other close={close} /> : null}
        {sheet.value === 'warnings' ? <Other close={close} at="warnings" /> : null}
        {sheet.value === 'ways' ? <Ways close={close} /> : null}
        {app.table.value.settings.noisy ? <NoisePattern card={card} /> : null}
        <NotSaved />
      </div>
    </Acts.Provider>
  )
}

/** Another card is another key: a hit meant for the old one does not count for the new one. */
const cardKey = (card: Card, lane: number): string => {
  const pot = 'potId' in card ? card.potId : card.kind === 'armed' ? card.armed.potId : ''
  const bucket = 'bucketId' in card ? card.bucketId : ''
  const pots = card.kind === 'ready' ? card.potIds.join() : ''
  return `${lane} ${card.kind} ${pot} ${bucket} ${pots}`
}

function toggled(set: ReadonlySet<string>, id: string): ReadonlySet<string> {
  const next = new Set(set)
  if (!next.delete(id)) next.add(id)
  return next
}

/** The action a hit stands for on the card that shows. */
function meaning(card: Card, hit: BenchHit, out: ReadonlySet<string>) {
  switch (hit.act) {
    case 'big':
    case 'small': {
      const act = hit.act === 'small' ? card.small : hit.by === 'hold' ? (card.heldBar ?? card.big) : card.big
      return act?.do === 'touched' ? { ...act, potIds: act.potIds.filter((potId) => !out.has(potId)) } : act
    }
    case 'hold':
      return { do: 'hold' } as const
    case 'take-back':
      return { do: 'take-back' } as const
    case 'put-back':
      return { do: 'put-back' } as const
    case 'pan':
      return { do: 'wax-pan', is: 'watched' } as const
    default:
      return undefined
  }
}
