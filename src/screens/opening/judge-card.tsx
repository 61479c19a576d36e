import { useState } from 'preact/hooks'
import type { Fault, RunFacts, Stuck } from '../../../shared/opening.ts'
import { firedOf } from '../../table/fired/fired-pot.ts'
import type { PotState } from '../../table/model/state.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import { BackLine } from '../desk/back-line.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { useBar } from '../desk/use-bar.ts'
import { FaultKey } from './fault-key.tsx'
import { OtherFaults, StuckPage } from './fault-pages.tsx'
import { GuessLines } from './guess-lines.tsx'
import { openingRefusal, reachOf, runText, useOpening } from './opening-app.ts'
import { PhotoPage } from './photo-page.tsx'
import { PotFace } from './pot-face.tsx'
import { RunPage } from './run-page.tsx'

/** What lies over the card. */
export type Over = 'run' | 'stuck' | 'other' | 'photo'

interface JudgeProps {
  readonly pot: PotState
  readonly next: () => void
  /** Whether a page lies over the card, whose way back is then the head's. */
  readonly over: Over | undefined
  readonly open: (over: Over | undefined) => void
}

const NO_RUN: RunFacts = { is: 'none' }

/** A pot out of the kiln: good with one hit, or what is wrong with it, in a few large keys. */
export function JudgeCard({ pot, next, over, open }: JudgeProps) {
  const { words, formats, act } = useOpening()
  const w = words.value.opening
  const { found, photos } = firedOf(pot)
  const [run, setRun] = useState<RunFacts>(found?.run ?? NO_RUN)
  const [stuck, setStuck] = useState<Stuck | undefined>(found?.stuck)
  const [faults, setFaults] = useState<readonly Fault[]>(found?.faults ?? [])
  const [said, setSaid] = useState<string>()
  const close = () => open(undefined)
  const toggle = (fault: Fault) =>
    setFaults(faults.includes(fault) ? faults.filter((one) => one !== fault) : [...faults, fault])
  if (over === 'run')
    return (
      <RunPage
        pot={pot}
        run={run}
        done={(seen) => {
          setRun(seen)
          close()
        }}
      />
    )
  if (over === 'stuck')
    return (
      <StuckPage
        stuck={stuck}
        done={(how) => {
          setStuck(how)
          close()
        }}
      />
    )
  if (over === 'other') return <OtherFaults faults={faults} toggle={toggle} done={close} />
  if (over === 'photo') return <PhotoPage pot={pot} close={close} />
  const others = faults.filter((fault) => fault !== 'crawled' && fault !== 'pinholed')
  const front = reachOf(run)
  return (
    <>
      <div class="open-back">
        <BackLine />
      </div>
      <KilnMain>
        <Alarm said={said} />
        <PotFace pot={pot} front={front}>
          <GuessLines pot={pot} />
        </PotFace>
        <p class="caution">{faults.includes('shivered') ? w.care.shivered : w.care.reach}</p>
        <div class="open-keys">
          <FaultKey
            label={w.ran}
            on={run.is !== 'none'}
            under={
              run.is === 'none' || run.is === 'some' ? undefined : runText(words.value, formats.value, run)
            }
            press={() => open('run')}
          />
          <FaultKey label={w.crawled} on={faults.includes('crawled')} press={() => toggle('crawled')} />
          <FaultKey label={w.pinholed} on={faults.includes('pinholed')} press={() => toggle('pinholed')} />
          <FaultKey
            label={w.stuckKey}
            on={stuck !== undefined}
            under={stuck && w.stuckIs[stuck]}
            press={() => open('stuck')}
          />
          <FaultKey
            label={w.other}
            on={others.length > 0}
            under={others.length > 0 ? others.map((fault) => w.fault[fault]).join(', ') : undefined}
            press={() => open('other')}
          />
          <FaultKey
            label={w.photo}
            on={photos.length > 0}
            under={photos.length > 0 ? String(photos.length) : undefined}
            press={() => open('photo')}
          />
        </div>
      </KilnMain>
      <JudgeBar
        good={run.is === 'none' && !stuck && faults.length === 0}
        press={(atMs) => {
          const how = stuck ? { stuck } : {}
          const refusal = act({ do: 'judge', potId: pot.facts.potId, run, faults, ...how }, atMs)
          if (refusal) setSaid(openingRefusal(words.value, formats.value, refusal))
          else next()
        }}
      />
    </>
  )
}

/** The bar of the card alone: a page over it has its own. */
function JudgeBar({ good, press }: { readonly good: boolean; readonly press: (atMs: number) => void }) {
  const { words } = useOpening()
  const w = words.value.opening
  useBar(press)
  return <KnuckleBar label={good ? w.good : w.next} />
}
