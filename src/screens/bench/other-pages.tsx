import type { CardKind } from '../../table/card/card.ts'
import type { Action } from '../../table/model/action.ts'
import { planOf } from '../../table/model/plan.ts'
import { potterOf } from '../../table/model/potters.ts'
import type { DipState, PotState } from '../../table/model/state.ts'
import { panWarmAt } from '../../table/steps/pan-warm.ts'
import { PressButton } from '../../ui/press.tsx'
import { Swatch } from '../../ui/swatch.tsx'
import { useApp } from '../app.ts'
import { useLateWords } from '../late-words.ts'
import { PotMarkOf } from '../parts/pot-mark-of.tsx'
import { nameOf, placeOf } from '../text/pot-text.ts'
import { CoatCounts } from './coat-keys.tsx'
import { Caution } from './with-pot.tsx'

export type Page =
  | 'menu'
  | 'pot'
  | 'bucket'
  | 'logged'
  | 'held'
  | 'earlier'
  | 'more'
  | 'why'
  | 'weigh'
  | 'shelf'
  | 'warnings'
  | 'stray'

export type Acting = (action: Action) => (atMs: number) => void

export function HeldPage({
  dipId,
  holdS,
  act,
}: {
  readonly dipId: string
  readonly holdS: number
  readonly act: Acting
}) {
  const w = useLateWords().other
  const shorter = [1, 2, 3].filter((s) => holdS - s > 0)
  return (
    <div class="other-grid">
      {[1, 2, 3, 5].map((byS) => (
        <PressButton key={byS} class="other-tile figures" onPress={act({ do: 'held-longer', dipId, byS })}>
          {w.moreS(byS)}
          <small>{w.makes(holdS + byS)}</small>
        </PressButton>
      ))}
      {shorter.slice(0, 2).map((byS) => (
        <PressButton
          key={-byS}
          class="other-tile figures"
          onPress={act({ do: 'held-longer', dipId, byS: -byS })}
        >
          {w.lessS(byS)}
          <small>{w.makes(holdS - byS)}</small>
        </PressButton>
      ))}
    </div>
  )
}

const AGO_MIN = [0, 2, 5, 10] as const

/** When OUT was; with two at the phone, whose dip it was as well. */
export function LoggedPage({ potId, act }: { readonly potId: string; readonly act: Acting }) {
  const { table, words } = useApp()
  const w = useLateWords().other
  const mine = potterOf(table.value)
  const hands = table.value.settings.potters === 2 ? ([mine, mine === 0 ? 1 : 0] as const) : [undefined]
  return (
    <div class="other-grid">
      {AGO_MIN.flatMap((agoMin) =>
        hands.map((by) => (
          <PressButton
            key={`${agoMin} ${by}`}
            class="other-tile figures"
            onPress={act({ do: 'logged', potId, agoMin, ...(by === undefined ? {} : { by }) })}
          >
            {agoMin === 0 ? w.justNow : w.ago(agoMin)}
            {by === undefined ? null : <small>{words.value.bench.potter(by + 1)}</small>}
          </PressButton>
        )),
      )}
    </div>
  )
}

/** Where the help begins for a card. */
const STAGE: Partial<Readonly<Record<CardKind, string>>> = {
  wax: 'wax',
  wipe: 'wax',
  'wax-pan': 'wax',
  wait: 'wait',
  ready: 'wait',
  lid: 'end',
  tools: 'end',
  floor: 'end',
  closed: 'end',
}

/** What is done with one pot, the pan and the help; of a card that is about no pot these two alone. */
export function MorePage({
  pot,
  act,
  open,
  last,
  inHand,
}: {
  readonly pot: PotState | undefined
  readonly act: Acting
  readonly open: (page: Page, dip?: DipState) => () => void
  readonly last: DipState | undefined
  readonly inHand: boolean
}) {
  const { table, words, formats, now, card, go } = useApp()
  const { pan, settings } = table.value
  const isMarked = last !== undefined && (table.value.buckets[last.bucketId]?.facts.cautions ?? []).length > 0
  const w = useLateWords().other
  const potId = pot?.facts.potId ?? ''
  const warmAt = panWarmAt(table.value)
  const warm =
    warmAt !== undefined && now.value < warmAt ? formats.value.clock(warmAt + table.value.skewMs) : undefined
  const tile = (text: string, on: (atMs: number) => void, does?: string) => (
    <PressButton class={does === w.turnOff ? 'other-tile other-pan-on' : 'other-tile'} onPress={on}>
      {text}
      {does === undefined ? null : <strong>{does}</strong>}
    </PressButton>
  )
  return (
    <div class="other-more">
      {pot ? (
        <>
          <h2>{w.coatsOn(nameOf(words.value, pot))}</h2>
          <div class="other-chips">
            <CoatCounts
              coats={planOf(table.value, pot).length}
              look="other-chip"
              on={(n) => act({ do: 'count-coats', potId, coats: n })}
            />
            <PressButton
              class="other-chip"
              onPress={act({ do: 'count-coats', potId, coats: null })}
              label={w.notSure}
            >
              ?
            </PressButton>
          </div>
        </>
      ) : null}
      <div class="other-three">
        {pot ? tile(w.why, open('why')) : null}
        {pot ? tile(w.weigh, open('weigh')) : null}
        {last ? tile(w.held, open('held', last)) : null}
        {last ? (
          <PressButton class="other-tile other-gone" kind="hold" onPress={act({ do: 'wash-off', potId })}>
            {words.value.bench.washOff}
          </PressButton>
        ) : null}
        {last ? tile(w.dab, act({ do: 'touched-up', potId }), isMarked ? w.dabGloves : undefined) : null}
        {inHand && last && settings.potters === 2
          ? tile(
              w.otherHands,
              act({ do: 'was-other-hands', dipId: last.dipId }),
              w.about(nameOf(words.value, pot), table.value.buckets[last.bucketId]?.facts.name ?? ''),
            )
          : null}
        {settings.wax === 'hot'
          ? tile(
              pan ? w.panIsOn(formats.value.span(now.value - pan.onAt), warm) : w.panIsOff,
              act({ do: 'wax-pan', is: pan ? 'off' : 'on' }),
              pan ? w.turnOff : w.turnOn,
            )
          : null}
        {tile(w.help, () => go({ at: 'help', stage: STAGE[card.value.kind] ?? 'dip' }))}
      </div>
      {settings.wax === 'hot' ? <Caution>{w.panCare}</Caution> : null}
      {inHand || !pot ? null : (
        <PressButton class="other-tile other-gone" kind="hold" onPress={act({ do: 'gone', potId })}>
          {w.gone(nameOf(words.value, pot))}
        </PressButton>
      )}
    </div>
  )
}

export function PotTiles({
  pots,
  onPick,
}: {
  readonly pots: readonly PotState[]
  readonly onPick: (potId: string) => (atMs: number) => void
}) {
  const { words } = useApp()
  return (
    <div class="other-pots">
      {pots.map((pot) => (
        <PressButton key={pot.facts.potId} class="other-pot figures" onPress={onPick(pot.facts.potId)}>
          <PotMarkOf pot={pot} width={36} height={60} />
          <span>
            <small>{placeOf(pot)}</small>
            {nameOf(words.value, pot)}
          </span>
        </PressButton>
      ))}
    </div>
  )
}

export function BucketTiles({ onPick }: { readonly onPick: (bucketId: string) => (atMs: number) => void }) {
  const { table } = useApp()
  return (
    <div class="other-grid">
      {Object.values(table.value.buckets).map(({ facts }) => (
        <PressButton key={facts.bucketId} class="other-tile" onPress={onPick(facts.bucketId)}>
          <Swatch pattern={facts.pattern} letter={facts.letter} size={64} />
          {facts.name}
        </PressButton>
      ))}
    </div>
  )
}
