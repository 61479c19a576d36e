import { type Card, isHandCard } from '../../table/card/card.ts'
import { AnswerBars, KnuckleBar } from '../../ui/bar.tsx'
import { useApp } from '../app.ts'
import { offersRing } from './ring-line.ts'
import { CalendarBar, CoatKeys, RestList, RingOffer } from './soon.tsx'

/** The bar's words, and what it does at rest. */
export function BigBar({ card }: { readonly card: Card }) {
  const { table, words, now, extras } = useApp()
  const w = words.value.bench
  const late = extras.value
  if (isHandCard(card)) return <KnuckleBar act="big" label={w.step[card.kind].bar} />
  switch (card.kind) {
    case 'drip':
      return <KnuckleBar act="big" label={w.footBar} />
    case 'stir':
      return (
        <KnuckleBar
          act="big"
          label={w.stirBar}
          holds={card.heldBar !== undefined}
          under={card.heldBar ? w.stirAnyway : undefined}
        />
      )
    case 'armed': {
      const lead = table.value.settings.leadInS
      const under = card.armed.cover.kind === 'inside' ? w.startPour(lead) : w.startUnder(lead)
      return card.heldBar ? (
        <KnuckleBar act="big" label={card.armed.hasIt ? w.againBar : w.anywayBar} holds />
      ) : (
        <KnuckleBar act="big" label={w.startBar} under={under} />
      )
    }
    case 'ready':
      return (
        <AnswerBars
          big={{ act: 'big', label: w.dryBar }}
          small={{ act: 'small', label: w.notYetBar }}
          hand={table.value.settings.hand}
        />
      )
    case 'wait':
      return late && offersRing(late, table.value, card, now.value) ? (
        <RingOffer extras={late} />
      ) : (
        <RestList card={card} />
      )
    case 'wax-pan':
      return card.closing ? (
        <KnuckleBar act="big" label={w.panOffBar} />
      ) : (
        <AnswerBars
          big={{ act: 'big', label: w.panBesideBar }}
          small={{ act: 'small', label: w.panOffBar }}
          hand={table.value.settings.hand}
        />
      )
    case 'finished':
      return late && late.longWaits() > 0 ? <CalendarBar extras={late} /> : <div class="bar bar-rest" />
    case 'return':
      return <KnuckleBar act="big" label={w.returnBar} />
    case 'held':
      return <KnuckleBar act="big" label={w.resumeBar} />
    case 'ask-dose':
      return <KnuckleBar act="big" label={w.askBar(card.dip.holdS)} />
    case 'stuck':
      if (card.why === 'uncounted') return <CoatKeys potId={card.potId} />
      return card.big ? <KnuckleBar act="big" label={w.keepGoing} /> : <div class="bar bar-rest" />
    default:
      return <div class="bar bar-rest" />
  }
}
