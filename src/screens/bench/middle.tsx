import { isHandCard } from '../../table/card/card.ts'
import { ArmedFace, DripFace, HandFace, StirFace } from './faces.tsx'
import { type FaceProps, LazyFace } from './stand-ins.tsx'

/** What a card says between its corners and its bar. */
export function Face({ card }: FaceProps) {
  if (isHandCard(card)) return <HandFace card={card} />
  switch (card.kind) {
    case 'stir':
      return <StirFace card={card} />
    case 'armed':
      return <ArmedFace card={card} />
    case 'drip':
      return <DripFace card={card} />
    case 'count':
    case 'out':
    case 'empty':
      return null
    default:
      return <LazyFace card={card} />
  }
}
