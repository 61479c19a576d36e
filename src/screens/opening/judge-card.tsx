import { useState } from 'preact/hooks'
import type { Fault, RunFacts } from '../../../shared/opening.ts'
import { firedOf, runFound, saysSame } from '../../table/fired/fired-pot.ts'
import type { PotState } from '../../table/model/state.ts'
import { KnuckleBar } from '../../ui/bar.tsx'
import type { Drafts } from '../app.ts'
import { BackLine } from '../desk/back-line.tsx'
import { KilnMain } from '../desk/kiln-main.tsx'
import { Alarm } from '../desk/save.tsx'
import { useBar } from '../desk/use-bar.ts'
import { lazyPart } from '../lazy.tsx'
import { useDraft } from './draft.ts'
import { FaultKey } from './fault-key.tsx'
import { OTHERS, OtherFaults, StuckPage } from './fault-pages.tsx'
import { GuessLines } from './guess-lines.tsx'
import { didRun, isGood, onShelf, openingRefusal, reachOf, runText, useOpening } from './opening-app.ts'
import { PotFace } from './pot-face.tsx'
import { RunPage } from './run-page.tsx'
import { SettledLines } from './stirred.tsx'

const PhotoPage = lazyPart(() => import('./photo-page.tsx').then((part) => part.PhotoPage))

/** What lies over the card. */
export type Over = 'run' | 'stuck' | 'other' | 'photo'

interface JudgeProps {
  readonly pot: PotState
  readonly drafts: Drafts
  readonly next: () => void
  /** Whether a page lies over the card, whose way back is then the head's. */
  readonly over: Over | undefined
  readonly open: (over: Over | undefined) => void
}

/** A pot out of the kiln: good with one hit, or what is wrong with it, in a few large keys. */
export function JudgeCard({ pot, drafts, next, over, open }: JudgeProps) {
  const { words, formats, act } = useOpening()
  const w = words.value.opening
  const { photos, found } = firedOf(pot)
  const [draft, set] = useDraft(pot, drafts)
  const { stuck, faults } = draft
  // What stuck came down to the shelf: the key says so at once, unless a hand has said how far.
  const run = runFound(pot, draft) ?? draft.run
  const [said, setSaid] = useState<string>()
  const stands = found && saysSame(found, { run, stuck, faults })
  const close = () => open(undefined)
  const toggle = (fault: Fault) =>
    set({ faults: faults.includes(fault) ? faults.filter((one) => one !== fault) : [...faults, fault] })
  const ran = (seen: RunFacts) => {
    set({ run: seen })
    // What reaches the shelf sits on it: how it came off is asked, and what that takes is said, before a blade is used.
    open(onShelf(seen) && !stuck ? 'stuck' : undefined)
  }
  if (over === 'run') return <RunPage pot={pot} run={run} seen={(seen) => set({ run: seen })} done={ran} />
  if (over === 'stuck')
    return (
      <StuckPage
        stuck={stuck}
        set={(how) => set({ stuck: how })}
        faults={faults}
        toggle={toggle}
        done={close}
      />
    )
  if (over === 'other') return <OtherFaults faults={faults} toggle={toggle} done={close} />
  if (over === 'photo') return <PhotoPage pot={pot} close={close} />
  const named = (which: readonly Fault[]): string | undefined =>
    which
      .filter((fault) => faults.includes(fault))
      .map((fault) => w.fault[fault])
      .join(', ') || undefined
  const others = named(OTHERS)
  const sticks = [stuck && w.stuckIs[stuck], named(['kissed'])].filter(Boolean).join(', ') || undefined
  const cares = [
    ...(faults.includes('shivered') ? [w.care.shivered] : []),
    ...(stuck || onShelf(run) ? [w.care.chip] : []),
  ]
  return (
    <>
      <KilnMain>
        <Alarm said={said} />
        <PotFace pot={pot} front={reachOf(run)} back={<BackLine />}>
          <GuessLines pot={pot} />
          <SettledLines pot={pot} />
        </PotFace>
        <p class="caution">{cares.length > 0 ? cares.join(' ') : w.care.reach}</p>
        <div class="open-keys">
          <FaultKey
            label={w.ran}
            on={didRun(run)}
            under={
              run.is === 'none' || run.is === 'some' ? undefined : runText(words.value, formats.value, run)
            }
            press={() => open('run')}
          />
          {(['crawled', 'pinholed'] as const).map((fault) => (
            <FaultKey
              key={fault}
              label={w[fault]}
              on={faults.includes(fault)}
              under={faults.includes(fault) ? w.off : undefined}
              press={() => toggle(fault)}
            />
          ))}
          <FaultKey label={w.stuckKey} on={sticks !== undefined} under={sticks} press={() => open('stuck')} />
          <FaultKey label={w.other} on={others !== undefined} under={others} press={() => open('other')} />
          <FaultKey
            label={w.photo}
            on={photos.length > 0}
            under={photos.length > 0 ? String(photos.length) : undefined}
            press={() => open('photo')}
          />
        </div>
      </KilnMain>
      <JudgeBar
        label={stands ? w.done : found ? w.save : isGood({ ...draft, run }) ? w.good : w.next}
        press={(atMs) => {
          if (stands) return next()
          const how = stuck ? { stuck } : {}
          const refusal = act({ do: 'judge', potId: pot.facts.potId, run: draft.run, faults, ...how }, atMs)
          if (refusal) setSaid(openingRefusal(words.value, formats.value, refusal))
          else next()
        }}
      />
    </>
  )
}

/** The bar of the card alone: a page over it has its own. */
function JudgeBar({ label, press }: { readonly label: string; readonly press: (atMs: number) => void }) {
  useBar(press)
  return <KnuckleBar label={label} />
}
