import { HIT_TOLD_MS } from '../../table/card/last-hit.ts'
import { lastHit } from '../../table/model/potters.ts'
import { BackStrip } from '../../ui/bar.tsx'
import { nameOf } from '../text/pot-text.ts'
import { useDesk } from './desk-app.ts'

/** For ten seconds after a hit it is taken back here, or put back. */
export function BackLine() {
  const { table, now, words, act } = useDesk()
  const w = words.value
  const back = table.value.takenBack
  const last = lastHit(table.value)
  const named = ({ kind = '', potId }: { readonly kind?: string; readonly potId?: string | undefined }) => {
    const what = w.desk.shelf.hits[kind] ?? w.hits[kind] ?? ''
    const pot = what === '' ? undefined : table.value.pots[potId ?? '']
    return pot ? `${nameOf(w, pot)} ${what}` : what
  }
  if (back && now.value - back.at < HIT_TOLD_MS)
    return (
      <div class="kiln-back">
        <BackStrip
          to="put-back"
          label={w.bench.putBack(named(back))}
          onPress={() => void act({ do: 'put-back' })}
        />
      </div>
    )
  if (!last || now.value - last.at >= HIT_TOLD_MS || named(last) === '') return null
  return (
    <div class="kiln-back">
      <BackStrip
        to="take-back"
        label={w.bench.takeBack(named(last))}
        onPress={() => void act({ do: 'take-back' })}
      />
    </div>
  )
}
