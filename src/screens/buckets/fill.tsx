import { boardFill, brimLitres } from '../../table/advice/fill.ts'
import type { Units } from '../../table/entry/measure.ts'
import type { BucketState, FillLine } from '../../table/model/state.ts'
import { HoldKey } from '../../ui/hold.tsx'
import { More } from '../../ui/more.tsx'
import type { Formats } from '../../words/format.ts'
import { refusalText } from '../app.ts'
import { useDays } from '../days.ts'
import { useBucketWords } from '../desk/bucket-words.ts'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, refusalBeside, useEntry } from '../desk/entry-field.tsx'
import { amount } from '../text/amounts.ts'

const LINES_SHOWN = 6

/** What is in the bucket: how much was read, and what was done with it before. */
export function Fill({ bucket }: { readonly bucket: BucketState }) {
  const { table, words, formats, card, act, go } = useDesk()
  const w = useBucketWords().fill
  const f = formats.value
  const { units } = table.value.settings
  const { facts, log, sievedAt, stirredAt } = bucket
  const { bucketId } = facts
  const fill = boardFill(table.value, bucket)
  const litres = useEntry('litres', Math.round(fill.litres * 100) / 100)
  const most = Math.floor(brimLitres(facts) * 10) / 10
  const { moment: at } = useDays()
  const tell = (what: 'read-level' | 'refill') => {
    if (!litres.check() || litres.value === undefined) return
    const refusal = act({ do: what, bucketId, litres: litres.value })
    if (refusal && !refusalBeside(words.value, refusal, [litres]))
      litres.refuse(refusalText(words.value, refusal))
    // The bench had asked for it before the lid goes on.
    const asked = card.peek()
    if (!refusal && what === 'read-level' && asked.kind === 'lid' && asked.bucketId === bucketId)
      go({ at: 'bench' })
  }
  return (
    <section class="fill">
      <h2>{w.title}</h2>
      <EntryField entry={litres} label={w.litres} help={w.most(amount('litres', most, units))} />
      <div class="pair">
        <button type="button" class="key" onClick={() => tell('read-level')}>
          {w.read}
        </button>
        <button type="button" class="key" onClick={() => act({ do: 'sieved', bucketId })}>
          {w.sieve}
        </button>
      </div>
      <More label={w.before} buys={w.beforeBuys}>
        <ul class="fill-log figures">
          {log
            .slice(-LINES_SHOWN)
            .reverse()
            .map((line) => (
              <li key={`${line.at}${line.what}`}>
                <span>{at(line.at)}</span>
                <span>{w.log[line.what]}</span>
                <span>{line.what === 'stirred' ? w.times(line.value ?? 1) : lineValue(line, f, units)}</span>
              </li>
            ))}
        </ul>
        <p class="help figures">
          {w.last(
            stirredAt === undefined ? undefined : at(stirredAt),
            sievedAt === undefined ? undefined : at(sievedAt),
          )}
        </p>
        <HoldKey label={w.anew} hint={words.value.desk.holdHint} onHeld={() => tell('refill')} />
      </More>
    </section>
  )
}

function lineValue({ what, value }: FillLine, formats: Formats, units: Units): string | undefined {
  if (value === undefined) return undefined
  return what === 'density' ? formats.density(value) : amount('litres', value, units)
}
