import type { Card } from '../../table/card.ts'
import { ArmedFace, DripFace, PrepFace, StirFace } from './faces.tsx'
import { WaitFace } from './rest.tsx'
import {
  AskDoseFace,
  FinishedFace,
  HeldFace,
  ReadyFace,
  ReturnFace,
  StuckFace,
  WaxPanFace,
} from './waits.tsx'

/** What a card says between its corners and its bar. */
export function Face({ card, out }: { readonly card: Card; readonly out: ReadonlySet<string> }) {
  switch (card.kind) {
    case 'wax':
    case 'wipe':
    case 'foot-check':
      return <PrepFace card={card} />
    case 'stir':
      return <StirFace card={card} />
    case 'armed':
      return <ArmedFace card={card} />
    case 'drip':
      return <DripFace card={card} />
    case 'ready':
      return <ReadyFace card={card} out={out} />
    case 'wait':
      return <WaitFace card={card} />
    case 'return':
      return <ReturnFace card={card} />
    case 'held':
      return <HeldFace card={card} />
    case 'finished':
      return <FinishedFace card={card} />
    case 'wax-pan':
      return <WaxPanFace card={card} />
    case 'ask-dose':
      return <AskDoseFace card={card} />
    case 'stuck':
      return <StuckFace card={card} />
    case 'count':
    case 'out':
    case 'empty':
      return null
  }
}
