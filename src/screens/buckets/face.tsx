import { type BoardFill, boardFill } from '../../table/advice/fill.ts'
import { profileOf } from '../../table/forecast/shape-inputs.ts'
import type { BucketState } from '../../table/model/state.ts'
import { BucketDrawing, type DippedPot } from '../../ui/bucket-drawing.tsx'
import { useBucketWords } from '../desk/bucket-words.ts'
import { useDesk } from '../desk/desk-app.ts'
import { amount } from '../text/amounts.ts'
import { nameOf } from '../text/pot-text.ts'

/** The bucket as it stands, with the pot in it that needs most: whether it lasts over the board is seen first. */
export function BucketFace({ bucket }: { readonly bucket: BucketState }) {
  const { table, words, formats } = useDesk()
  const w = useBucketWords().fill
  const f = formats.value
  const { units } = table.value.settings
  const { facts } = bucket
  const fill = boardFill(table.value, bucket)
  const { worst } = fill
  return (
    <div class="fill-face">
      <BucketDrawing
        wideMm={facts.insideMm}
        heightMm={facts.heightMm}
        levelMm={worst?.fit.levelAtMm ?? fill.levelMm}
        afterMm={fill.dips > 0 ? fill.afterMm : undefined}
        pattern={facts.pattern}
        pot={worst && dippedPot(worst)}
        width={170}
        height={180}
        label={worst ? w.drawn(nameOf(words.value, worst.pot)) : w.drawnEmpty}
      />
      <div class="fill-said">
        <p class="figures">
          {w.stands(f.mm(fill.levelMm), amount('litres', fill.litres, units))}
          {fill.dips > 0 ? ` ${w.drops(fill.dips, f.mm(fill.afterMm))}` : null}
        </p>
        {worst ? (
          <p class={worst.fit.misfit === 'none' ? 'figures' : 'alarm figures'}>
            {worst.fit.misfit === 'none'
              ? w.covers(nameOf(words.value, worst.pot), f.mm(worst.fit.levelAtMm), f.mm(worst.fit.neededMm))
              : worst.fit.misfit === 'shallow'
                ? w.short(nameOf(words.value, worst.pot), f.mm(worst.fit.levelAtMm), f.mm(worst.fit.neededMm))
                : `${nameOf(words.value, worst.pot)}: ${words.value.warning.fit[worst.fit.misfit]}`}
          </p>
        ) : null}
      </div>
    </div>
  )
}

/** The pot that needs most, as deep as its dip takes it. */
function dippedPot({ pot, fit, how }: NonNullable<BoardFill['worst']>): DippedPot {
  return {
    outer: profileOf(pot.facts).outer,
    lowestMm: fit.levelAtMm - how.depthMm,
    way: how.way === 'rimFirst' ? 'rimDown' : how.way === 'tilted' ? 'onItsSide' : 'upright',
  }
}
