import { useState } from 'preact/hooks'
import { mixTo } from '../../table/entry/mix.ts'
import type { BucketState } from '../../table/model/state.ts'
import { Swatch } from '../../ui/swatch.tsx'
import type { Route } from '../app.ts'
import { useBucketWords } from '../desk/bucket-words.ts'
import { useDesk } from '../desk/desk-app.ts'
import { DeskHead } from '../desk/head.tsx'
import { BucketEditor } from './editor.tsx'
import './buckets.css'

interface BucketsProps {
  readonly bucketId?: string | undefined
  /** Where one was going. */
  readonly onward?: Route | undefined
}

/** All buckets at the table, or the one the route names; `new` is a bucket that is not there yet. */
export function Buckets({ bucketId, onward }: BucketsProps) {
  const { table, go } = useDesk()
  const [added, setAdded] = useState<readonly string[]>([])
  const bucket = bucketId === undefined ? undefined : table.value.buckets[bucketId]
  if (bucketId !== undefined && (bucket || bucketId === 'new'))
    return (
      <BucketEditor
        key={`${bucketId} ${added.length}`}
        bucket={bucket}
        onward={onward}
        added={added.at(-1)}
        another={(name) => setAdded([...added, name])}
      />
    )
  const w = useBucketWords()
  const buckets = Object.values(table.value.buckets)
  return (
    <div class="desk">
      <DeskHead title={w.title} back={{ at: 'board' }} />
      <main class="desk-main-part">
        {buckets.length === 0 ? <p>{w.none}</p> : null}
        <ul class="rows">
          {buckets.map((one) => (
            <li key={one.facts.bucketId}>
              <BucketRow bucket={one} />
            </li>
          ))}
        </ul>
        <button
          type="button"
          class={buckets.length === 0 ? 'desk-main' : 'desk-second'}
          onClick={() => go({ at: 'buckets', bucketId: 'new' })}
        >
          {buckets.length === 0 ? w.first : w.add}
        </button>
      </main>
    </div>
  )
}

function BucketRow({ bucket }: { readonly bucket: BucketState }) {
  const { formats, go } = useDesk()
  const w = useBucketWords()
  const { facts, gramsPerMl, densityAt } = bucket
  const target = formats.value.density(facts.targetGramsPerMl)
  const mix = densityAt === undefined ? undefined : mixTo(facts, gramsPerMl)
  const off = mix?.is === 'water' ? w.off.thick : mix?.is === 'dry' ? w.off.thin : undefined
  return (
    <button type="button" class="row" onClick={() => go({ at: 'buckets', bucketId: facts.bucketId })}>
      <Swatch pattern={facts.pattern} letter={facts.letter} size={64} />
      <span class="row-text">
        <strong>{facts.name}</strong>
        <span class="figures">
          {densityAt === undefined ? w.unread(target) : w.now(formats.value.density(gramsPerMl), target)}
        </span>
        {off ? <span class="alarm">{off}</span> : null}
      </span>
    </button>
  )
}
