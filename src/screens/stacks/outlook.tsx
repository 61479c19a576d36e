import { useEffect, useState } from 'preact/hooks'
import type { CoatFacts, PotFacts } from '../../../shared/nouns.ts'
import type { Warning } from '../../table/advice/warning.ts'
import {
  outlookOf,
  type PlanOutlook,
  planDrawing,
  type Suppose,
  supposing,
  warningsOf,
  type ZoneOutlook,
} from '../../table/advice/what-if.ts'
import { PotOutline } from '../../ui/outline.tsx'
import type { DeskWords } from '../../words/desk.ts'
import { useDesk } from '../desk/desk-app.ts'

/** Rest after a change before the engine is asked, and before remedies are searched: a key held down should not
 * stutter, ms. */
const REST_MS = 100
const SEARCH_MS = 500

interface Seen {
  readonly outlook: PlanOutlook | undefined
  /** Of the last plan that rested long enough. */
  readonly warnings: readonly (readonly Warning[])[]
}

/** What a plan comes to on a pot, a moment after it was changed last. */
export function useOutlook(pot: PotFacts, plan: readonly CoatFacts[], suppose: Suppose): Seen {
  const { table, now } = useDesk()
  const [outlook, setOutlook] = useState<PlanOutlook>()
  const [warnings, setWarnings] = useState<Seen['warnings']>([])
  const { buckets, settings, board, air } = table.value
  const key = JSON.stringify([pot, plan, suppose])
  useEffect(() => {
    let timer = setTimeout(() => {
      const [on, facts] = supposing(table.peek(), pot, suppose)
      const next = plan.length > 0 ? outlookOf(on, facts, plan, now.peek()) : undefined
      setOutlook(next)
      timer = setTimeout(() => setWarnings(next ? warningsOf(on, facts, plan, next) : []), SEARCH_MS)
    }, REST_MS)
    return () => clearTimeout(timer)
  }, [key, buckets, settings, board, air])
  return { outlook, warnings }
}

interface OutlookProps {
  readonly pot: PotFacts
  readonly plan: readonly CoatFacts[]
  readonly outlook: PlanOutlook | undefined
  readonly other: (() => void) | undefined
}

/** Which pot a stack is shown on. */
export function potName(words: DeskWords, pot: PotFacts): string {
  const w = words.desk.stacks
  const form = words.desk.form[pot.shape.form]
  return pot.number === 0 ? w.sample(form) : w.on(`${pot.number}, ${form}`)
}

/** The pot with all its coats, and how thick they are likely to be, from the rim down. */
export function Outlook({ pot, plan, outlook, other }: OutlookProps) {
  const { table, words, formats } = useDesk()
  const w = words.value.desk.stacks
  const f = formats.value
  const name = potName(words.value, pot)
  const most = Math.max(0.1, ...(outlook?.zones ?? []).flatMap(({ upperMm, limitMm }) => [upperMm, limitMm]))
  const ms = (min: number) => f.span(min * 60_000)
  return (
    <>
      <section class="outlook" aria-label={name}>
        <PotOutline {...planDrawing(table.value, pot, plan)} width={130} height={150} label={name} />
        <ul class="zones" aria-label={w.zones}>
          {(outlook?.zones ?? []).map((zone, i) => (
            <Zone key={i} zone={zone} most={most} />
          ))}
        </ul>
      </section>
      <div class="outlook-under">
        <p class="figures">
          <strong>{name}</strong>
          {outlook
            ? `: ${Number.isFinite(outlook.kilnMin) ? w.total(ms(outlook.totalMin), ms(outlook.kilnMin)) : w.never}`
            : null}
        </p>
        {other ? (
          <button type="button" class="key" onClick={other}>
            {w.otherPot}
          </button>
        ) : null}
        {plan.length > 1 ? <p class="help">{w.estimate}</p> : null}
      </div>
    </>
  )
}

const BAR = { width: 168, height: 18 }

/** One zone: ink to the likely thickness, open to the upper, a post at the limit. */
function Zone({ zone, most }: { readonly zone: ZoneOutlook; readonly most: number }) {
  const { words, formats } = useDesk()
  const w = words.value.desk.stacks
  const x = (mm: number) => 1.5 + (mm / (most * 1.05)) * (BAR.width - 3)
  const name = words.value.zone[zone.label]
  const { grade } = zone
  const coat = (mm: number) => formats.value.coat(mm)
  const bare = (mm: number) => coat(mm).replace(/ .*/, '')
  return (
    <li class={grade === 'fine' ? 'zone' : 'zone alarm'}>
      <strong>{name}</strong>
      <span class="figures">
        {w.build[grade](
          bare(zone.likelyMm),
          grade === 'fine' ? coat(zone.upperMm) : bare(zone.upperMm),
          coat(zone.limitMm),
        )}
      </span>
      <svg viewBox={`0 0 ${BAR.width} ${BAR.height}`} aria-hidden="true">
        <rect
          x="1.5"
          y="3.5"
          width={x(zone.upperMm) - 1.5}
          height="11"
          fill="none"
          stroke="currentColor"
          stroke-width="2"
        />
        <rect x="1.5" y="3.5" width={x(zone.likelyMm) - 1.5} height="11" fill="currentColor" />
        <path
          d={`M${x(zone.limitMm)} 0 V${BAR.height}`}
          stroke="var(--ink)"
          stroke-width="2.5"
          stroke-dasharray="4 2.5"
        />
      </svg>
    </li>
  )
}
