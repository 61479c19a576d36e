import { useEffect, useLayoutEffect, useState } from 'preact/hooks'
import type { RunFacts } from '../../../shared/opening.ts'
import { firedOf } from '../../table/fired/fired-pot.ts'
import type { PotState } from '../../table/model/state.ts'
import { FAULTS, type Fault, STUCK, type Stuck } from '../../table/opening/faults.ts'
import type { Drafts } from '../app.ts'
import { useOpening } from './opening-app.ts'

/** What was tapped of a pot and is not judged yet. */
export interface Draft {
  readonly run: RunFacts
  readonly stuck?: Stuck | undefined
  readonly faults: readonly Fault[]
}

/** Where their code cannot be had nothing outlives its card. */
const NONE: Drafts = { of: () => undefined, keep: () => undefined }

/** What was half filled in; undefined until it is here. */
export function useDrafts(): Drafts | undefined {
  const app = useOpening()
  const [drafts, setDrafts] = useState<Drafts>()
  useLayoutEffect(() => {
    app.drafts().then(setDrafts, () => setDrafts(NONE))
  }, [])
  return drafts
}

const NO_RUN: RunFacts = { is: 'none' }

/**
 * What is tapped on a pot's card, until it is judged: it outlives the page, which a phone may kill while its camera is
 * open. It belongs to what was found last, so it is past once the pot is judged, and there again if that is taken back.
 */
export function useDraft(pot: PotState, drafts: Drafts): readonly [Draft, (next: Partial<Draft>) => void] {
  const { demo } = useOpening()
  const { found } = firedOf(pot)
  const name = demo ? 'bucketside.demo-judging' : 'bucketside.judging'
  const key = [pot.facts.potId, pot.dips.at(-1)?.outAt, found?.id].join(' ')
  const [draft, setDraft] = useState((): Draft => {
    const kept = drafts.of(name, key)
    if (isDraft(kept)) return kept
    return found
      ? { run: found.toldRun ?? NO_RUN, stuck: found.stuck, faults: found.faults }
      : { run: NO_RUN, faults: [] }
  })
  // What was tapped of a pot that is judged already lies about for nobody: it is saved, or let go with the card.
  useEffect(
    () => () => {
      if (found) drafts.keep(name, key, undefined)
    },
    [],
  )
  const set = (next: Partial<Draft>) => {
    const now = { ...draft, ...next }
    setDraft(now)
    drafts.keep(name, key, now)
  }
  return [draft, set]
}

const isIn = (all: readonly string[], one: unknown) => typeof one === 'string' && all.includes(one)

/** Whether what was kept is whole: it may be of another version. */
function isDraft(kept: unknown): kept is Draft {
  if (typeof kept !== 'object' || kept === null) return false
  const { run, stuck, faults } = kept as Partial<Record<keyof Draft, unknown>>
  return (
    isRun(run) &&
    (stuck === undefined || isIn(STUCK, stuck)) &&
    Array.isArray(faults) &&
    faults.every((fault) => isIn(FAULTS, fault))
  )
}

function isRun(run: unknown): run is RunFacts {
  if (typeof run !== 'object' || run === null) return false
  const { is, mm, longestMm } = run as { readonly [field: string]: unknown }
  if (is !== 'measured') return isIn(['none', 'shelf', 'some'], is)
  return (
    typeof mm === 'number' &&
    (longestMm === undefined || longestMm === 'shelf' || typeof longestMm === 'number')
  )
}
