import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import type { Card } from '../../table/card.ts'
import { AnswerBars, BackStrip, CornerButton, KnuckleBar } from '../../ui/bar.tsx'
import { PatternBand } from '../../ui/swatch.tsx'
import { type BenchHit, refusalText, useApp } from '../app.ts'
import { CountScreen } from './count.tsx'
import { BoardIcon, BucketName, HoldIcon, OtherIcon, PotName } from './face.tsx'
import * as faces from './faces.tsx'
import { Other } from './other.tsx'
import { type ActMap, Acts } from './press.tsx'
import { Returned } from './returned.tsx'
import './bench.css'

/** How long the strip that undoes the last hit stays. */
const STRIP_MS = 10_000
/** How long a refusal stands. */
const SAID_MS = 4000

/** The bench: one step card at a time, one big action. */
export function Bench() {
  const app = useApp()
  const root = useRef<HTMLDivElement>(null)
  const binding = useRef<ReturnType<typeof app.attachBench> | undefined>(undefined)
  const sheet = useSignal(false)
  const acts = useRef<ActMap>(new Map())
  const out = useSignal<ReadonlySet<string>>(new Set())
  const said = useSignal<{ readonly text: string; readonly until: number } | undefined>(undefined)
  const card = app.card.value
  const key = cardKey(card)

  useEffect(() => {
    out.value = new Set()
    binding.current?.cardChanged()
  }, [key])

  const onHit = (hit: BenchHit) => {
    const own = acts.current.get(hit.act)
    if (own) return own(hit.atMs)
    const now = app.card.peek()
    const act = meaning(now, hit, out.peek())
    if (hit.act === 'other') sheet.value = true
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
    binding.current = app.attachBench(root.current, (hit) => onHitNow.current(hit))
    return () => binding.current?.detach()
  }, [])

  const away = app.away.value
  const theme = card.kind === 'count' || card.kind === 'out' ? 'bench bench-count' : 'bench'
  return (
    <Acts.Provider value={acts.current}>
      <div class={theme} ref={root}>
        {away && card.kind !== 'count' ? (
          <Returned away={away} />
        ) : card.kind === 'count' || card.kind === 'out' ? (
          <CountScreen card={card} />
        ) : (
          <>
            <TopRow card={card} />
            <main class="bench-main">
              {said.value && app.now.value < said.value.until ? (
                <p class="said" role="alert">
                  {said.value.text}
                </p>
              ) : null}
              <Face card={card} out={out.value} />
            </main>
            <Strip />
            <Bar card={card} />
          </>
        )}
        {sheet.value ? <Other close={() => (sheet.value = false)} /> : null}
        <NotSaved />
      </div>
    </Acts.Provider>
  )
}

/** Another card is another key: a hit meant for the old one does not count for the new one. */
const cardKey = (card: Card): string => {
  const pot = 'potId' in card ? card.potId : card.kind === 'armed' ? card.armed.potId : ''
  const bucket = 'bucketId' in card ? card.bucketId : ''
  const pots = card.kind === 'ready' ? card.potIds.join() : ''
  return `${card.kind} ${pot} ${bucket} ${pots}`
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
    default:
      return undefined
  }
}

function TopRow({ card }: { readonly card: Card }) {
  const { table, words } = useApp()
  const w = words.value.bench
  const resting = card.kind === 'wait' || card.kind === 'finished' || card.kind === 'held'
  const potId = 'potId' in card ? card.potId : card.kind === 'armed' ? card.armed.potId : undefined
  const ready = card.kind === 'ready' && card.potIds.length === 1 ? card.potIds[0] : undefined
  const pot = table.value.pots[potId ?? ready ?? '']
  const bucketId = card.kind === 'stir' || card.kind === 'return' ? card.bucketId : undefined
  const open = table.value.openBucket
  const pattern = open === undefined ? undefined : table.value.buckets[open]?.facts.pattern
  const first = resting ? (
    <CornerButton act="board" label={w.board}>
      <BoardIcon />
    </CornerButton>
  ) : (
    <CornerButton act="hold" label={w.hold}>
      <HoldIcon />
    </CornerButton>
  )
  return (
    <header class="top-row">
      {pattern ? <PatternBand pattern={pattern} /> : null}
      {first}
      {pot ? <PotName pot={pot} /> : bucketId ? <BucketName bucketId={bucketId} /> : <span />}
      <CornerButton act="other" label={w.other}>
        <OtherIcon />
      </CornerButton>
    </header>
  )
}

function Face({ card, out }: { readonly card: Card; readonly out: ReadonlySet<string> }) {
  switch (card.kind) {
    case 'wax':
    case 'wipe':
    case 'foot-check':
      return <faces.PrepFace card={card} />
    case 'stir':
      return <faces.StirFace card={card} />
    case 'armed':
      return <faces.ArmedFace card={card} />
    case 'drip':
      return <faces.DripFace card={card} />
    case 'ready':
      return <faces.ReadyFace card={card} out={out} />
    case 'wait':
      return <faces.WaitFace card={card} />
    case 'return':
      return <faces.ReturnFace card={card} />
    case 'held':
      return <faces.HeldFace card={card} />
    case 'finished':
      return <faces.FinishedFace card={card} />
    case 'ask-dose':
      return <faces.AskDoseFace card={card} />
    case 'stuck':
      return <faces.StuckFace card={card} />
    case 'count':
    case 'out':
    case 'empty':
      return null
  }
}

/** The bar's words, and what it does at rest. */
function Bar({ card }: { readonly card: Card }) {
  const { table, words } = useApp()
  const w = words.value.bench
  switch (card.kind) {
    case 'wax':
      return <KnuckleBar act="big" label={w.waxBar} />
    case 'wipe':
      return <KnuckleBar act="big" label={w.wipeBar} />
    case 'foot-check':
    case 'drip':
      return <KnuckleBar act="big" label={w.footBar} />
    case 'stir':
      return (
        <KnuckleBar
          act="big"
          label={w.stirBar}
          holdMs={card.heldBar ? 700 : undefined}
          under={card.heldBar ? w.stirAnyway : undefined}
        />
      )
    case 'armed': {
      const lead = table.value.settings.leadInS
      const under = card.armed.cover.kind === 'inside' ? w.startPour(lead) : w.startUnder(lead)
      return card.armed.hasIt ? (
        <KnuckleBar act="big" label={w.againBar} holdMs={700} />
      ) : (
        <KnuckleBar act="big" label={w.startBar} under={under} />
      )
    }
    case 'ready':
      return (
        <AnswerBars
          big={{ act: 'big', label: w.dryBar }}
          small={{ act: 'small', label: w.notYetBar }}
          hand={table.value.settings.hand}
        />
      )
    case 'wait':
      return <faces.RestList card={card} />
    case 'return':
      return <KnuckleBar act="big" label={w.returnBar} />
    case 'held':
      return <KnuckleBar act="big" label={w.resumeBar} />
    case 'ask-dose':
      return <KnuckleBar act="big" label={w.askBar(card.dip.holdS)} />
    case 'stuck':
      return card.big ? <KnuckleBar act="big" label={w.keepGoing} /> : <div class="bar bar-rest" />
    default:
      return <div class="bar bar-rest" />
  }
}

/**
 * The line above the bar. For ten seconds after a hit it takes the hit back, or puts it back again; otherwise it
 * says what does not work.
 */
function Strip() {
  const { table, words, now, health } = useApp()
  const w = words.value
  const last = table.value.hits.at(-1)
  const named = (kind: string, potId: string | undefined) => {
    const number = potId === undefined ? undefined : table.value.pots[potId]?.facts.number
    return [number, w.hits[kind]].filter((part) => part !== undefined).join(' ')
  }
  const back = table.value.takenBack
  const { sound, awake } = health.value
  const silent = table.value.settings.sound !== 'numerals' && (sound === 'off' || sound === 'dead')
  const sleepy = awake === 'lost' || awake === 'refused' || awake === 'absent'
  const lines = [silent ? w.bench.silent : undefined, sleepy ? w.bench.resting : undefined].filter(Boolean)
  return (
    <div class="strip">
      {back && now.value - back.at < STRIP_MS ? (
        <BackStrip act="put-back" label={w.bench.putBack} />
      ) : last && now.value - last.at < STRIP_MS && w.hits[last.kind] !== undefined ? (
        <BackStrip act="take-back" label={w.bench.takeBack(named(last.kind, last.potId))} />
      ) : lines.length > 0 ? (
        <p class="alarms" role="status">
          {lines.join(' · ')}
        </p>
      ) : null}
    </div>
  )
}

/** Nothing may look saved that is not. */
function NotSaved() {
  const { health, words, retrySave } = useApp()
  const w = words.value.bench
  return health.value.saved === 'not-saved' ? (
    <button type="button" class="not-saved" onClick={retrySave}>
      <strong>{w.notSaved}</strong>
      <span>{w.notSavedText}</span>
    </button>
  ) : null
}
