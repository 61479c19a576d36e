import { ArmedFace, DripFace, PrepFace, StirFace } from './faces.tsx'
import { type FaceProps, LateFace } from './soon.tsx'

/** What a card says between its corners and its bar. */
export function Face({ card }: FaceProps) {
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
    case 'count':
    case 'out':
    case 'empty':
      return null
    default:
      return <LateFace card={card} />
  }
}
