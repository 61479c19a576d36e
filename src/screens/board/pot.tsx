import { useState } from 'preact/hooks'
import type { CoatFacts } from '../../../shared/nouns.ts'
import { kilnOf } from '../../table/advice/lid.ts'
import { potTileState } from '../../table/card/board-view.ts'
import { drawingOf } from '../../table/forecast/drawing.ts'
import { forecastOf } from '../../table/forecast/forecast.ts'
import { loadOf } from '../../table/load/loads.ts'
import { otherPiece } from '../../table/model/pieces.ts'
import { coatsOn, nextCoat, planOf } from '../../table/model/plan.ts'
import type { DipState, PotState } from '../../table/model/state.ts'
import { stepOf } from '../../table/steps/steps.ts'
import { HoldKey } from '../../ui/hold.tsx'
import { More } from '../../ui/more.tsx'
import { PotOutline } from '../../ui/outline.tsx'
import { Swatch } from '../../ui/swatch.tsx'
import { useDays } from '../days.ts'
import { useDesk } from '../desk/desk-app.ts'
import { DeskHead } from '../desk/head.tsx'
import { Why } from '../parts/why.tsx'
import { amount, placeText, tileText } from '../text/amounts.ts'
import { coverText, nameOf } from '../text/pot-text.ts'
import { AddPots } from './add.tsx'
import { Places } from './places.tsx'
import { PotForm } from './pot-form.tsx'
import './pot.css'

/** One pot: what it is, what is on it, what comes. Without an id, new pots are added. */
export function Pot({
  potId,
  from,
}: {
  readonly potId?: string | undefined
  readonly from?: 'bench' | undefined
}) {
  const { table, words } = useDesk()
  const [page, setPage] = useState<'card' | 'form' | 'places'>('card')
  if (potId === undefined) return <AddPots />
  const pot = table.value.pots[potId]
  if (!pot || pot.gone)
    return (
      <div class="desk">
        <DeskHead title={words.value.desk.board.title} back={{ at: 'board' }} />
        <main class="desk-main-part">
          <p>{words.value.desk.pot.unknown}</p>
        </main>
      </div>
    )
  const back = () => setPage('card')
  if (page === 'form') return <PotForm pot={pot} stackId={pot.facts.stackId} back={back} />
  if (page === 'places') return <Places potId={potId} back={back} />
  return <PotCard pot={pot} from={from} open={setPage} />
}

interface CardProps {
  readonly pot: PotState
  readonly from: 'bench' | undefined
  readonly open: (page: 'form' | 'places') => void
}

function PotCard({ pot, from, open }: CardProps) {
  const { table, now, words, formats, act, go } = useDesk()
  const days = useDays()
  const w = words.value.desk.pot
  const f = formats.value
  const { facts } = pot
  const { shape } = facts
  const name = nameOf(words.value, pot)
  const { units } = table.value.settings
  const second = Math.floor(now.value / 1000) * 1000
  const state = tileText(words.value, f, potTileState(stepOf(table.value, pot, second)), second)
  const stack = table.value.stacks[facts.stackId]?.name
  // It was fired: nothing more is done to it here.
  const isOpen = loadOf(table.value, facts.lidOf ?? facts.potId)?.openedAt !== undefined
  return (
    <div class="desk">
      <DeskHead title={w.title(name)} under={w.at(placeText(facts.place))} back={{ at: from ?? 'board' }}>
        <strong class="pot-state figures">{state}</strong>
      </DeskHead>
      <main class="desk-main-part">
        <div class="pot-face">
          <PotOutline
            {...drawingOf(table.value, pot, 'with-next')}
            width={150}
            height={200}
            label={w.title(name)}
          />
          <div class="pot-said">
            <strong>{pot.ownPlan ? w.ownPlan : (stack ?? '')}</strong>
            <p>{w.measures(words.value.desk.form[shape.form], f.mm(shape.heightMm), f.mm(shape.rimMm))}</p>
            <p>
              {(facts.lidOf === undefined ? w.wallLine : w.edgeLine)(
                amount('wallMm', shape.wallMm, units),
                amount('footLineMm', shape.footLineMm, units),
              )}
            </p>
            {facts.whose === undefined ? null : <p>{w.whose(facts.whose)}</p>}
            {facts.bisqueCone === undefined ? null : <p>{w.cone(facts.bisqueCone)}</p>}
            {pot.damp && pot.dips.length === 0 ? <p>{w.came[pot.damp.water]}</p> : null}
            {pot.slab ? <p>{w.onSlab}</p> : null}
            {pot.touchedUpAt ? <p>{w.touchedUp(days.moment(pot.touchedUpAt))}</p> : null}
            <Times pot={pot} />
          </div>
        </div>
        <Coats pot={pot} />
        <OtherPiece pot={pot} />
        {pot.dips.length > 0 ? (
          <More label={words.value.other.why}>
            <Why pot={pot} />
          </More>
        ) : null}
        {isOpen ? (
          <button type="button" class="desk-main" onClick={() => go({ at: 'judge', potId: facts.potId })}>
            {words.value.desk.board.judge(1)}
          </button>
        ) : (
          <button
            type="button"
            class="desk-main"
            onClick={() => {
              if (!act({ do: 'pick', potId: facts.potId })) go({ at: 'bench' })
            }}
          >
            {w.toBench}
          </button>
        )}
        <div class="pair">
          <button type="button" class="key" onClick={() => open('form')}>
            {w.change}
          </button>
          {facts.lidOf === undefined ? (
            <button
              type="button"
              class="key"
              onClick={() => {
                const { potId: likePotId, number: _number, place: _place, ...like } = facts
                const lid = otherPiece(table.value, facts)?.facts
                const more = lid ? { lid: { stackId: lid.stackId } } : {}
                if (!act({ do: 'set-pot', pot: like, likePotId, ...more })) go({ at: 'board' })
              }}
            >
              {w.another}
            </button>
          ) : null}
        </div>
        <button type="button" class="desk-second" onClick={() => open('places')}>
          {w.move}
        </button>
        {isOpen ? null : (
          <button
            type="button"
            class="desk-second"
            onClick={() => act({ do: 'put-off', potIds: [facts.potId], later: !pot.later })}
          >
            {pot.later ? w.thisFiring : w.nextFiring}
          </button>
        )}
        <HoldKey
          label={w.gone}
          hint={words.value.desk.holdHint}
          onHeld={() => {
            if (!act({ do: 'gone', potId: facts.potId })) go({ at: 'board' })
          }}
        />
      </main>
    </div>
  )
}

/** The lid of a jar, or the jar of a lid: one tap away, and when both may go into the kiln. */
function OtherPiece({ pot }: { readonly pot: PotState }) {
  const { table, words, go } = useDesk()
  const { between } = useDays()
  const other = otherPiece(table.value, pot.facts)
  if (!other) return null
  const w = words.value.desk.pot
  const kiln = kilnOf(table.value, pot)
  const at = placeText(other.facts.place)
  return (
    <>
      <button type="button" class="desk-second" onClick={() => go({ at: 'pot', potId: other.facts.potId })}>
        {other.facts.lidOf === undefined ? w.itsJar(at) : w.itsLid(at)}
      </button>
      <p class="help">
        {w.seat}
        {kiln ? ` ${w.together(between(kiln))}` : null}
      </p>
    </>
  )
}

/** When it takes a touch, or the kiln. */
function Times({ pot }: { readonly pot: PotState }) {
  const { table, now, words } = useDesk()
  const days = useDays()
  const forecast = forecastOf(table.value, pot)
  if (!forecast) return null
  const w = words.value.desk.pot
  const { lower, likely, upper } = forecast.ready
  const waits = now.value < likely && Number.isFinite(likely)
  const clock = (ms: number) => (Number.isFinite(ms) ? days.moment(ms) : words.value.units.never)
  const done = nextCoat(pot) >= planOf(table.value, pot).length
  return (
    <>
      {waits ? (
        <p class="figures">
          {forecast.held ? w.heldTo(clock(likely)) : w.readyAt(clock(likely), clock(lower), clock(upper))}
        </p>
      ) : null}
      {done ? <p class="figures">{w.kiln(days.between(forecast.kiln))}</p> : null}
    </>
  )
}

/** The plan, coat by coat: what is on is filled. */
function Coats({ pot }: { readonly pot: PotState }) {
  const { table, words, formats } = useDesk()
  const w = words.value.desk.pot
  const stirred = ({ unstirred, stirredAgoMs }: DipState): string => {
    if (!unstirred) return w.on
    return stirredAgoMs === undefined ? w.onUnstirred : w.onStale(formats.value.span(stirredAgoMs))
  }
  const on = coatsOn(pot).map((dip) => ({ ...dip, on: stirred(dip) }))
  const coming = planOf(table.value, pot)
    .slice(nextCoat(pot))
    .map((coat) => ({ ...coat, on: undefined }))
  const wait = ({ afterMin }: CoatFacts) =>
    afterMin === undefined ? '' : `, ${w.after(formats.value.span(afterMin * 60_000))}`
  return (
    <ol class="coat-list">
      {[...on, ...coming].map((coat, i) => {
        const bucket = table.value.buckets[coat.bucketId]?.facts
        return (
          <li key={i} class={coat.on ? 'coat-line is-on' : 'coat-line'}>
            {bucket ? <Swatch pattern={bucket.pattern} letter={bucket.letter} size={36} /> : null}
            <span>
              <strong>{bucket?.name}</strong> {coverText(words.value, formats.value, coat.cover)}
              {coat.on ? '' : wait(coat)}
            </span>
            <span class="figures">
              {coat.on ? `${coat.on} ` : ''}
              {words.value.bench.seconds(coat.holdS)}
            </span>
          </li>
        )
      })}
    </ol>
  )
}
