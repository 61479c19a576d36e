import { type Card, isHandCard } from '../../table/card/card.ts'
import { AnswerBars, KnuckleBar } from '../../ui/bar.tsx'
import { useApp } from '../app.ts'
import { offersRing } from './ring-line.ts'
import { ClosedKeys, CoatKeys, EndBar, RestList, RingOffer } from './stand-ins.tsx'

/** The bar's words, and what it does at rest. */
export function BigBar({ card }: { readonly card: Card }) {
  const { table, words, now, extras, bench } = useApp()
  const w = words.value.bench
  const late = extras.value
  if (isHandCard(card)) {
    const { bar } = w.step[card.kind]
    return card.small ? (
      <AnswerBars
        big={bar}
        small={{ label: w.panOnBar, onPress: bench.pressSmall }}
        hand={table.value.settings.hand}
      />
    ) : (
      <KnuckleBar label={bar} />
    )
  }
  switch (card.kind) {
    case 'drip':
      return <KnuckleBar label={card.dip.cover.kind === 'inside' ? w.rimBar : w.footBar} />
    case 'stir':
      return (
        <KnuckleBar
          label={card.collars ? w.stirPourBar : w.stirBar}
          holds={card.heldBar !== undefined}
          under={card.heldBar ? w.stirAnyway : undefined}
        />
      )
    case 'armed': {
      const under = card.armed.cover.kind === 'inside' ? w.startPour : w.startUnder
      return card.heldBar ? (
        <KnuckleBar label={card.armed.hasIt ? w.againBar : w.anywayBar} holds />
      ) : (
        <KnuckleBar label={w.startBar} under={under} />
      )
    }
    case 'ready':
      return (
        <AnswerBars
          big={w.dryBar}
          small={{ label: w.notYetBar, onPress: bench.pressSmall }}
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
      return card.why === 'closing' ? (
        <KnuckleBar label={w.panOffBar} />
      ) : (
        <AnswerBars
          big={card.why === 'waxed' ? w.panOffBar : w.panBesideBar}
          small={{ label: card.why === 'waxed' ? w.panStaysBar : w.panOffBar, onPress: bench.pressSmall }}
          hand={table.value.settings.hand}
        />
      )
    case 'lid':
    case 'tools':
    case 'floor':
      return <EndBar card={card} />
    case 'closed':
      return <ClosedKeys card={card} />
    case 'return':
      return <KnuckleBar label={w.returnBar} />
    case 'held':
      return <KnuckleBar label={w.resumeBar} />
    case 'ask-dose':
      return (
        <AnswerBars
          big={w.askBar(card.dip.holdS)}
          small={{
            label: w.askNoBar,
            onPress: () => {
              bench.sheet.value = 'other'
            },
          }}
          hand={table.value.settings.hand}
        />
      )
    case 'stuck':
      if (card.why === 'uncounted') return <CoatKeys potId={card.potId} />
      return card.big ? <KnuckleBar label={w.keepGoing} /> : <div class="bar bar-rest" />
    default:
      return <div class="bar bar-rest" />
  }
}
