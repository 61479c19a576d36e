import type { StackFacts } from '../../../shared/nouns.ts'
import { drafted } from '../../table/advice/what-if.ts'
import { bandsOf } from '../../table/card/board-view.ts'
import { samplePot } from '../../table/entry/offer.ts'
import { potsOnTable } from '../../table/model/plan.ts'
import { BandStrip } from '../../ui/strip.tsx'
import type { Route } from '../app.ts'
import { useDesk } from '../desk/desk-app.ts'
import { DeskHead } from '../desk/head.tsx'
import { lazyPart } from '../lazy.tsx'
import { StackEditor } from './editor.tsx'
import './stacks.css'

const NEW = { at: 'stacks', stackId: 'new' } as const

const Ticket = lazyPart(() => import('./ticket.tsx').then((part) => part.Ticket))

interface StacksProps {
  readonly stackId?: string | undefined
  /** Where one was going. */
  readonly onward?: Route | undefined
}

/** All stacks, or the one the route names; `new` is a stack that is not there yet. */
export function Stacks({ stackId, onward }: StacksProps) {
  const { table, words, demo, go } = useDesk()
  const w = words.value.desk.stacks
  const noBucket = Object.keys(table.value.buckets).length === 0
  const stack = stackId === undefined ? undefined : table.value.stacks[stackId]
  if (!noBucket && stackId !== undefined && (stack || stackId === 'new'))
    return <StackEditor key={stackId} stack={stack} onward={onward} />
  const stacks = Object.values(table.value.stacks)
  return (
    <div class="desk">
      <DeskHead title={w.title} back={{ at: 'board' }} />
      <main class="desk-main-part">
        {noBucket ? <p>{w.needBucket}</p> : stacks.length === 0 ? <p>{w.none}</p> : null}
        <ul class="rows">
          {stacks.map((one) => (
            <li key={one.stackId}>
              <StackRow stack={one} />
            </li>
          ))}
        </ul>
        <button
          type="button"
          class={stacks.length === 0 ? 'desk-main' : 'desk-second'}
          onClick={() => go(noBucket ? { at: 'buckets', bucketId: 'new', onward: NEW } : NEW)}
        >
          {noBucket ? w.toBucket : stacks.length === 0 ? w.first : w.add}
        </button>
        {stacks.length > 1 && !demo ? (
          <button type="button" class="desk-second" onClick={() => go({ at: 'handout' })}>
            {w.handAllOn}
          </button>
        ) : null}
        {stacks.length > 0 && potsOnTable(table.value).length > 0 ? <Ticket /> : null}
      </main>
    </div>
  )
}

function StackRow({ stack }: { readonly stack: StackFacts }) {
  const { table, words, go } = useDesk()
  const w = words.value.desk.stacks
  const used = potsOnTable(table.value).filter((pot) => pot.facts.stackId === stack.stackId).length
  const bands = bandsOf(...drafted(table.value, samplePot(table.value), stack.coats))
  return (
    <button type="button" class="row row-stack" onClick={() => go({ at: 'stacks', stackId: stack.stackId })}>
      <span class="row-text">
        <strong>{stack.name}</strong>
        <BandStrip bands={bands.map((band) => ({ ...band, on: true }))} width={180} />
        <span class="figures">
          {w.coats(stack.coats.length)}, {w.used(used)}
        </span>
      </span>
    </button>
  )
}
