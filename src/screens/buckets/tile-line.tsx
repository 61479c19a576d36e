import { runAt, TELLING_MM, toldFlowOf } from '../../table/firing/glaze-flow.ts'
import { tilesOf } from '../../table/firing/tiles.ts'
import { useDesk } from '../desk/desk-app.ts'

/** What its tiles say of a glaze's flow, as their page says it, and the way to them. */
export function TileLine({ bucketId }: { readonly bucketId: string }) {
  const { table, words, formats, go } = useDesk()
  const f = formats.value
  const w = words.value.desk.melt.tile
  const dose = toldFlowOf(table.value, bucketId, null)
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
