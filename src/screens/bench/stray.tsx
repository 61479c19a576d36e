import type { Warning } from '../../table/advice/warning.ts'
import { warningsFor } from '../../table/advice/warnings.ts'
import { strayed } from '../../table/model/plan.ts'
import type { PotState } from '../../table/model/state.ts'
import { nextBucket } from '../../table/steps/steps.ts'
import { PressButton } from '../../ui/press.tsx'
import { useApp } from '../app.ts'
import { useLateWords } from '../late-words.ts'
import { warningText } from '../parts/warning-line.tsx'
import { glovesText, nameOf } from '../text/pot-text.ts'
import type { Acting } from './other-pages.tsx'
import { Caution } from './with-pot.tsx'

const MOST_WARNINGS = 2
/** Warnings that hold however long the pot waits: of a pair of glazes, of thickness, of a run. */
const LASTING: readonly Warning['kind'][] = ['pair', 'build', 'run']
const MOST_STACKS = 4

/** After another bucket than planned: what the coats to come would meet, and the ways on. */
export function StrayPage({ pot, act }: { readonly pot: PotState; readonly act: Acting }) {
  const { table, words, formats, now } = useApp()
  const w = words.value
  const { remedy, between } = useLateWords()
  const { potId, stackId } = pot.facts
  const dip = strayed(table.value, pot)
  const into = nextBucket(table.value, pot)
  const said = into === undefined ? [] : warningsFor(table.value, pot, into, now.value)
  const warnings = LASTING.flatMap((kind) => said.filter((warning) => warning.kind === kind))
  const onFoodSide = dip?.cover.kind === 'full' || dip?.cover.kind === 'inside'
  const gloves = glovesText(w, table.value.buckets[dip?.bucketId ?? '']?.facts.cautions ?? [], onFoodSide)
  const stacks = Object.values(table.value.stacks).filter((stack) => stack.stackId !== stackId)
  return (
    <div class="other-more">
      <p class="strong">
        {between.stuckStrayed(nameOf(w, pot), table.value.buckets[dip?.bucketId ?? '']?.facts.name ?? '')}
      </p>
      {warnings.slice(0, MOST_WARNINGS).map((warning) => (
        <p key={warning.kind} class="alarm">
          {warningText(formats.value, table.value, warning)}
        </p>
      ))}
      {gloves ? <Caution>{gloves}</Caution> : null}
      <div class="other-grid">
        <PressButton class="other-tile other-offer other-wide" onPress={act({ do: 'keep-going', potId })}>
          {w.bench.keepGoing}
        </PressButton>
        {stacks.slice(0, MOST_STACKS).map((stack) => (
          <PressButton
            key={stack.stackId}
            class="other-tile"
            onPress={act({ do: 'restack', potId, stackId: stack.stackId })}
          >
            {remedy.stack(stack.name)}
          </PressButton>
        ))}
        <PressButton class="other-tile other-gone" kind="hold" onPress={act({ do: 'wash-off', potId })}>
          {w.bench.washOff}
        </PressButton>
      </div>
    </div>
  )
}
