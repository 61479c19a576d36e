import { useEffect, useState } from 'preact/hooks'
import type { CoatFacts, PotFacts } from '../../../shared/nouns.ts'
import { mended, type Remedy, remediesFor } from '../../table/advice/remedies.ts'
import { drafted, type PlanOutlook } from '../../table/advice/what-if.ts'
import { plannedDip } from '../../table/forecast/hypothetical-dip.ts'
import { More } from '../../ui/more.tsx'
import { LOOK_WORDS } from '../../words/look.ts'
import { useDesk } from '../desk/desk-app.ts'
import { remedyText } from '../text/remedy-text.ts'

interface RemediesProps {
  readonly pot: PotFacts
  readonly plan: readonly CoatFacts[]
  readonly outlook: PlanOutlook
  /** Puts these coats in the place of the plan's. */
  readonly take: (coats: readonly CoatFacts[]) => void
}

interface Found {
  readonly bucketId: string
  /** Coats that the pot has before the first of the plan: a poured inside. */
  readonly poured: number
  readonly remedies: readonly Remedy[]
}

/** Rest before remedies are searched, ms: a search is dearer than a look. */
const REST_MS = 600

/** What would keep the first coat that takes this pot to the shelf, or near it, from doing so: one tap each. */
export function Remedies({ pot, plan, outlook, take }: RemediesProps) {
  const { table, words, formats, act } = useDesk()
  const [found, setFound] = useState<Found>()
  const { tiles, firing, buckets, stacks, pots } = table.value
  const standing = pots[pot.potId]
  useEffect(() => {
    setFound(undefined)
    const search = (): Found | undefined => {
      const [draft, bare] = drafted(table.peek(), pot, plan)
      const slab = standing?.slab ? { slab: true } : {}
      for (const [i, { coat, before, atMs }] of outlook.coats.entries()) {
        const gramsPerMl = draft.buckets[coat.bucketId]?.gramsPerMl
        if (gramsPerMl === undefined) continue
        const dip = plannedDip(i, coat, gramsPerMl, atMs)
        const remedies = remediesFor(draft, { ...before, ...slab }, dip)
        const poured = pot.pourInsideFirst && bare.facts.pourInsideFirst ? 1 : 0
        if (remedies.length > 0) return { bucketId: coat.bucketId, poured, remedies }
      }
      return undefined
    }
    const timer = setTimeout(() => setFound(search()), REST_MS)
    return () => clearTimeout(timer)
  }, [outlook, tiles, firing, buckets, stacks, standing?.slab])
  if (!found) return null
  const glaze = table.value.buckets[found.bucketId]?.facts.name ?? ''
  const apply = (remedy: Remedy) => () => {
    if (remedy.is === 'slab') act({ do: 'set-slab', potId: pot.potId, slab: true })
    else if (remedy.is === 'stack')
      act(
        standing?.ownPlan
          ? { do: 'set-plan', potId: pot.potId, coats: remedy.coats }
          : { do: 'set-pot', pot: { ...pot, stackId: remedy.stackId } },
      )
    else take(mended(plan, { ...remedy, at: remedy.at - found.poured }))
  }
  const shown = found.remedies.filter(({ is }) => standing || (is !== 'slab' && is !== 'stack'))
  return shown.length === 0 ? null : (
    <More label={LOOK_WORDS[table.value.settings.language].remedies(glaze)}>
      <div class="look-remedies">
        {shown.map((remedy, i) => {
          const { what, to } = remedyText(words.value, formats.value, table.value, glaze, remedy)
          return (
            <button key={i} type="button" class="key figures" onClick={apply(remedy)}>
              {what}
              {to ? <small>{to}</small> : null}
            </button>
          )
        })}
      </div>
    </More>
  )
}
