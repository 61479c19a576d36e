import { useEffect, useState } from 'preact/hooks'
import type { CoatFacts, PotFacts } from '../../../shared/nouns.ts'
import { type Fit, fitOf } from '../../table/advice/fitting-stack.ts'
import { plain } from '../../words/number.ts'
import { useDesk } from '../desk/desk-app.ts'

/** Rest after a change before seconds are searched, ms. */
const REST_MS = 400

interface FitProps {
  readonly pot: PotFacts
  readonly plan: readonly CoatFacts[]
  readonly take: (coats: readonly CoatFacts[]) => void
}

const secondsOf = (coats: readonly CoatFacts[]): string => coats.map(({ holdS }) => plain(holdS)).join(' · ')

/** Where the stack fills this wall: the seconds that fit, or inside tonight and outside tomorrow, each one tap. */
export function StackFit({ pot, plan, take }: FitProps) {
  const { table, now, words } = useDesk()
  const [fit, setFit] = useState<Fit>()
  const w = words.value.desk.measured.fit
  const { buckets, board, air } = table.value
  useEffect(() => {
    const search = () => setFit(plan.length > 0 ? fitOf(table.peek(), pot, plan, now.peek()) : undefined)
    const timer = setTimeout(search, REST_MS)
    return () => clearTimeout(timer)
  }, [JSON.stringify([pot, plan]), buckets, board, air])
  if (!fit) return null
  const { fullAtCoat, shorter, split } = fit
  return (
    <section class="fit" aria-label={w.full(fullAtCoat)}>
      <p class="alarm">
        {w.full(fullAtCoat)}
        {shorter ? null : ` ${w.none}`}
      </p>
      {shorter ? (
        <button type="button" class="key figures" onClick={() => take(shorter)}>
          {w.take(secondsOf(shorter))}
        </button>
      ) : null}
      {split ? (
        <button type="button" class="key" onClick={() => take([...split.inside, ...split.outside])}>
          {w.split}
          <small class="figures">{w.splitS(secondsOf(split.inside), secondsOf(split.outside))}</small>
        </button>
      ) : null}
    </section>
  )
}
