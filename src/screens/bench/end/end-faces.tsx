import type { Caution as Contains } from '../../../../shared/nouns.ts'
import type { Card } from '../../../table/card/card.ts'
import { AnswerBars, KnuckleBar } from '../../../ui/bar.tsx'
import { useApp } from '../../app.ts'
import { amount } from '../../text/amounts.ts'
import { glovesText } from '../../text/pot-text.ts'
import type { EndProps } from '../stand-ins.tsx'
import { Caution } from '../with-pot.tsx'
import { useEndWords } from './end-words.ts'
import './closed.css'

/** The lid goes on a bucket that stands as high as it should. */
export function LidFace({ card }: { readonly card: Extract<Card, { kind: 'lid' }> }) {
  const { table, words, formats } = useApp()
  const w = useEndWords()
  const { level, levelRead, more } = card
  const facts = table.value.buckets[card.bucketId]?.facts
  const gloves = glovesText(words.value, facts?.cautions ?? [])
  // Nobody reads a bucket to the hundredth of a litre.
  const litres = level && amount('litres', Math.round(level.litres * 10) / 10, table.value.settings.units)
  return (
    <div class="face face-wide face-end">
      <h1 class="title title-big">{w.lid(facts?.name ?? '')}</h1>
      {level ? (
        <>
          <p class="dose figures">{w.deep(formats.value.mm(level.mm))}</p>
          <p class="strong figures">{(levelRead ? w.levelRead : w.level)(litres ?? '')}</p>
        </>
      ) : null}
      <p class="soft">{w.more(more)}</p>
      {gloves ? <Caution>{gloves}</Caution> : null}
    </div>
  )
}

/** The tools are washed where the glaze settles. */
export function ToolsFace() {
  const { table, words } = useApp()
  const w = useEndWords()
  const contains = new Set<Contains>(
    Object.values(table.value.buckets).flatMap(({ facts }) => [...facts.cautions]),
  )
  const gloves = glovesText(words.value, [...contains])
  return (
    <div class="face face-wide face-end">
      <h1 class="title">{w.tools}</h1>
      <p class="strong">{w.toolsText}</p>
      <Caution>{[gloves, w.toolsCaution].filter(Boolean).join(' ')}</Caution>
    </div>
  )
}

export function FloorFace() {
  const w = useEndWords()
  return (
    <div class="face face-wide face-end">
      <h1 class="title title-big">{w.floor}</h1>
      <p class="strong">{w.floorText}</p>
      <Caution>{w.floorCaution}</Caution>
    </div>
  )
}

/** The bar of a step of the end; a level that is another than computed is typed on its bucket's page. */
export function EndBar({ card }: EndProps) {
  const { table, go } = useApp()
  const w = useEndWords()
  switch (card.kind) {
    case 'lid':
      return (
        <AnswerBars
          big={w.lidBar}
          small={{ label: w.levelBar, onPress: () => go({ at: 'buckets', bucketId: card.bucketId }) }}
          hand={table.value.settings.hand}
        />
      )
    case 'tools':
      return <KnuckleBar label={w.toolsBar} />
    case 'floor':
      return <KnuckleBar label={w.floorBar} />
  }
}
