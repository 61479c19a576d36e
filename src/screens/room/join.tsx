import { useState } from 'preact/hooks'
import type { JoinedHow, LookedInto } from '../app.ts'
import { useDays } from '../days.ts'
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
  const { table } = useDesk()
  const w = useRoomWords()
  const [whose, setWhose] = useState<JoinedHow | undefined>(looked.mayGoOn ? undefined : {})
  const { clock } = looked
  const key = (label: string, onClick: () => void) => (
    <button type="button" class="key" onClick={onClick}>
      {label}
    </button>
  )
  const days = useDays()
  const time = (epochMs: number) => days.moment(epochMs - table.value.skewMs)
  const choose = (how: JoinedHow) => () => (clock ? setWhose(how) : join(how))
  return (
    <div class="looked">
      <p class="strong figures">{w.looked(looked)}</p>
      {looked.whole ? <p class="alarm figures">{w.notWhole(looked.whole.read, looked.whole.of)}</p> : null}
      {looked.picturesLost > 0 ? <p class="alarm figures">{w.photosLost(looked.picturesLost)}</p> : null}
      <p class="help">{w.notes}</p>
      {looked.unclocked > 0 ? <p class="alarm figures">{w.unclocked(looked.unclocked)}</p> : null}
      {!whose ? (
        <>
          <p>{w.whose}</p>
          {key(w.goOn, choose({ goesOn: true }))}
          {key(w.another, choose({}))}
        </>
      ) : clock ? (
        <>
          <p class="figures">{w.clock(time(clock.thereMs), time(clock.hereMs))}</p>
          {key(w.justNow, () => join({ ...whose, madeNow: true }))}
          {clock.thereMs <= clock.hereMs ? key(w.agree, () => join(whose)) : null}
          <p class="help">{whose.goesOn ? w.clockGone : w.clockElse}</p>
        </>
      ) : (
        key(w.join, () => join(whose))
      )}
      {key(w.leave, leave)}
    </div>
  )
}
