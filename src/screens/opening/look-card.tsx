import { useState } from 'preact/hooks'
import { firedOf } from '../../table/fired/fired-pot.ts'
import type { PotState } from '../../table/model/state.ts'
import type { Fault } from '../../table/opening/faults.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { useDays } from '../days.ts'
import { BackLine } from '../desk/back-line.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { useBar } from '../desk/use-bar.ts'
import { FaultKey } from './fault-key.tsx'
import { foundText, openingRefusal, reachOf, useOpening } from './opening-app.ts'
import { PotFace } from './pot-face.tsx'

interface LookProps {
  readonly pot: PotState
  readonly next: () => void
}

/** What comes late, the likeliest first. */
const LATE: readonly Fault[] = ['crazed', 'shivered', 'dunted']

/** A day and a week later: what came since. It is added to what was found, and replaces nothing of it. */
export function LookCard({ pot, next }: LookProps) {
  const { words, formats, act } = useOpening()
  const w = words.value.opening
  const days = useDays()
  const [faults, setFaults] = useState<readonly Fault[]>([])
  const [said, setSaid] = useState<string>()
  const { found } = firedOf(pot)
  const front = reachOf(found?.run)
  const care = faults.includes('shivered')
    ? w.care.shivered
    : faults.includes('crazed')
      ? w.care.food
      : undefined
  useBar((atMs) => {
    const refusal = act({ do: 'look-again', potId: pot.facts.potId, faults }, atMs)
    if (refusal) setSaid(openingRefusal(words.value, formats.value, refusal))
    else next()
  })
  return (
    <>
      <KilnMain>
        <Alarm said={said} />
        <PotFace pot={pot} front={front} back={<BackLine />}>
          {found ? (
            <p class="figures">
              {days.moment(found.at)}: {foundText(words.value, formats.value, found)}
            </p>
          ) : null}
        </PotFace>
        <p class="kiln-big">{w.again.ask}</p>
        <p class={care ? 'caution' : 'help'}>{care ?? w.again.why}</p>
        <div class="open-keys">
          {LATE.map((fault) => (
            <FaultKey
              key={fault}
              label={w.fault[fault].toUpperCase()}
              on={faults.includes(fault)}
              press={() =>
                setFaults(faults.includes(fault) ? faults.filter((one) => one !== fault) : [...faults, fault])
              }
            />
          ))}
        </div>
      </KilnMain>
      <KnuckleBar label={faults.length > 0 ? w.next : w.again.bar} />
    </>
  )
}
