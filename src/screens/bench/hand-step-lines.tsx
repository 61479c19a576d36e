import { panWarmAt } from '../../table/steps/pan-warm.ts'
import { wasTonged } from '../../table/steps/tongs.ts'
import { useApp } from '../app.ts'
import { useLateWords } from '../late-words.ts'
import type { HandProps } from './stand-ins.tsx'

/** What is said at a step of the hands: how, what else is looked at with the pot in the hands, how many are left. */
export function HandStepLines({ card }: HandProps) {
  const { table, words, formats, now } = useApp()
  const w = words.value.bench
  const { between } = useLateWords()
  const said = w.step[card.kind]
  const pot = table.value.pots[card.potId]
  const { pan, settings, skewMs } = table.value
  const warmAt = panWarmAt(table.value)
  const panLine =
    card.kind !== 'wax' || settings.wax !== 'hot'
      ? undefined
      : !pan
        ? w.panCold
        : warmAt !== undefined && now.value < warmAt
          ? between.panWarms(formats.value.clock(warmAt + skewMs))
          : undefined
  const isFirst = card.kind !== 'foot-check' && pot?.waxedAt === undefined && pot?.wipedAt === undefined
  return (
    <>
      <p>{panLine ?? said.text}</p>
      {card.kind === 'foot-check' && pot && wasTonged(pot) ? <p class="strong">{w.tongMarks('')}</p> : null}
      <p class="soft">{(isFirst ? w.lookOver : said.more)(card.left)}</p>
    </>
  )
}
