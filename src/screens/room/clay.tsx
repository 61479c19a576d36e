import { BISQUE_CONES, drinksLittle } from '../../table/entry/offer.ts'
import { Choice } from '../../ui/choice.tsx'
import { Stepper } from '../../ui/stepper.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { SavedNumber } from '../desk/entry-field.tsx'
import { useRoomWords } from '../desk/room-words.ts'
import { optionsOf } from '../desk/settings.ts'
import { WorthLine } from '../desk/worth-line.tsx'
import { PotSoak } from './pot-soak.tsx'
import { WaterDips } from './water-dips.tsx'

/** What the pots of a board share: wall, foot line, bisque. */
export function Clay() {
  const { table, words, act } = useDesk()
  const w = useRoomWords()
  const { board } = table.value
  const cone = BISQUE_CONES.indexOf(board.bisqueCone)
  const toCone = (index: number) => {
    const bisqueCone = BISQUE_CONES[index]
    return bisqueCone === undefined || cone < 0
      ? undefined
      : () => void act({ do: 'set-board', board: { ...board, bisqueCone } })
  }
  return (
    <section>
      <p class="help">{w.clayHelp}</p>
      <div class="fields">
        <SavedNumber
          field="wallMm"
          label={w.wall}
          stored={board.wallMm}
          save={(wallMm) => act({ do: 'set-board', board: { ...board, wallMm } })}
        />
        <SavedNumber
          field="footLineMm"
          label={w.footLine}
          stored={board.footLineMm}
          save={(footLineMm) => act({ do: 'set-board', board: { ...board, footLineMm } })}
        />
        <SavedNumber
          field="absorption"
          label={w.absorption}
          help={w.absorptionHelp}
          stored={board.absorption}
          save={(absorption) => act({ do: 'set-board', board: { ...board, absorption } })}
        />
      </div>
      <Stepper
        label={w.cone}
        text={board.bisqueCone}
        less={{ label: words.value.desk.pot.coneLess, act: toCone(cone - 1) }}
        more={{ label: words.value.desk.pot.coneMore, act: toCone(cone + 1) }}
      />
      {drinksLittle(board.absorption) ? <p class="help">{w.drinksLittle(board.bisqueCone)}</p> : null}
      <Choice
        label={w.bisque}
        help={w.bisqueHelp}
        options={optionsOf(w.bisques)}
        value={board.bisqueWater ?? 'dry'}
        onChoose={(bisqueWater) => act({ do: 'set-board', board: { ...board, bisqueWater } })}
      />
      <WorthLine />
      <PotSoak />
      <WaterDips />
    </section>
  )
}
