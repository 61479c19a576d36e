import { FAULTS, type Fault, STUCK, type Stuck } from '../../table/opening/faults.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { useBar } from '../desk/use-bar.ts'
import { FaultKey } from './fault-key.tsx'
import { useOpening } from './opening-app.ts'

interface StuckProps {
  readonly stuck: Stuck | undefined
  readonly done: (stuck: Stuck | undefined) => void
}

/** How a pot came off its shelf; what it takes to get it off without harm stands above. */
export function StuckPage({ stuck, done }: StuckProps) {
  const { words } = useOpening()
  const w = words.value.opening
  useBar(() => done(undefined))
  return (
    <>
      <KilnMain>
        <p class="caution">{w.care.stuck}</p>
        <div class="open-keys open-keys-tall">
          {STUCK.map((how) => (
            <FaultKey key={how} label={w.stuck[how]} on={how === stuck} press={() => done(how)} />
          ))}
        </div>
      </KilnMain>
      <KnuckleBar label={w.notStuck} />
    </>
  )
}

interface OtherProps {
  readonly faults: readonly Fault[]
  readonly toggle: (fault: Fault) => void
  readonly done: () => void
}

/** Faults that have no key on the card; several may be on. */
export function OtherFaults({ faults, toggle, done }: OtherProps) {
  const { words } = useOpening()
  const w = words.value.opening
  useBar(() => done())
  return (
    <>
      <KilnMain>
        {faults.includes('shivered') ? <p class="caution">{w.care.shivered}</p> : null}
        <div class="open-keys">
          {FAULTS.filter((fault) => fault !== 'crawled' && fault !== 'pinholed').map((fault) => (
            <FaultKey
              key={fault}
              label={w.fault[fault]}
              on={faults.includes(fault)}
              press={() => toggle(fault)}
            />
          ))}
        </div>
        <p class="help">{w.care.food}</p>
      </KilnMain>
      <KnuckleBar label={w.done} />
    </>
  )
}
