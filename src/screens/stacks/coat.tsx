import { useEffect, useState } from 'preact/hooks'
import type { CoatFacts, CoverFacts } from '../../../shared/nouns.ts'
import type { Warning } from '../../table/advice/warning.ts'
import { reachMm } from '../../table/entry/cover.ts'
import { showEntry } from '../../table/entry/entry.ts'
import { LIMITS } from '../../table/model/limits.ts'
import { Choice } from '../../ui/choice.tsx'
import { Swatch } from '../../ui/swatch.tsx'
import { marked } from '../../words/number.ts'
import { useDesk } from '../desk/desk-app.ts'
import { EntryField, type NumberEntry, useEntry } from '../desk/entry-field.tsx'
import { warningText } from '../parts/warning-line.tsx'
import { coverText } from '../text/pot-text.ts'
import type { DraftCoat } from './editor.tsx'

interface CoatProps {
  readonly draft: DraftCoat
  readonly index: number
  readonly last: number
  readonly open: boolean
  /** Grows when the editor asks for what is wrong to be said. */
  readonly asked: number
  /** Until it takes a touch; `Infinity` is never. */
  readonly waitMin: number | undefined
  /** The gravest thing the bench would say before it. */
  readonly warning: Warning | undefined
  readonly toggle: () => void
  readonly change: (coat: CoatFacts, right: boolean) => void
  readonly move: (to: number) => void
  readonly remove: () => void
}

type Kind = CoverFacts['kind']
const KINDS: readonly Kind[] = ['full', 'toSkirt', 'downTo', 'upTo', 'collar', 'inside', 'side']

/** Where an edge or a collar starts before it is changed, mm. Common practice, no source. */
const USUAL_EDGE_MM = { downTo: 20, upTo: 60, collar: 25 } as const

function coverOf(kind: Kind, mm: number): CoverFacts {
  switch (kind) {
    case 'downTo':
    case 'upTo':
      return { kind, edgeUpMm: mm }
    case 'collar':
      return { kind, depthMm: mm }
    default:
      return { kind }
  }
}

/** One coat of a stack: a line to read, opened to change it. */
export function Coat(props: CoatProps) {
  const { draft, index, last, open, asked, waitMin, warning, toggle, change, move, remove } = props
  const { table, words, formats } = useDesk()
  const w = words.value.desk.stacks
  const { coat } = draft
  const bucket = table.value.buckets[coat.bucketId]?.facts
  const [start] = useState(coat)
  const seconds = useEntry('holdS', start.holdS)
  const edge = useEntry('edgeUpMm', 'edgeUpMm' in start.cover ? start.cover.edgeUpMm : USUAL_EDGE_MM.downTo)
  const depth = useEntry(
    'depthMm',
    start.cover.kind === 'collar' ? start.cover.depthMm : USUAL_EDGE_MM.collar,
  )
  const { kind } = coat.cover
  const size = kind === 'collar' ? depth : kind === 'downTo' || kind === 'upTo' ? edge : undefined

  // What is typed becomes the coat as soon as it can be read.
  const [holdS, mm] = [seconds.value, size?.value]
  const right = seconds.ok && (size?.ok ?? true)
  useEffect(() => {
    const cover = size && mm !== undefined ? coverOf(kind, mm) : coat.cover
    const next = { ...coat, cover, holdS: holdS ?? coat.holdS }
    if (next.holdS !== coat.holdS || reachMm(cover) !== reachMm(coat.cover) || right !== draft.right)
      change(next, right)
  }, [holdS, mm, right])
  useEffect(() => {
    if (asked === 0) return
    seconds.check()
    size?.check()
  }, [asked])

  const choose = (next: Kind) => {
    if (next === 'upTo' && kind !== 'downTo' && !edge.changed)
      edge.setText(marked(showEntry('edgeUpMm', USUAL_EDGE_MM.upTo, edge.units)))
    change({ ...coat, cover: coverOf(next, (next === 'collar' ? depth : edge).value ?? 0) }, draft.right)
  }
  return (
    <li class={open ? 'coat is-open' : 'coat'}>
      <button type="button" class="coat-head" aria-expanded={open} onClick={toggle}>
        {bucket ? <Swatch pattern={bucket.pattern} letter={bucket.letter} size={44} /> : <span />}
        <span class="coat-name">
          <strong>{bucket?.name}</strong>
          <small class="figures">
            {coverText(words.value, formats.value, coat.cover)}
            {waitMin === undefined ? null : (
              <>, {Number.isFinite(waitMin) ? w.waits(formats.value.span(waitMin * 60_000)) : w.never}</>
            )}
          </small>
        </span>
        <span class="coat-dose figures">{words.value.bench.seconds(coat.holdS)}</span>
      </button>
      {warning ? <p class="coat-warning alarm">{warningText(formats.value, table.value, warning)}</p> : null}
      <div class="coat-body" hidden={!open}>
        <Choice
          label={w.bucket}
          columns={2}
          options={Object.values(table.value.buckets).map(({ facts }) => ({
            value: facts.bucketId,
            label: (
              <span class="bucket-key">
                <Swatch pattern={facts.pattern} letter={facts.letter} size={32} />
                {facts.name}
              </span>
            ),
          }))}
          value={coat.bucketId}
          onChoose={(bucketId) => change({ ...coat, bucketId }, draft.right)}
        />
        <Choice
          label={w.cover}
          columns={2}
          options={KINDS.map((value) => ({ value, label: w.covers[value] }))}
          value={kind}
          onChoose={choose}
        />
        {size ? (
          <EntryField entry={size} label={{ downTo: w.edge, upTo: w.edgeUp }[String(kind)] ?? w.depth} />
        ) : null}
        <Seconds entry={seconds} label={kind === 'inside' ? w.roll : w.seconds} />
        {last > 0 ? (
          <div class="coat-keys">
            <button type="button" class="key" disabled={index === 0} onClick={() => move(index - 1)}>
              {w.up}
            </button>
            <button type="button" class="key" disabled={index === last} onClick={() => move(index + 1)}>
              {w.down}
            </button>
            <button type="button" class="key" onClick={remove}>
              {w.removeCoat}
            </button>
          </div>
        ) : null}
      </div>
    </li>
  )
}

/** Seconds to type, or to step by one. */
function Seconds({ entry, label }: { readonly entry: NumberEntry; readonly label: string }) {
  const { words } = useDesk()
  const w = words.value.desk.stacks
  const by = (step: number) => () => {
    const next = Math.min(LIMITS.holdS.most, Math.max(LIMITS.holdS.least, (entry.value ?? 0) + step))
    entry.setText(marked(showEntry('holdS', next, entry.units)))
  }
  return (
    <div class="seconds">
      <EntryField entry={entry} label={label} />
      <button type="button" class="key" aria-label={w.shorter} onClick={by(-1)}>
        −1
      </button>
      <button type="button" class="key" aria-label={w.longer} onClick={by(1)}>
        +1
      </button>
    </div>
  )
}
