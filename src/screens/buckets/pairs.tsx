import { useState } from 'preact/hooks'
import { type Pair, pairsOver } from '../../table/fired/pairs.ts'
import { LIMITS } from '../../table/model/limits.ts'
import type { BucketState } from '../../table/model/state.ts'
import { More } from '../../ui/more.tsx'
import { Stepper } from '../../ui/stepper.tsx'
import { Swatch } from '../../ui/swatch.tsx'
import { useBucketWords } from '../desk/bucket-words.ts'
import { useDesk } from '../desk/desk-app.ts'

/** What the kiln has shown of each other glaze over this one, a line each; a line is opened to be changed. */
export function Pairs({ bucket }: { readonly bucket: BucketState }) {
  const { table, act } = useDesk()
  const w = useBucketWords().pairs
  const [open, setOpen] = useState<string>()
  const { bucketId, name } = bucket.facts
  const pairs = pairsOver(table.value, bucketId)
  const set = (pair: Pair, by: { readonly proved?: number; readonly wrong?: number }) => {
    const { overId, underId, byHand } = pair
    act({
      do: 'set-pair',
      pair: {
        overId,
        underId,
        proved: byHand.proved + (by.proved ?? 0),
        wrong: byHand.wrong + (by.wrong ?? 0),
      },
    })
  }
  const keys = (count: number, say: string, by: (step: number) => void) => (
    <Stepper
      label={say}
      text={`${count}`}
      plain
      less={{ label: `${say} −1`, ...(count > 0 ? { act: () => by(-1) } : {}) }}
      more={{ label: `${say} +1`, ...(count < LIMITS.firings.most ? { act: () => by(1) } : {}) }}
    />
  )
  return pairs.length === 0 ? null : (
    <More label={w.title(name)}>
      <ul class="pairs">
        {pairs.map((pair) => {
          const over = table.value.buckets[pair.overId]?.facts
          const opened = open === pair.overId
          return over ? (
            <li key={pair.overId}>
              <button
                type="button"
                class="pair-line"
                aria-expanded={opened}
                onClick={() => setOpen(opened ? undefined : pair.overId)}
              >
                <Swatch pattern={over.pattern} letter={over.letter} size={36} />
                <strong>{over.name}</strong>
                <span class={pair.is === 'went-wrong' ? 'alarm figures' : 'figures'}>
                  {w[pair.is](pair.is === 'went-wrong' ? pair.wrong : pair.proved)}
                </span>
              </button>
              {opened ? (
                <>
                  {keys(pair.byHand.proved, w.well, (proved) => set(pair, { proved }))}
                  {keys(pair.byHand.wrong, w.badly, (wrong) => set(pair, { wrong }))}
                </>
              ) : null}
            </li>
          ) : null
        })}
      </ul>
      <p class="help">{w.help}</p>
    </More>
  )
}
