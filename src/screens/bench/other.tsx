import { useSignal } from '@preact/signals'
import type { Action } from '../../table/action.ts'
import type { Card } from '../../table/card.ts'
import { inHand } from '../../table/hand.ts'
import { coatsOn, planWith, potsOnTable } from '../../table/plan.ts'
import type { PotState, Table } from '../../table/state.ts'
import { remedyS } from '../../table/warnings.ts'
import { stepsOf } from '../../table/work.ts'
import { refusalText, useApp } from '../app.ts'
import { BucketTiles, HeldPage, MorePage, type Page, PotTiles } from './other-pages.tsx'
import { PressButton } from './press.tsx'
import { mayRun, ShelfPage } from './shelf.tsx'
import { WeighPage } from './weigh.tsx'
import { Why } from './why.tsx'
import './other.css'

/**
 * Other: the card follows the hand, and slips are put right, in at most three hits. With a pot just dipped in the
 * hands it mends that dip; otherwise it changes what comes next.
 */
export function Other({ close }: { readonly close: () => void }) {
  const app = useApp()
  const page = useSignal<Page>('menu')
  const said = useSignal<string | undefined>(undefined)
  const { table, words } = app
  const w = words.value.other
  const hand = inHand(table.value, stepsOf(table.value, app.now.value))
  const pot = hand?.pot ?? subjectOf(table.value, app.card.value)
  const dip = hand?.dip ?? (pot && coatsOn(pot).at(-1))
  const open = (next: Page) => () => {
    page.value = next
  }
  const act = (action: Action) => (atMs: number) => {
    const refusal = app.act(action, atMs)
    if (refusal) said.value = refusalText(words.value, refusal)
    else close()
  }

  const armed = app.card.value.kind === 'armed' && !hand ? app.card.value.armed : undefined
  const remedy = armed && remedyS(armed.warnings)
  const menu = (
    <div class="other-grid">
      {armed && pot && remedy !== undefined && remedy !== armed.holdS ? (
        <PressButton
          class="other-tile other-wide"
          onPress={act({
            do: 'set-plan',
            potId: armed.potId,
            coats: planWith(table.value, pot, armed.coat, remedy),
          })}
        >
          {remedy > 0 ? w.dipInstead(remedy, armed.holdS) : w.leaveOut}
        </PressButton>
      ) : null}
      {armed && pot && armed.warnings.some(mayRun) ? (
        <PressButton class="other-tile other-wide" onPress={open('shelf')}>
          {words.value.remedy.title}
        </PressButton>
      ) : null}
      <PressButton class="other-tile" onPress={act({ do: 'take-back' })}>
        {w.takeBack}
        <small>{lastHit(table.value, words.value.hits)}</small>
      </PressButton>
      <PressButton class="other-tile" onPress={() => app.go({ at: 'board' })}>
        {words.value.bench.board}
      </PressButton>
      <PressButton class="other-tile" onPress={open('pot')}>
        {hand ? w.wasPot : w.anotherPot}
      </PressButton>
      <PressButton class="other-tile" onPress={open('bucket')}>
        {hand ? w.wasBucket : w.anotherBucket}
      </PressButton>
      <PressButton class="other-tile" onPress={open(hand ? 'held' : 'told')}>
        {hand ? w.held : w.told}
        {pot ? <small class="figures">{pot.facts.number}</small> : null}
      </PressButton>
      <PressButton class="other-tile" onPress={open(hand ? 'earlier' : 'more')}>
        {hand ? w.earlier : w.more}
        {pot && !hand ? <small class="figures">{pot.facts.number}</small> : null}
      </PressButton>
    </div>
  )

  return (
    <section class="other">
      <header class="other-head">
        <h1>{page.value === 'menu' ? words.value.bench.other : w.pages[page.value]}</h1>
        <PressButton class="other-close" onPress={page.value === 'menu' ? close : open('menu')}>
          {w.back}
        </PressButton>
      </header>
      {said.value ? (
        <p class="said" role="alert">
          {said.value}
        </p>
      ) : null}
      {page.value === 'menu' ? menu : null}
      {page.value === 'pot' ? (
        <PotTiles
          pots={potsOnTable(table.value)}
          onPick={(potId) =>
            act(dip && hand ? { do: 'was-other-pot', dipId: dip.dipId, potId } : { do: 'pick', potId })
          }
        />
      ) : null}
      {page.value === 'bucket' && pot ? (
        <BucketTiles
          onPick={(bucketId) =>
            act(
              dip && hand
                ? { do: 'was-other-bucket', dipId: dip.dipId, bucketId }
                : { do: 'pick', potId: pot.facts.potId, bucketId },
            )
          }
        />
      ) : null}
      {page.value === 'told' && pot ? (
        <div class="other-grid">
          {[0, 2, 5, 10].map((agoMin) => (
            <PressButton
              key={agoMin}
              class="other-tile figures"
              onPress={act({ do: 'told', potId: pot.facts.potId, agoMin })}
            >
              {agoMin === 0 ? w.justNow : w.ago(agoMin)}
            </PressButton>
          ))}
        </div>
      ) : null}
      {page.value === 'held' && dip ? <HeldPage dipId={dip.dipId} holdS={dip.holdS} act={act} /> : null}
      {page.value === 'earlier' && dip ? (
        <div class="other-grid">
          {[1, 2, 5].map((byMin) => (
            <PressButton
              key={byMin}
              class="other-tile figures"
              onPress={act({ do: 'was-earlier', dipId: dip.dipId, byMin })}
            >
              {w.ago(byMin)}
            </PressButton>
          ))}
        </div>
      ) : null}
      {page.value === 'more' && pot ? (
        <MorePage pot={pot} act={act} open={(next) => open(next)} hasDip={dip !== undefined} />
      ) : null}
      {page.value === 'why' && pot ? <Why pot={pot} /> : null}
      {page.value === 'shelf' && pot && armed ? (
        <ShelfPage pot={pot} bucketId={armed.bucketId} act={act} />
      ) : null}
      {page.value === 'weigh' && pot ? <WeighPage pot={pot} act={act} /> : null}
    </section>
  )
}

/** The pot a card is about: the one it names, else the next that is due. */
function subjectOf(table: Table, card: Card): PotState | undefined {
  const potId =
    'potId' in card
      ? card.potId
      : card.kind === 'armed'
        ? card.armed.potId
        : card.kind === 'ready'
          ? card.potIds[0]
          : card.kind === 'wait'
            ? card.next?.potId
            : undefined
  return (potId === undefined ? undefined : table.pots[potId]) ?? potsOnTable(table)[0]
}

function lastHit(table: Table, hits: Readonly<Record<string, string>>): string {
  const last = table.hits.at(-1)
  const number = last?.potId === undefined ? undefined : table.pots[last.potId]?.facts.number
  return last ? [number, hits[last.kind]].filter((part) => part !== undefined).join(' ') : ''
}
