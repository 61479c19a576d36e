import { CARD_ROWS, type Card } from '../../table/card/card.ts'
import { CornerButton } from '../../ui/bar.tsx'
import { PatternBand } from '../../ui/swatch.tsx'
import { useApp } from '../app.ts'
import { ClosedSum } from './stand-ins.tsx'
import { BoardIcon, BucketName, HoldIcon, OtherIcon, PotName } from './with-pot.tsx'

/** Two corners far from the bar, the pot or bucket between them; behind all, the pattern of the open bucket. */
export function TopRow({ card }: { readonly card: Card }) {
  const { table, words, go, bench } = useApp()
  const w = words.value.bench
  const potId = 'potId' in card ? card.potId : card.kind === 'armed' ? card.armed.potId : undefined
  const ready = card.kind === 'ready' && card.potIds.length === 1 ? card.potIds[0] : undefined
  const pot = table.value.pots[potId ?? ready ?? '']
  const bucketId =
    card.kind === 'stir' || card.kind === 'return' || card.kind === 'lid' ? card.bucketId : undefined
  const open = table.value.openBucket
  const pattern = open === undefined ? undefined : table.value.buckets[open]?.facts.pattern
  const first = CARD_ROWS[card.kind]?.rests ? (
    <CornerButton to="board" label={w.board} onPress={() => go({ at: 'board' })}>
      <BoardIcon />
    </CornerButton>
  ) : (
    <CornerButton to="hold" label={w.hold} onPress={(atMs) => bench.hit({ do: 'hold' }, atMs)}>
      <HoldIcon />
    </CornerButton>
  )
  return (
    <header class="top-row">
      {pattern ? <PatternBand pattern={pattern} /> : null}
      {first}
      {pot ? (
        <PotName pot={pot} />
      ) : bucketId ? (
        <BucketName bucketId={bucketId} />
      ) : card.kind === 'closed' ? (
        <ClosedSum card={card} />
      ) : (
        <span />
      )}
      <CornerButton
        to="other"
        label={w.other}
        onPress={() => {
          bench.sheet.value = 'other'
        }}
      >
        <OtherIcon />
      </CornerButton>
    </header>
  )
}
