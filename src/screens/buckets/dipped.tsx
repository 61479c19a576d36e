import type { DippedTile } from '../../../shared/nouns.ts'
import { tileSays, withTile } from '../../table/forecast/dipped-tile.ts'
import { More } from '../../ui/more.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, useEntry } from '../desk/entry-field.tsx'
import { amount } from '../text/amounts.ts'

interface DippedProps {
  readonly tiles: readonly DippedTile[]
  readonly take: (tiles: readonly DippedTile[]) => void
  /** The bucket's density as it was read last; undefined where it never was. */
  readonly readGramsPerMl: number | undefined
  readonly targetGramsPerMl: number | undefined
  readonly toleranceGramsPerMl: number | undefined
}

/** A tile dipped before a sitting, against tiles dipped when the density was known: whether a cup should be weighed. */
export function DippedTiles({
  tiles,
  take,
  readGramsPerMl,
  targetGramsPerMl,
  toleranceGramsPerMl,
}: DippedProps) {
  const { table, words } = useDesk()
  const w = words.value.desk.measured.dipped
  const gain = useEntry('tileG', undefined, true)
  const says =
    gain.value === undefined || targetGramsPerMl === undefined || toleranceGramsPerMl === undefined
      ? undefined
      : tileSays({ targetGramsPerMl, toleranceGramsPerMl }, tiles, gain.value)
  const density = (gramsPerMl: number) => amount('gramsPerMl', gramsPerMl, table.value.settings.units)
  return (
    <div class="field-wide pick-up">
      <More label={w.title}>
        <p class="help">{w.help}</p>
        <div class="fields">
          <EntryField entry={gain} label={w.gain} />
        </div>
        {says ? <p class={says === 'nothing' ? undefined : 'alarm'}>{w.says[says]}</p> : null}
        <div class="taken">
          <strong class="figures">{w.kept(tiles.length)}</strong>
          {gain.value !== undefined && readGramsPerMl !== undefined ? (
            <button
              type="button"
              class="key"
              onClick={() => take(withTile(tiles, { gainG: gain.value ?? 0, gramsPerMl: readGramsPerMl }))}
            >
              {w.keep(density(readGramsPerMl))}
            </button>
          ) : null}
          {tiles.length > 0 ? (
            <button type="button" class="key" onClick={() => take([])}>
              {w.forget}
            </button>
          ) : null}
        </div>
      </More>
    </div>
  )
}
