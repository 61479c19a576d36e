import { useSignal } from '@preact/signals'
import type { Card } from '../../table/card/card.ts'
import { potToMend } from '../../table/card/to-mend.ts'
import { decideSetup } from '../../table/decide/decide-setup.ts'
import type { Action } from '../../table/model/action.ts'
import { lastDip, potsOnTable, strayed } from '../../table/model/plan.ts'
import type { DipState, PotState, Table } from '../../table/model/state.ts'
import { potInHand } from '../../table/steps/pot-in-hand.ts'
import { nextBucket } from '../../table/steps/steps.ts'
import { stepsOf } from '../../table/steps/work.ts'
import { PressButton } from '../../ui/press.tsx'
import { refusalText, useApp } from '../app.ts'
import { Why } from '../parts/why.tsx'
import { nameOf } from '../text/pot-text.ts'
import { Menu } from './menu.tsx'
import { OffShelfPage } from './off-shelf.tsx'
import { BucketTiles, HeldPage, LoggedPage, MorePage, type Page, PotTiles } from './other-pages.tsx'
import { StrayPage } from './stray.tsx'
import { WarningsPage } from './warnings-page.tsx'
import { WeighPage } from './weigh.tsx'
import './other.css'

export { Sooner } from './end/sooner.tsx'

import { useLateWords } from '../late-words.ts'

export { Ways } from './schedule-options.tsx'

/** How long it is said what a mended dip came to, ms. */
const SLIP_MS = 10_000

interface OtherProps {
  readonly close: () => void
  /** The page that it opens at, where the card has a key for one. */
  readonly at?: Page
}

/** Other: the card follows the hand, and slips are put right, in at most three hits. */
export function Other({ close, at }: OtherProps) {
  const app = useApp()
  const page = useSignal<Page>(at ?? firstPage(app.card.peek()))
  const mending = useSignal<DipState | undefined>(undefined)
  const said = useSignal<string | undefined>(undefined)
  const { table, words } = app
  const w = useLateWords().other
  const hand = potInHand(table.value, stepsOf(table.value, app.now.value))
  // It speaks of the card that shows; what the pot still in the hands may want mended is named by its number.
  const onCard = potToMend(table.value, app.card.value)
  const own = hand && (onCard === undefined || onCard === hand.pot) ? hand : undefined
  const owed = own ? undefined : hand
  const pot = own?.pot ?? onCard
  const last = pot && lastDip(pot)
  const mend = mending.value ?? own?.dip
  const dip = mend ?? last
  const mended = owed && mend?.dipId === owed.dip.dipId ? owed.pot : pot
  const open = (next: Page, mend?: DipState) => () => {
    page.value = next
    mending.value = mend
  }
  const act = (action: Action) => (atMs: number) => {
    const refusal = app.act(action, atMs, decideSetup)
    const after = mended && table.peek().pots[mended.facts.potId]
    if (refusal) said.value = refusalText(words.value, refusal)
    else if (action.do === 'was-other-bucket' && after && strayed(table.peek(), after)) page.value = 'stray'
    else {
      if (action.do === 'held-longer')
        app.bench.slip.value = { dipId: action.dipId, until: app.now.peek() + SLIP_MS }
      close()
    }
  }

  const armed = app.card.value.kind === 'armed' && !own ? app.card.value.armed : undefined
  const about = aboutText(page.value)

  /** Which pot and which glaze a page is about. */
  function aboutText(at: Page): string | undefined {
    const isMended =
      at === 'held' || at === 'earlier' || ((at === 'pot' || at === 'bucket') && mend !== undefined)
    const of = isMended ? mended : at === 'logged' || at === 'bucket' ? pot : undefined
    if (!of) return undefined
    const bucketId = isMended ? dip?.bucketId : at === 'logged' ? nextBucket(table.value, of) : undefined
    return w.about(nameOf(words.value, of), table.value.buckets[bucketId ?? '']?.facts.name ?? '')
  }

  return (
    <section class="other">
      <header class="other-head">
        <h1>
          {page.value === 'menu' ? words.value.bench.other : w.pages[page.value]}
          {about ? <small class="figures">{about}</small> : null}
        </h1>
        <PressButton
          class="other-close"
          onPress={page.value === 'menu' || page.value === at ? close : open('menu')}
        >
          {w.back}
        </PressButton>
      </header>
      {said.value ? (
        <p class="said" role="alert">
          {said.value}
        </p>
      ) : null}
      {page.value === 'menu' ? (
        <Menu
          pot={pot}
          inHand={own?.dip}
          owed={owed}
          recent={hand ? undefined : recentDip(table.value, app.now.value)}
          act={act}
          open={open}
        />
      ) : null}
      {page.value === 'pot' ? (
        <PotTiles
          pots={potsOnTable(table.value)}
          onPick={(potId) =>
            act(mend ? { do: 'was-other-pot', dipId: mend.dipId, potId } : { do: 'pick', potId })
          }
        />
      ) : null}
      {page.value === 'bucket' && pot ? (
        <BucketTiles
          onPick={(bucketId) =>
            act(
              mend
                ? { do: 'was-other-bucket', dipId: mend.dipId, bucketId }
                : { do: 'pick', potId: pot.facts.potId, bucketId },
            )
          }
        />
      ) : null}
      {page.value === 'logged' && pot ? <LoggedPage potId={pot.facts.potId} act={act} /> : null}
      {page.value === 'held' && dip ? <HeldPage dipId={dip.dipId} holdS={dip.holdS} act={act} /> : null}
      {page.value === 'earlier' && dip ? (
        <div class="other-grid">
          {[1, 2, 5].map((byMin) => (
            <PressButton
              key={byMin}
              class="other-tile figures"
              onPress={act({ do: 'was-earlier', dipId: dip.dipId, byMin })}
            >
              {w.earlierBy(byMin)}
            </PressButton>
          ))}
        </div>
      ) : null}
      {page.value === 'more' ? (
        <MorePage pot={pot} act={act} open={open} last={last} inHand={own !== undefined} />
      ) : null}
      {page.value === 'stray' && mended ? <StrayPage pot={mended} act={act} /> : null}
      {page.value === 'why' && pot ? <Why pot={pot} /> : null}
      {page.value === 'shelf' && pot && armed ? (
        <OffShelfPage pot={pot} bucketId={armed.bucketId} act={act} />
      ) : null}
      {page.value === 'warnings' && pot && armed ? (
        <WarningsPage pot={pot} armed={armed} act={act} open={open} />
      ) : null}
      {page.value === 'weigh' && pot ? <WeighPage pot={pot} act={act} /> : null}
    </section>
  )
}

/** A card that asks for a decision opens where it is made. */
const firstPage = (card: Card): Page =>
  card.kind === 'ask-dose'
    ? 'held'
    : card.kind !== 'stuck'
      ? 'menu'
      : card.why === 'uncounted'
        ? 'more'
        : card.why === 'strayed'
          ? 'stray'
          : 'menu'

/** A dip that was put down is still offered to be mended for so long. Our choice. */
const RECENT_MS = 10 * 60_000

/** The last dip at the table, if it was a moment ago. */
function recentDip(
  table: Table,
  now: number,
): { readonly pot: PotState; readonly dip: DipState } | undefined {
  const dips = potsOnTable(table).flatMap((pot) => {
    const dip = lastDip(pot)
    return dip && dip.outAt <= now && now - dip.outAt < RECENT_MS ? [{ pot, dip }] : []
  })
  return dips.sort((a, b) => b.dip.outAt - a.dip.outAt)[0]
}
