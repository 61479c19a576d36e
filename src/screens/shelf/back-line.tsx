import { HIT_TOLD_MS } from '../../table/card/last-hit.ts'
import { lastHit } from '../../table/model/potters.ts'
import { BackStrip } from '../../ui/bar.tsx'
import { useLoad } from './load-app.ts'

/** For ten seconds after a hit it is taken back here, or put back. */
export function BackLine() {
  const { table, now, words, act } = useLoad()
  const w = words.value
  const back = table.value.takenBack
  const last = lastHit(table.value)
  const hits = w.desk.shelf.hits
  const named = (kind: string | undefined) => hits[kind ?? ''] ?? w.hits[kind ?? ''] ?? ''
  if (back && now.value - back.at < HIT_TOLD_MS)
    return (
      <div class="kiln-back">
        <BackStrip
          to="put-back"
          label={w.bench.putBack(named(back.kind))}
          onPress={() => void act({ do: 'put-back' })}
        />
      </div>
    )
  if (!last || now.value - last.at >= HIT_TOLD_MS || named(last.kind) === '') return null
  return (
    <div class="kiln-back">
      <BackStrip
        to="take-back"
        label={w.bench.takeBack(named(last.kind))}
        onPress={() => void act({ do: 'take-back' })}
      />
    </div>
  )
}
