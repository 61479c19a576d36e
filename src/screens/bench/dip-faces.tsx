import type { ComponentProps } from 'preact'
import type { Decant } from '../../table/advice/collar.ts'
import type { Warning } from '../../table/advice/warning.ts'
import type { Card } from '../../table/card/card.ts'
import { isFresh } from '../../table/model/fresh.ts'
import { halfAt } from '../../table/model/halves.ts'
import { lastDip } from '../../table/model/plan.ts'
import type { PotState } from '../../table/model/state.ts'
import { marksMayShow } from '../../table/steps/tongs.ts'
import type { PotOutline } from '../../ui/outline.tsx'
import { Swatch } from '../../ui/swatch.tsx'
import type { Words } from '../../words/bench.ts'
import type { Formats } from '../../words/format.ts'
import { useApp } from '../app.ts'
import { WarningLine } from '../parts/warning-line.tsx'
import { cautionText, coverText, glovesText, nameOf, placeOf, wetGloves } from '../text/pot-text.ts'
import { Caution, WithPot } from './with-pot.tsx'
import './dip-faces.css'

type Of<K extends Card['kind']> = Extract<Card, { kind: K }>

/** A stir so short a while ago is told of without its seconds. */
const JUST_MS = 20_000

/** What is still to be done with the pot in hand before the next: only its rim is wet where glaze was poured in. */
function downFirst(words: Words, pot: PotState): string {
  const { rimFirst, footFirst } = words.bench
  const poured = lastDip(pot)?.cover.kind === 'inside'
  return (poured ? rimFirst : footFirst)(nameOf(words, pot), placeOf(pot))
}

/** What to pour for the collars, and into what. */
function decantText({ bench }: Words, formats: Formats, { litres, levelMm, vessel }: Decant): string {
  const amount = formats.pour(litres)
  if (vessel === 'jug') return bench.decantJug(amount)
  const said = bench.decant(amount, formats.mm(levelMm))
  return vessel === 'own' ? said : `${said} ${bench.widerVessel(formats.mm(vessel.wideMm))}`
}

/** A change of bucket is a card of its own: close, rinse, open, stir, and how many pots. */
export function StirFace({ card }: { readonly card: Of<'stir'> }) {
  const { table, now, words, formats } = useApp()
  const w = words.value.bench
  const { decant, change, visit, waiting, stirredAt, inVessel } = card
  const name = (bucketId: string | undefined) => table.value.buckets[bucketId ?? '']?.facts.name ?? ''
  const glaze = name(card.bucketId)
  const marked = cautionText(words.value, table.value.buckets[card.bucketId]?.facts.cautions ?? [])
  const inHand = table.value.pots[card.inHand ?? '']
  const wet = wetGloves(words.value, table.value, inHand, card.bucketId)
  const cautions = [wet, marked, inVessel ? '' : w.stirCaution].filter(Boolean).join(' ')
  const closed = change ? name(table.value.openBucket) : ''
  const last = stirredAt === undefined ? w.stirNever : w.stirAgo(formats.value.span(now.value - stirredAt))
  const why = isFresh(table.value, card.bucketId, now.value) && card.reason ? w.reason[card.reason] : ''
  const ago = why ? w.stirEarly(last, why) : last
  const count = visit ? w.dipsInto(visit.dips, glaze) : waiting > 0 ? w.stirWaiting(waiting) : ''
  const planned = card.insteadOf && name(card.insteadOf)
  return (
    <div class="face face-wide">
      {inHand ? <p class="in-hand in-hand-wide">{downFirst(words.value, inHand)}</p> : null}
      <h1 class={decant ? 'title' : 'title title-big'}>{change ? w.openTitle(glaze) : w.stirTitle(glaze)}</h1>
      <p>
        {change
          ? [closed ? w.closeFirst(closed) : '', w.stirChange].filter(Boolean).join(' ')
          : inVessel
            ? w.stirVessel
            : w.stirAgain}
      </p>
      {decant ? <p class="strong decant">{decantText(words.value, formats.value, decant)}</p> : null}
      {planned ? (
        <p class="strong">{w.insteadOf(glaze, planned)}</p>
      ) : decant ? null : (
        <p class="figures">
          {count ? <strong>{count}</strong> : null}
          <span class="soft">
            {count ? ', ' : ''}
            {ago}
          </span>
        </p>
      )}
      {cautions ? <Caution>{cautions}</Caution> : null}
    </div>
  )
}

/** Where the melt may run: tongues from the lower edge of the coats down the bare foot, as far as is reckoned. */
const tongues =
  ({ roomMm, runMm }: Extract<Warning, { kind: 'run' }>): ComponentProps<typeof PotOutline>['on'] =>
  (x, y) => (
    <path
      class="tongues"
      d={[-0.7, -0.2, 0.3, 0.75]
        .map((at, i) => `M${x(at, 0)} ${y(roomMm)} V${y(Math.max(0, roomMm - runMm * (i % 2 ? 1 : 0.8)))}`)
        .join(' ')}
    />
  )

export function ArmedFace({ card }: { readonly card: Of<'armed'> }) {
  const { table, now, words, formats } = useApp()
  const { armed } = card
  const pot = table.value.pots[armed.potId]
  const bucket = table.value.buckets[armed.bucketId]?.facts
  const w = words.value.bench
  if (!pot || !bucket) return null
  const instead = armed.insteadOf
  // What the bar asks twice about stands where the coat is named: the line below stays free for a warning.
  const asked =
    instead !== undefined
      ? w.insteadOf(bucket.name, table.value.buckets[instead]?.facts.name ?? '')
      : armed.hasIt
        ? w.hasIt(nameOf(words.value, pot), bucket.name)
        : undefined
  const inHand = table.value.pots[card.inHand ?? '']
  const onFoodSide = armed.cover.kind === 'full' || armed.cover.kind === 'inside'
  const gloves = [
    wetGloves(words.value, table.value, inHand, armed.bucketId),
    glovesText(words.value, bucket.cautions, onFoodSide),
  ]
    .filter(Boolean)
    .join(' ')
  // With a pot in hand looks give way to a warning and gloves. What is only good to know is behind *Put right* as well.
  const marks = marksMayShow(pot) && !asked && !(armed.line && gloves && inHand)
  const stirredMs = armed.stirredAt === undefined ? undefined : now.value - armed.stirredAt
  const told = armed.line !== undefined || (armed.warnings.length > 0 && !(marks && gloves))
  const run = armed.warnings.find((warning) => warning.kind === 'run')
  return (
    <WithPot
      pot={pot}
      title={bucket.name}
      above={inHand ? <p class="in-hand">{downFirst(words.value, inHand)}</p> : null}
      mark={<Swatch pattern={bucket.pattern} letter={bucket.letter} size={44} />}
      drawn={asked ? 'as-is' : 'with-next'}
      alarm={armed.foot === 'near' || armed.foot === 'over'}
      much={[inHand, marks, asked, told, gloves].filter(Boolean).length > 1}
      on={run && run.grade !== 'unknown' && !asked ? tongues(run) : undefined}
    >
      <p class="dose figures">{w.seconds(armed.holdS)}</p>
      {asked ? (
        <p class="strong">{asked}</p>
      ) : (
        <p>
          {w.coatOf(armed.coat + 1, armed.coats)},{' '}
          {coverText(
            words.value,
            formats.value,
            armed.cover,
            halfAt(table.value, pot, armed.coat, armed.cover),
          )}
        </p>
      )}
      {marks ? <p class="strong tong-marks">{w.tongMarks('')}</p> : null}
      {told ? (
        <WarningLine line={armed.line} warnings={armed.warnings} />
      ) : stirredMs === undefined || asked || gloves || marks ? null : (
        <p class="soft figures">
          {stirredMs < JUST_MS ? w.stirredNow : w.stirredAgo(formats.value.span(stirredMs))}
          {armed.filled > 0.02 ? `, ${w.wallFull(Math.round(armed.filled * 100))}` : ''}
        </p>
      )}
      {gloves ? <Caution>{gloves}</Caution> : null}
    </WithPot>
  )
}

export function DripFace({ card }: { readonly card: Of<'drip'> }) {
  const { table, words, now } = useApp()
  const pot = table.value.pots[card.potId]
  const w = words.value.bench
  if (!pot) return null
  const left = Math.ceil((card.until - now.value) / 1000)
  const poured = card.dip.cover.kind === 'inside'
  const gloves = glovesText(words.value, table.value.buckets[card.dip.bucketId]?.facts.cautions ?? [])
  const then = poured ? w.rimTitle : w.footTitle
  return (
    <WithPot pot={pot} title={left > 0 ? (poured ? w.pourDripTitle : w.dripTitle) : then}>
      {left > 0 ? (
        <>
          <p class="dose figures">{w.seconds(left)}</p>
          <p class="soft">{then}</p>
        </>
      ) : (
        <p class="strong">{(poured ? w.rimText : w.footText)(placeOf(pot))}</p>
      )}
      {gloves ? <Caution>{gloves}</Caution> : null}
    </WithPot>
  )
}
