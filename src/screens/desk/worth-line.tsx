import { useEffect, useState } from 'preact/hooks'
import { type BoardWorth, type Offer, worthNow } from '../../table/advice/worth.ts'
import { nameOf } from '../text/pot-text.ts'
import { useDesk } from './desk-app.ts'

/** Rest after a change before it is computed, ms. */
const REST_MS = 600
/** Checks after which it is told what they bought. */
const TOLD_CHECKS = 3

/** How far the waits of this board are known, what the checks bought, and which one measurement would narrow most. */
export function WorthLine() {
  const { table, now, words } = useDesk()
  const [worth, setWorth] = useState<BoardWorth>()
  useEffect(() => {
    const timer = setTimeout(() => setWorth(worthNow(table.peek(), now.peek())), REST_MS)
    return () => clearTimeout(timer)
  }, [table.value])
  if (!worth) return null
  const w = words.value.desk.measured.worth
  const of = (offer: Offer): string => {
    const factor = factorText(offer.factor)
    if (offer.kind === 'clay') return w.clay(factor)
    const pot = table.value.pots[offer.potId]
    return pot ? w[offer.kind](nameOf(words.value, pot), offer.coat, factor) : ''
  }
  return (
    <p class="help figures">
      {hasBought(worth)
        ? w.bought(worth.checks, factorText(worth.untaught), factorText(worth.factor))
        : w.known(factorText(worth.factor))}
      {worth.best ? ` ${of(worth.best)}` : null}
    </p>
  )
}

/** Checks that surprised can leave waits known less well than a guess: what they bought is not said then. */
export const hasBought = ({ checks, untaught, factor }: Omit<BoardWorth, 'best'>): boolean =>
  checks >= TOLD_CHECKS && Number(factorText(factor)) < Number(factorText(untaught))

/** A factor as people say it: halves below five, whole above. */
const factorText = (factor: number): string =>
  `${factor < 5 ? Math.round(factor * 2) / 2 : Math.round(factor)}`
