import { useRef, useState } from 'preact/hooks'
import { heldBy } from '../../ui/hold.tsx'
import type { Extras, NameResult } from '../extras.ts'
import { useDesk } from './desk-app.ts'
import { useRoomWords } from './room-words.ts'
import './spoken-name.css'

/** A bucket's name in the person's own voice: hold the key, say it, let go. */
export function SpokenName({ bucketId }: { readonly bucketId: string }) {
  const { extras } = useDesk()
  return extras.value ? <NameKeys extras={extras.value} bucketId={bucketId} /> : null
}

function NameKeys({ extras, bucketId }: { readonly extras: Extras; readonly bucketId: string }) {
  const w = useRoomWords()
  const [said, setSaid] = useState<NameResult | 'recording'>()
  const recording = useRef<ReturnType<Extras['recordName']> | undefined>(undefined)
  const begin = () => {
    if (recording.current) return
    recording.current = extras.recordName(bucketId)
    setSaid('recording')
    recording.current.done.then(setSaid, () => setSaid('nothing'))
  }
  const end = () => {
    recording.current?.stop()
    recording.current = undefined
  }
  return (
    <div class="spoken-name">
      <h2>{w.name}</h2>
      <button type="button" class={said === 'recording' ? 'key is-held' : 'key'} {...heldBy(begin, end)}>
        {said === 'recording' ? w.nameRecording : w.nameRecord}
      </button>
      {extras.names.value.has(bucketId) ? (
        <div class="pair">
          <button type="button" class="key" onClick={() => extras.playName(bucketId)}>
            {w.namePlay}
          </button>
          <button type="button" class="key" onClick={() => extras.dropName(bucketId)}>
            {w.nameDrop}
          </button>
        </div>
      ) : null}
      <p class={said === undefined || said === 'recording' ? 'help' : 'strong'} role="status">
        {said === undefined || said === 'recording' ? w.nameHelp : w.nameResults[said]}
      </p>
    </div>
  )
}
