import { flowOf, runAt, TELLING_MM } from '../../table/firing/glaze-flow.ts'
import { tilesOf } from '../../table/firing/tiles.ts'
import { useDesk } from '../desk/desk-app.ts'

/** What is known of a glaze's flow, and the way to its tiles. */
export function TileLine({ bucketId }: { readonly bucketId: string }) {
  const { table, words, formats, go } = useDesk()
  const f = formats.value
  const w = words.value.desk.melt.tile
  const dose = flowOf(table.value, bucketId, null)
  const tiles = tilesOf(table.value, bucketId, undefined).length
  return (
    <button type="button" class="row" onClick={() => go({ at: 'tile', bucketId })}>
      <span class="row-text">
        <strong>{w.title}</strong>
        <span class="figures">
          {dose
            ? w.line(f.coat(TELLING_MM), f.mm(Math.max(1, runAt(dose.likelyPerMm, TELLING_MM))), tiles)
            : w.none}
        </span>
      </span>
    </button>
  )
}
