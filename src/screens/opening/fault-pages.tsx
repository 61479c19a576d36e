import { FAULTS, type Fault, STUCK, type Stuck } from '../../table/opening/faults.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { useBar } from '../desk/use-bar.ts'
import { FaultKey } from './fault-key.tsx'
import { useOpening } from './opening-app.ts'

interface FaultProps {
  readonly faults: readonly Fault[]
  readonly toggle: (fault: Fault) => void
}

interface StuckProps extends FaultProps {
  readonly stuck: Stuck | undefined
  readonly set: (stuck: Stuck | undefined) => void
  readonly done: () => void
}

/** What a pot stuck to, and how it came off; what it takes to get it off without harm stands above. */
export function StuckPage({ stuck, set, faults, toggle, done }: StuckProps) {
  const { words } = useOpening()
  const w = words.value.opening
  const kissed = faults.includes('kissed')
  useBar(done)
  return (
    <>
      <KilnMain>
        <p class="caution">{w.care.stuck}</p>
        <div class="open-keys open-keys-two">
          {STUCK.map((how) => (
            <FaultKey
              key={how}
              label={w.stuck[how]}
              on={how === stuck}
              press={() => {
                set(how === stuck ? undefined : how)
                if (how !== stuck) done()
              }}
            />
          ))}
          <FaultKey
            label={w.kissed}
            under={kissed ? w.off : w.kissedIs}
            on={kissed}
            press={() => toggle('kissed')}
          />
          {stuck ? <FaultKey label={w.notStuck} on={false} press={() => set(undefined)} /> : null}
        </div>
      </KilnMain>
      <KnuckleBar label={stuck || kissed ? w.done : w.notStuck} />
    </>
  )
}

/** On the card and on the page of what stuck. */
const ELSEWHERE: ReadonlySet<Fault> = new Set(['crawled', 'pinholed', 'kissed'])
/** Faults that have no key elsewhere: as many as glove and small phone have room for. */
export const OTHERS: readonly Fault[] = FAULTS.filter((fault) => !ELSEWHERE.has(fault))

interface OtherProps extends FaultProps {
  readonly done: () => void
}

/** Several may be on. What is said of them stands below: no key moves from under a finger. */
export function OtherFaults({ faults, toggle, done }: OtherProps) {
  const { words } = useOpening()
  const w = words.value.opening
  useBar(done)
  return (
    <>
      <KilnMain>
        <div class="open-keys">
          {OTHERS.map((fault) => (
            <FaultKey
              key={fault}
              label={w.fault[fault]}
              on={faults.includes(fault)}
              under={faults.includes(fault) ? w.off : undefined}
              press={() => toggle(fault)}
            />
          ))}
        </div>
        {faults.includes('shivered') ? <p class="caution">{w.care.shivered}</p> : null}
      </KilnMain>
      <KnuckleBar label={w.done} />
    </>
  )
}
