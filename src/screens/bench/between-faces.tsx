import type { Card } from '../../table/card/card.ts'
import { nextCoat, planOf } from '../../table/model/plan.ts'
import type { Table } from '../../table/model/state.ts'
import { panWarmAt } from '../../table/steps/pan-warm.ts'
import { wasTonged } from '../../table/steps/tongs.ts'
import { PressButton } from '../../ui/press.tsx'
import { Swatch } from '../../ui/swatch.tsx'
import type { Words } from '../../words/bench.ts'
import type { LateWords } from '../../words/late.ts'
import { useApp } from '../app.ts'
import { useLateWords } from '../late-words.ts'
import { PotMarkOf } from '../parts/pot-mark-of.tsx'
import { glovesText, nameOf, placeOf } from '../text/pot-text.ts'
import { touchWhere } from './touch-where.ts'
import { Caution, WithPot } from './with-pot.tsx'
import './ready.css'

type Of<K extends Card['kind']> = Extract<Card, { kind: K }>

export function ReadyFace({ card }: { readonly card: Of<'ready'> }) {
  const { table, words, bench } = useApp()
  const out = bench.leftOut.value
  const w = words.value.bench
  const { between } = useLateWords()
  const bucket = table.value.buckets[card.bucketId]?.facts
  const pots = card.potIds.flatMap((potId) => table.value.pots[potId] ?? [])
  const [only] = pots
  if (!only) return null
  const where = touchWhere(words.value, table.value, pots)
  const held = pots.filter(wasTonged)
  const tonged =
    held.length === 0
      ? undefined
      : w.tongMarks(held.length < pots.length ? held.map((pot) => nameOf(words.value, pot)).join(', ') : '')
  const next = (
    <p class="next">
      {bucket ? <Swatch pattern={bucket.pattern} letter={bucket.letter} size={34} /> : null}
      {between.readyNext(bucket?.name ?? '')}
    </p>
  )
  if (pots.length === 1)
    return (
      <WithPot pot={only} title={w.head.ready}>
        <p class="strong">{where}</p>
        {tonged ? <p class="soft">{tonged}</p> : null}
        {next}
      </WithPot>
    )
  return (
    <div class="face face-wide face-ready">
      <div class="ready-head">
        <h1 class="title">{between.readyMany(pots.length - out.size)}</h1>
        {next}
      </div>
      <ul class="ready-tiles">
        {pots.map((pot) => (
          <li key={pot.facts.potId}>
            <PressButton
              class={out.has(pot.facts.potId) ? 'ready-tile ready-tile-out' : 'ready-tile'}
              chosen={!out.has(pot.facts.potId)}
              onPress={() => {
                bench.leftOut.value = toggled(out, pot.facts.potId)
              }}
            >
              <PotMarkOf pot={pot} width={28} height={36} />
              <span>
                {placeOf(pot)}
                <strong class="figures">{nameOf(words.value, pot)}</strong>
              </span>
            </PressButton>
          </li>
        ))}
      </ul>
      <p class="soft">
        {where}. {tonged} {w.leaveOut}
      </p>
    </div>
  )
}

function toggled(set: ReadonlySet<string>, id: string): ReadonlySet<string> {
  const next = new Set(set)
  if (!next.delete(id)) next.add(id)
  return next
}

export function ReturnFace({ card }: { readonly card: Of<'return'> }) {
  const { table, now, words, formats } = useApp()
  const { between } = useLateWords()
  const gloves = glovesText(words.value, table.value.buckets[card.bucketId]?.facts.cautions ?? [])
  return (
    <div class="face face-wide">
      <h1 class="title title-big">
        {between.returnTitle(table.value.buckets[card.bucketId]?.facts.name ?? '')}
      </h1>
      <p>{between.returnText(formats.value.pour(card.litres))}</p>
      <p class="soft figures">{between.pouredAgo(formats.value.span(now.value - card.pouredAt))}</p>
      {gloves ? <Caution>{gloves}</Caution> : null}
    </div>
  )
}

/** The card that was left, where it is about a bucket; what pots wait for is in the other lines. */
function leftText(words: Words, late: LateWords, table: Table, left: Card): string | undefined {
  const w = words.bench
  const name = (bucketId: string) => table.buckets[bucketId]?.facts.name ?? ''
  switch (left.kind) {
    case 'armed': {
      const { potId, bucketId, holdS } = left.armed
      return late.between.heldArmed(nameOf(words, table.pots[potId]), name(bucketId), holdS)
    }
    case 'stir':
      return left.change ? w.openTitle(name(left.bucketId)) : w.stirTitle(name(left.bucketId))
    case 'return':
      return late.between.returnTitle(name(left.bucketId))
    case 'lid':
      return late.end.lid(name(left.bucketId))
    case 'tools':
    case 'floor':
      return late.end[left.kind]
    default:
      return undefined
  }
}

export function HeldFace({ card }: { readonly card: Of<'held'> }) {
  const { table, words, formats, now } = useApp()
  const w = words.value.bench
  const late = useLateWords()
  const { between } = late
  const here = leftText(words.value, late, table.value, card.left)
  const { left } = card
  const leftId = left.kind === 'armed' ? left.armed.potId : undefined
  const others = card.lines.filter(({ potId }) => !here || potId !== leftId)
  // Beside the caution there is room for two.
  const lines = others.slice(0, (table.value.pan ? 2 : 3) - (here ? 1 : 0))
  return (
    <div class="face face-wide">
      <h1 class="title title-big">{w.head.held}</h1>
      {table.value.pan ? null : <p class="soft">{between.heldText}</p>}
      {here || lines.length > 0 ? <p class="strong">{between.heldWhere}</p> : null}
      <ul class="held-lines">
        {here ? <li class="held-left">{here}</li> : null}
        {lines.map((line) => (
          <li key={line.potId}>
            {between.heldLine[line.at](nameOf(words.value, table.value.pots[line.potId]))}
          </li>
        ))}
      </ul>
      {table.value.pan ? (
        <Caution>{between.heldWax(formats.value.span(now.value - table.value.pan.onAt))}</Caution>
      ) : null}
    </div>
  )
}

export function WaxPanFace({ card }: { readonly card: Of<'wax-pan'> }) {
  const { table, formats, now } = useApp()
  const { between } = useLateWords()
  const warmAt = panWarmAt(table.value)
  const on = between.panTitle(formats.value.span(now.value - card.onAt))
  return (
    <div class="face face-wide">
      <h1 class="title title-big">{card.why === 'waxed' ? between.panDone : on}</h1>
      <p class="strong">{{ waxed: on, closing: between.panClosing, beside: between.panAsk }[card.why]}</p>
      {warmAt !== undefined && now.value < warmAt ? (
        <p class="figures">{between.panWarms(formats.value.clock(warmAt + table.value.skewMs))}</p>
      ) : null}
      <Caution>{between.panCaution}</Caution>
    </div>
  )
}

export function AskDoseFace({ card }: { readonly card: Of<'ask-dose'> }) {
  const { table, words } = useApp()
  const pot = table.value.pots[card.potId]
  const w = words.value.bench
  const { between } = useLateWords()
  return pot ? (
    <WithPot pot={pot} title={w.head['ask-dose']}>
      <p class="strong figures">{between.askText(card.dip.holdS)}</p>
    </WithPot>
  ) : null
}

export function StuckFace({ card }: { readonly card: Of<'stuck'> }) {
  const { table, words } = useApp()
  const pot = table.value.pots[card.potId]
  const { between } = useLateWords()
  if (!pot) return null
  const number = nameOf(words.value, pot)
  const last = pot.dips.at(-1)
  const name = (bucketId: string | undefined) =>
    bucketId === undefined ? '' : (table.value.buckets[bucketId]?.facts.name ?? '')
  const said = {
    uncounted: [between.stuckUncounted(number), between.stuckUncountedText],
    strayed: [
      between.stuckStrayed(number, name(last?.bucketId)),
      between.stuckStrayedText(name(planOf(table.value, pot)[nextCoat(pot)]?.bucketId)),
    ],
    'no-stack': [between.stuckNoStack(number), between.stuckPlan],
    'no-bucket': [between.stuckNoBucket(number), between.stuckPlan],
  }[card.why]
  return (
    <WithPot pot={pot} title={said[0] ?? ''}>
      <p>{said[1]}</p>
    </WithPot>
  )
}
