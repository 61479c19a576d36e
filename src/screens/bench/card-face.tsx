import { isHandCard } from '../../table/card/card.ts'
import { HandStepFace } from './hand-step-face.tsx'
import { type FaceProps, LazyFace } from './stand-ins.tsx'

/** What a card says between its corners and its bar. */
export function Face({ card }: FaceProps) {
  if (isHandCard(card)) return <HandStepFace card={card} />
  switch (card.kind) {
    case 'count':
    case 'out':
    case 'empty':
      return null
    default:
      return <LazyFace card={card} />
  }
}
