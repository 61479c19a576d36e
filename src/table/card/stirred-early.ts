import type { Table } from '../model/state.ts'
import type { Card } from './card.ts'

/** Whether a stir is asked for while the last one of the open bucket is still good: that wants a reason. */
export const isStirredEarly = ({ settings }: Table, card: Extract<Card, { kind: 'stir' }>): boolean =>
  !card.change && card.agoMs !== undefined && card.agoMs < settings.staleMin * 60_000
