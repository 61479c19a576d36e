import type { Card } from '../../table/card/card.ts'
import type { HandStepName } from '../../table/steps/step-rows.ts'
import type { HandWords } from '../../words/bench.ts'
import { useApp } from '../app.ts'
import { HandStepLines } from './stand-ins.tsx'
import { Caution, WithPot } from './with-pot.tsx'

type Of<K extends Card['kind']> = Extract<Card, { kind: K }>

/** A step that hands do on one pot with one hit: its words go by its name. */
export function HandStepFace({ card }: { readonly card: Of<HandStepName> }) {
  const { table, words } = useApp()
  const pot = table.value.pots[card.potId]
  const w = words.value.bench
  if (!pot) return null
  const said: HandWords = w.step[card.kind]
  const { lidOf, shape } = pot.facts
  const isLid = lidOf !== undefined
  const seat = isLid ? w.seat.lid : shape.galleryMm === undefined ? undefined : w.seat.jar
  const caution = typeof said.caution === 'string' ? said.caution : said.caution?.[table.value.settings.wax]
  return (
    <WithPot pot={pot} title={(isLid ? said.lidTitle : undefined) ?? said.title}>
      {seat && said.lidTitle !== undefined ? (
        <p class="strong">
          {seat} {w.seat.fuses}
        </p>
      ) : (
        <HandStepLines card={card} />
      )}
      {caution ? <Caution>{caution}</Caution> : null}
    </WithPot>
  )
}
