import { HIT_TOLD_MS } from '../../table/card/last-hit.ts'
import { lastHit } from '../../table/model/potters.ts'
import type { HitLine } from '../../table/model/state.ts'
import { BackStrip } from '../../ui/bar.tsx'
import { hitName, nameOf } from '../text/pot-text.ts'
import { useDesk } from './desk-app.ts'

interface Back {
  readonly to: 'put-back' | 'take-back'
  readonly label: string
  readonly press: () => void
}

/** Answers about a glaze, of which a page asks several alike. */
const OF_GLAZE: ReadonlySet<HitLine['kind'] | undefined> = new Set(['lesson-taken', 'limit-taken'])

/** What takes back the last hit, or puts it back: for ten seconds after it. */
export function useBack(): Back | undefined {
  const { table, now, words, act } = useDesk()
  const w = words.value
  const back = table.value.takenBack
  const last = lastHit(table.value)
  const named = (hit: Partial<HitLine>) => {
    const what = w.desk.shelf.hits[hit.kind ?? ''] ?? hitName(w, hit) ?? ''
    if (OF_GLAZE.has(hit.kind)) return `${what} ${table.value.buckets[hit.bucketId ?? '']?.facts.name ?? ''}`
    const pot = what === '' ? undefined : table.value.pots[hit.potId ?? '']
    return pot ? `${nameOf(w, pot)} ${what}` : what
  }
  if (back && now.value - back.at < HIT_TOLD_MS)
    return {
      to: 'put-back',
      label: w.bench.putBack(named(back)),
      press: () => void act({ do: 'put-back' }),
    }
  if (!last || now.value - last.at >= HIT_TOLD_MS || named(last) === '') return undefined
  return {
    to: 'take-back',
    label: w.bench.takeBack(named(last)),
    press: () => void act({ do: 'take-back' }),
  }
}

/** The same above a bar, hit as the bar is. */
export function BackLine() {
  const back = useBack()
  return back ? (
    <div class="kiln-back">
      <BackStrip to={back.to} label={back.label} onPress={back.press} />
    </div>
  ) : null
}
