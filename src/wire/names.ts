import { type ReadonlySignal, signal } from '@preact/signals'
import { get } from 'idb-keyval'
import { clipOf, type RecordedName, record, trimName } from '../device/names.ts'
import type { Extras } from '../screens/extras.ts'
import type { Parts } from './extras.ts'
import { keep } from './local.ts'

const KEY = 'names'
type Names = Readonly<Record<string, RecordedName>>

/** Bucket names in the person's own voice, kept on this phone and nowhere else. */
export interface NameKeeper extends Pick<Extras, 'recordName' | 'playName' | 'dropName'> {
  readonly names: ReadonlySignal<ReadonlySet<string>>
}

export async function openNames({ store, sounding }: Parts): Promise<NameKeeper> {
  let names: Names = (await get<Names>(KEY, store).catch(() => undefined)) ?? {}
  const known = signal<ReadonlySet<string>>(new Set(Object.keys(names)))
  for (const [bucketId, name] of Object.entries(names)) sounding.nameBucket(bucketId, clipOf(name))

  const put = (next: Names): void => {
    names = next
    known.value = new Set(Object.keys(next))
    keep(store, KEY, next)
  }
  const playName = (bucketId: string): void => sounding.sound.say([`own:${bucketId}`])
  return {
    names: known,
    recordName(bucketId) {
      const recording = record()
      const done = recording.done.then((got) => {
        if (typeof got === 'string') return got
        const name = trimName(got)
        if (!name) return 'nothing'
        put({ ...names, [bucketId]: name })
        sounding.nameBucket(bucketId, clipOf(name))
        playName(bucketId)
        return 'kept'
      })
      return { stop: recording.stop, done }
    },
    playName,
    dropName(bucketId) {
      const { [bucketId]: _, ...rest } = names
      put(rest)
      sounding.nameBucket(bucketId, null)
    },
  }
}
