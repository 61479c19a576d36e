import { type Gap, levelView, TOUCH_MM } from '../../table/load/level-view.ts'
import { levelsOf } from '../../table/load/loads.ts'
import { type LevelState, type LoadState, levelKey } from '../../table/model/load-state.ts'
import { thingName, useLoad } from './load-app.ts'

interface MisfitsProps {
  readonly load: LoadState
  /** Two neighbours in words. */
  readonly gap: (gap: Gap) => string
}

/** What stands badly on the shelves of a load that is loaded, the gravest of each: its kiln may be another than it was. Two in each other would weld. */
export function Misfits({ load, gap }: MisfitsProps) {
  const { table, words, formats } = useLoad()
  const w = words.value.desk.shelf
  const told = (level: LevelState): readonly string[] => {
    const view = levelView(table.value, load, level)
    const [tight, against] = [view?.tight[0], view?.against[0]]
    return [
      ...(tight && tight.mm < TOUCH_MM ? [gap(tight)] : []),
      ...(against
        ? [
            w.against[against.kind](
              thingName(words.value, table.value, against.one.key),
              formats.value.mm(against.mm),
            ),
          ]
        : []),
    ]
  }
  return (
    <>
      {levelsOf(load).flatMap((level) =>
        told(level).map((text) => (
          <p key={`${levelKey(level)} ${text}`} class="alarm figures">
            {w.level(level.number)}: {text}
          </p>
        )),
      )}
    </>
  )
}
