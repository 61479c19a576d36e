import type { Card } from '../../table/card/card.ts'
import type { Action } from '../../table/model/action.ts'
import { takesBack } from '../../table/model/potters.ts'
import type { DipState, PotState } from '../../table/model/state.ts'
import { PressButton } from '../../ui/press.tsx'
import { useApp } from '../app.ts'
import { useLateWords } from '../late-words.ts'
import { hitText, nameOf } from '../text/pot-text.ts'
import { useEndWords } from './end/end-words.ts'
import { offersOf } from './offers.ts'
import type { Acting, Page } from './other-pages.tsx'
import { useUnsettled } from './unsettled.ts'

interface MenuProps {
  readonly pot: PotState | undefined
  /** The dip of the pot that is still in the hands. */
  readonly inHand: DipState | undefined
  /** The pot still in the hands where the card is about another, and its dip. */
  readonly owed: { readonly pot: PotState; readonly dip: DipState } | undefined
  /** The last dip at the table, put down a moment ago. */
  readonly recent: { readonly pot: PotState; readonly dip: DipState } | undefined
  readonly act: Acting
  readonly open: (page: Page, dip?: DipState) => () => void
}

/** With a pot just dipped in the hands it mends that dip; otherwise it changes what comes next. */
export function Menu({ pot, inHand, owed, recent, act, open }: MenuProps) {
  const { table, words, now, go, card } = useApp()
  const late = useLateWords()
  const w = late.other
  const unsettled = useUnsettled()
  const number = nameOf(words.value, pot)
  const { settings } = table.value
  const armed = card.value.kind === 'armed' && !inHand ? card.value.armed : undefined
  const offers = armed && pot ? offersOf(table.value, late, pot, armed, act, open) : []
  const tile = (text: string, on: (atMs: number) => void, under?: string | number) => (
    <PressButton class="other-tile" onPress={on}>
      {text}
      {under === undefined ? null : <small class="figures">{under}</small>}
    </PressButton>
  )
  const leave = leavingOut(card.value)
  const last = takesBack(table.value, now.value)
  const { leave: leaveText } = useEndWords()
  const mend = owed ?? (offers.length === 0 ? recent : undefined)
  // As many tiles as knuckles can tell apart: what is owed comes first, and offers before another choice.
  const about = (of: PotState, dip: DipState) =>
    w.about(nameOf(words.value, of), table.value.buckets[dip.bucketId]?.facts.name ?? '')
  const choices = owed === undefined || offers.length === 0
  return (
    <div class="other-grid">
      {offers.slice(0, 2).map(({ text, on }, i) => (
        <PressButton
          key={text}
          class={
            offers.length === 1 && i === 0 ? 'other-tile other-offer other-wide' : 'other-tile other-offer'
          }
          onPress={on}
        >
          {text}
        </PressButton>
      ))}
      {last ? tile(w.takeBack, act({ do: 'take-back' }), hitText(words.value, table.value, last)) : null}
      {owed
        ? null
        : tile(settings.student ? w.screens : words.value.bench.board, () => go({ at: 'board' }), unsettled)}
      {choices ? tile(inHand ? w.wasPot : w.anotherPot, open('pot')) : null}
      {leave ? tile(leaveText, act(leave)) : null}
      {choices && !leave && pot ? tile(inHand ? w.wasBucket : w.anotherBucket, open('bucket')) : null}
      {inHand ? (
        <>
          {tile(w.held, open('held', inHand), pot && about(pot, inHand))}
          {tile(w.earlier, open('earlier', inHand), pot && about(pot, inHand))}
          {tile(w.more, open('more'), number)}
        </>
      ) : (
        <>
          {owed || !pot ? null : tile(w.logDip, open('logged'), number)}
          {tile(w.more, open('more'), number)}
          {owed ? tile(w.wasPot, open('pot', owed.dip), about(owed.pot, owed.dip)) : null}
          {owed ? tile(w.wasBucket, open('bucket', owed.dip), about(owed.pot, owed.dip)) : null}
          {owed && settings.potters === 2
            ? tile(
                w.otherHands,
                act({ do: 'was-other-hands', dipId: owed.dip.dipId }),
                about(owed.pot, owed.dip),
              )
            : null}
          {mend ? tile(w.held, open('held', mend.dip), about(mend.pot, mend.dip)) : null}
          {mend ? tile(w.earlier, open('earlier', mend.dip), about(mend.pot, mend.dip)) : null}
        </>
      )}
      {inHand && pot ? (
        <PressButton
          class="other-tile other-gone"
          kind="hold"
          onPress={act({ do: 'gone', potId: pot.facts.potId })}
        >
          {w.gone(nameOf(words.value, pot))}
        </PressButton>
      ) : null}
    </div>
  )
}

/** What leaves out the step of the end that shows. */
function leavingOut(card: Card): Action | undefined {
  switch (card.kind) {
    case 'lid':
      return { do: 'lid-on', bucketId: card.bucketId, left: true }
    case 'tools':
      return { do: 'tools-washed', left: true }
    case 'floor':
      return { do: 'floor-mopped', left: true }
    default:
      return undefined
  }
}
