import type { LoadState } from '../../table/model/load-state.ts'
import { levelKey } from '../../table/model/load-state.ts'
import { thingName, useLoad } from './load-app.ts'

/** What two phones have in two places: both are kept until somebody says which it is. */
export function Disputed({ load }: { readonly load: LoadState }) {
  const { table, words, act } = useLoad()
  const w = words.value.desk.shelf
  const found = Object.entries(load.things).find(([, { orHere }]) => orHere !== undefined)
  if (!found) return null
  const [key, thing] = found
  const there = thing.orHere && load.levels[levelKey(thing.orHere)]
  const here = thing.place ?? w.level(load.levels[levelKey(thing)]?.number ?? thing.storey)
  const other = w.level(there?.number ?? thing.orHere?.storey ?? 0)
  const settle = (isOther: boolean) => act({ do: 'settle-place', loadId: load.loadId, key, other: isOther })
  return (
    <div role="alert">
      <p class="alarm">{w.either(thingName(words.value, table.value, key), here, other)}</p>
      <div class="pair">
        <button type="button" class="key" onClick={() => settle(false)}>
          {here}
        </button>
        <button type="button" class="key" onClick={() => settle(true)}>
          {other}
        </button>
      </div>
    </div>
  )
}
