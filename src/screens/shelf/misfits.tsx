import { levelView } from '../../table/load/level-view.ts'
import { levelsOf } from '../../table/load/loads.ts'
import { type LoadState, levelKey } from '../../table/model/load-state.ts'
import { thingName, useLoad } from './load-app.ts'

/** What stands badly on the shelves of a load that is loaded, the gravest of each: its kiln may be another than it was. */
export function Misfits({ load }: { readonly load: LoadState }) {
  const { table, words, formats } = useLoad()
  const w = words.value.desk.shelf
  return (
    <>
      {levelsOf(load).map((level) => {
        const [against] = levelView(table.value, load, level)?.against ?? []
        if (!against) return null
        const name = thingName(words.value, table.value, against.one.key)
        return (
          <p key={levelKey(level)} class="alarm figures">
            {w.level(level.number)}: {w.against[against.kind](name, formats.value.mm(against.mm))}
          </p>
        )
      })}
    </>
  )
}
