import type { BisqueWater, PotFacts } from '../../../shared/nouns.ts'
import { absorptionAt } from '../../table/entry/bisque.ts'
import { BISQUE_CONES, drinksLittle } from '../../table/entry/offer.ts'
import { Choice } from '../../ui/choice.tsx'
import { Stepper } from '../../ui/stepper.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, type NumberEntry } from '../desk/entry-field.tsx'
import { useRoomWords } from '../desk/room-words.ts'
import { optionsOf } from '../desk/settings.ts'
import { amount } from '../text/amounts.ts'

/** How a pot's bisque differs from the board's; left out, it does not. */
export type OwnBisque = Pick<PotFacts, 'bisqueCone' | 'bisqueWater'>

interface BisqueProps {
  readonly own: OwnBisque
  readonly set: (own: OwnBisque) => void
  readonly absorption: NumberEntry
}

/** The bisque of one pot: as the board's, or an exception. */
export function Bisque({ own, set, absorption }: BisqueProps) {
  const { table, words } = useDesk()
  const { board, settings } = table.value
  const w = words.value.desk
  const room = useRoomWords()
  const cone = own.bisqueCone ?? board.bisqueCone
  const index = BISQUE_CONES.indexOf(cone)
  const water = own.bisqueWater ?? board.bisqueWater ?? 'dry'
  const { bisqueCone: _cone, ...noCone } = own
  const { bisqueWater: _water, ...noWater } = own
  const toCone = (next: string | undefined) =>
    next === undefined
      ? undefined
      : () => set(next === board.bisqueCone ? noCone : { ...own, bisqueCone: next })
  const toWater = (next: BisqueWater) =>
    set(next === (board.bisqueWater ?? 'dry') ? noWater : { ...own, bisqueWater: next })
  const byCone = absorptionAt(board, cone) ?? board.absorption
  return (
    <>
      <Choice
        label={room.bisque}
        help={w.pot.bisqueHelp}
        options={optionsOf(room.bisques)}
        value={water}
        onChoose={toWater}
      />
      <Stepper
        label={own.bisqueCone === undefined ? w.pot.coneAsBoard : room.cone}
        text={cone}
        less={{ label: w.pot.coneLess, act: toCone(BISQUE_CONES[index - 1]) }}
        more={{ label: w.pot.coneMore, act: toCone(BISQUE_CONES[index + 1]) }}
      />
      {drinksLittle(absorption.value ?? byCone) ? <p class="help">{room.drinksLittle(cone)}</p> : null}
      <EntryField
        entry={absorption}
        label={w.pot.absorption}
        help={w.pot.absorptionHelp(amount('absorption', byCone, settings.units))}
      />
    </>
  )
}
