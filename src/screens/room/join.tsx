import { useState } from 'preact/hooks'
import type { JoinedHow, LookedInto } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import { useRoomWords } from '../desk/room-words.ts'

export type Looked = Extract<LookedInto, { ok: true }>

interface JoinProps {
  readonly looked: Looked
  readonly join: (how: JoinedHow) => void
  readonly leave: () => void
}

/** What a file holds, and as whose it is joined: an empty phone may go on as the one that made it. */
export function Join({ looked, join, leave }: JoinProps) {
  const { formats } = useDesk()
  const w = useRoomWords()
  const [another, setAnother] = useState(!looked.mayGoOn)
  const { clock } = looked
  const key = (label: string, onClick: () => void) => (
    <button type="button" class="key" onClick={onClick}>
      {label}
    </button>
  )
  const time = (epochMs: number) => formats.value.clock(epochMs)
  return (
    <div class="looked">
      <p class="strong figures">{w.looked(looked)}</p>
      {looked.whole ? <p class="alarm figures">{w.notWhole(looked.whole.read, looked.whole.of)}</p> : null}
      {looked.picturesLost > 0 ? <p class="alarm figures">{w.photosLost(looked.picturesLost)}</p> : null}
      <p class="help">{w.notes}</p>
      {looked.unclocked > 0 ? <p class="alarm figures">{w.unclocked(looked.unclocked)}</p> : null}
      {!another ? (
        <>
          <p>{w.whose}</p>
          {key(w.goOn, () => join({ goesOn: true }))}
          {key(w.another, () => (clock ? setAnother(true) : join({})))}
        </>
      ) : clock ? (
        <>
          <p class="figures">{w.clock(time(clock.thereMs), time(clock.hereMs))}</p>
          {key(w.justNow, () => join({ madeNow: true }))}
          {clock.thereMs <= clock.hereMs ? key(w.agree, () => join({})) : null}
          <p class="help">{w.clockElse}</p>
        </>
      ) : (
        key(w.join, () => join({}))
      )}
      {key(w.leave, leave)}
    </div>
  )
}
