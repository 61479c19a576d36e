import { useState } from 'preact/hooks'
import { Switch } from '../../ui/choice.tsx'
import { useDesk } from '../desk/desk-app.ts'
import { useRoomWords } from '../desk/room-words.ts'
import type { Extras } from '../extras.ts'

/** Ringing with the screen off: what it costs, whether it is proven here, a test, notices and the calendar. */
export function Ring() {
  const { extras } = useDesk()
  return extras.value ? <RingOf extras={extras.value} /> : null
}

function RingOf({ extras }: { readonly extras: Extras }) {
  const { formats } = useDesk()
  const w = useRoomWords()
  const [filed, setFiled] = useState<keyof typeof w.calendarDone>()
  const ring = extras.ring.value
  const { test } = ring
  return (
    <section>
      <h2>{w.ring}</h2>
      <Switch label={w.ringOn} help={w.ringHelp} on={ring.on} onSwitch={extras.setRing} />
      <p class={ring.proof === 'failed' || (ring.on && ring.proof === 'untested') ? 'alarm' : 'strong'}>
        {w.ringProof[ring.proof]}
      </p>
      <p class="help">{w.ringNever}</p>
      {ring.track === 'failed' ? <p class="alarm">{w.ringFailed}</p> : null}
      {test?.step === 'ask' ? (
        <>
          <p class="strong">{w.ringAsk}</p>
          <div class="pair">
            <button type="button" class="key" onClick={() => extras.endTest(true)}>
              {w.ringYes}
            </button>
            <button type="button" class="key" onClick={() => extras.endTest(false)}>
              {w.ringNo}
            </button>
          </div>
        </>
      ) : test?.step === 'lock' ? (
        <>
          <p class="strong figures" role="status">
            {w.ringLock(formats.value.clock(test.dueMs, true))}
          </p>
          <button type="button" class="key" onClick={() => extras.endTest()}>
            {w.ringStop}
          </button>
        </>
      ) : (
        <>
          {test ? <p class="alarm">{w.ringStayed}</p> : null}
          <button type="button" class="key" onClick={extras.beginTest}>
            {w.ringTest}
          </button>
        </>
      )}
      {ring.notices === 'ask' ? (
        <button type="button" class="key" onClick={extras.askNotices}>
          {w.notices.ask}
        </button>
      ) : (
        <p class="help">{w.notices[ring.notices]}</p>
      )}
      <button
        type="button"
        class="key"
        onClick={() => void extras.calendar().then(setFiled, () => setFiled('cancelled'))}
      >
        {w.calendar}
      </button>
      <p class={filed ? 'strong' : 'help'} role="status">
        {filed ? w.calendarDone[filed] : w.calendarHelp}
      </p>
    </section>
  )
}
