/** The part of the bench that no first hit waits for. */

import { AskDoseFace, HeldFace, ReadyFace, ReturnFace, StuckFace, WaxPanFace } from './between-faces.tsx'
import { ArmedFace, DripFace, StirFace } from './dip-faces.tsx'
import { ClosedFace } from './end/closed-face.tsx'
import { FloorFace, LidFace, ToolsFace } from './end/end-faces.tsx'
import type { FaceProps } from './stand-ins.tsx'
import { WaitFace } from './wait-face.tsx'
import './hands-line.css'
import './lazy-bench.css'
import '../../ui/forced.css'
import './on-its-side.css'

export { CoatKeys } from './coat-keys.tsx'
export { CountScreen } from './count.tsx'
export { ClosedKeys, ClosedSum } from './end/closed-face.tsx'
export { EndBar } from './end/end-faces.tsx'
export { HandStepLines } from './hand-step-lines.tsx'
export { LowLines, OtherPotterDoes } from './hands-line.tsx'
export { Hint } from './hint.tsx'
export { RingAsk, RingOffer } from './ring-offer.tsx'
export { SlipLine } from './slip-line.tsx'
export { RestList } from './wait-face.tsx'
export { WhileAway } from './while-away.tsx'

/** Faces of stirs, dips, waits and decisions. */
export function LazyFace({ card }: FaceProps) {
  switch (card.kind) {
    case 'stir':
      return <StirFace card={card} />
    case 'armed':
      return <ArmedFace card={card} />
    case 'drip':
      return <DripFace card={card} />
    case 'ready':
      return <ReadyFace card={card} />
    case 'wait':
      return <WaitFace card={card} />
    case 'return':
      return <ReturnFace card={card} />
    case 'held':
      return <HeldFace card={card} />
    case 'lid':
      return <LidFace card={card} />
    case 'tools':
      return <ToolsFace />
    case 'floor':
      return <FloorFace />
    case 'closed':
      return <ClosedFace card={card} />
    case 'wax-pan':
      return <WaxPanFace card={card} />
    case 'ask-dose':
      return <AskDoseFace card={card} />
    case 'stuck':
      return <StuckFace card={card} />
    default:
      return null
  }
}
