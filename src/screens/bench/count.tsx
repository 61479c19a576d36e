import type { Card } from '../../table/card/card.ts'
import { useApp } from '../app.ts'
import { useLateWords } from '../late-words.ts'
import { nameOf } from '../text/pot-text.ts'
import './count.css'

type CountCard = Extract<Card, { kind: 'count' | 'out' }>

/**
 * The count fills the screen, and all of it is the one action: lead-in on paper (a hit calls it off) with the dose below
 * it, so that nobody takes one for the other, then ink from IN to OUT with the seconds as large as fits (a hit is STOP). The edge fills as the dose runs.
 */
export function CountScreen({ card }: { readonly card: CountCard }) {
  const { table, words, frameNow } = useApp()
  const w = words.value.bench
  const { count: late } = useLateWords()
  const { dip } = card
  const pot = table.value.pots[card.potId]
  const glaze = table.value.buckets[dip.bucketId]?.facts.name ?? ''
  const poured = dip.cover.kind === 'inside'
  const inAt = dip.underAt - dip.lowerS * 1000
  const t = frameNow.value
  const name = `${nameOf(words.value, pot)} ${glaze}`
  if (card.kind === 'out')
    return (
      <button class="count count-out" data-press="bar" type="button">
        <span class="count-name">{name}</span>
        <CountWord>{w.out}</CountWord>
        <span class="count-under">{poured ? w.outPour : w.outUnder}</span>
      </button>
    )
  if (t < inAt) {
    const left = Math.max(1, Math.ceil((inAt - t) / 1000))
    return (
      <button class="count count-lead-in" data-press="bar" type="button">
        <span class="count-name">{name}</span>
        <span class="count-in">{poured ? late.pourIn : late.dipIn}</span>
        <span class="count-left figures">{left}</span>
        <span class="count-dose figures">{(poured ? late.inside : late.under)(dip.holdS)}</span>
        <span class="count-under">{w.leadInCancel}</span>
      </button>
    )
  }
  const elapsedS = Math.max(0, (t - dip.underAt) / 1000)
  const whole = Math.floor(elapsedS + 0.02)
  const part = dip.holdS > 0 ? Math.min(1, elapsedS / dip.holdS) : 1
  return (
    <button class="count count-hold" data-press="bar" type="button">
      <EdgeRing part={part} />
      <span class="count-name">{name}</span>
      {t < dip.underAt || whole === 0 ? (
        <CountWord>{poured ? w.pour : w.lower}</CountWord>
      ) : (
        <span class="count-numeral figures">{whole}</span>
      )}
      <span class="count-of figures">{w.of(dip.holdS)}</span>
      <span class="count-stop">{w.stopBar}</span>
    </button>
  )
}

/** A word as large as its letters have room. */
const CountWord = ({ children }: { readonly children: string }) => (
  <span class="count-word" style={{ '--n': children.length }}>
    {children}
  </span>
)

/** The screen's edge, drawn as far round as the dose has run. */
const EdgeRing = ({ part }: { readonly part: number }) => (
  <span class="count-ring" style={{ '--part': `${(part * 100).toFixed(1)}%` }} aria-hidden="true" />
)
