import type { ConeStand, KilnFacts } from '../../../shared/load.ts'
import type { FiringFacts } from '../../../shared/nouns.ts'
import type { LoadPlan } from '../../engine/kiln/contract.ts'
import type { Deed, InKiln } from './load-state.ts'

interface OfLoad {
  readonly loadId: string
}
interface Late extends OfLoad {
  readonly agoMin?: number
}

/** What a person can mean by a hit at the kiln. A `key` is one of `thingKey`. */
export type LoadAction =
  /** The load in hand goes into it. `sure`: though some of it has no shelf there. */
  | {
      readonly do: 'set-kiln'
      readonly kiln: Omit<KilnFacts, 'kilnId'> & { readonly kilnId?: string }
      readonly sure?: boolean
    }
  | { readonly do: 'begin-load'; readonly kilnId: string; readonly firing: FiringFacts }
  /** It is fired otherwise than was said. */
  | ({ readonly do: 'change-firing'; readonly firing: FiringFacts } & OfLoad)
  /** It was not so, nor what was said to have been done after it. */
  | ({ readonly do: 'unsay'; readonly kind: Deed['kind'] } & OfLoad)
  | ({ readonly do: 'set-candling'; readonly candle: boolean } & OfLoad)
  /** A proposal as it was answered. */
  | ({ readonly do: 'lay-out'; readonly plan: LoadPlan } & OfLoad)
  | ({ readonly do: 'stand'; readonly key: string; readonly at: InKiln } & OfLoad)
  | ({ readonly do: 'swap'; readonly keys: readonly [string, string] } & OfLoad)
  /** It stays out of this firing, a pot until a later one. */
  | ({ readonly do: 'lift-out'; readonly key: string } & OfLoad)
  /** Two phones had it in two places: it is in the first, or in the other. */
  | ({ readonly do: 'settle-place'; readonly key: string; readonly other: boolean } & OfLoad)
  | ({
      readonly do: 'load-shelf'
      readonly column: InKiln['column']
      readonly storey: number
    } & OfLoad)
  | ({ readonly do: 'shut-lid' } & OfLoad)
  /** `sure`: though its pots are not dry, or another load is hot in the kiln. */
  | ({ readonly do: 'light'; readonly sure?: boolean } & Late)
  | ({ readonly do: 'hold-glass'; readonly fogged: boolean } & Late)
  | ({ readonly do: 'read-heat'; readonly tempC: number; readonly sure?: boolean } & Late)
  | ({ readonly do: 'drop-reading'; readonly readId: string } & OfLoad)
  | ({ readonly do: 'see-cone'; readonly cone: string; readonly is: ConeStand } & Late)
  /** A cone or a glass was not so. `hit` is that by which it was said. */
  | ({ readonly do: 'drop-look'; readonly hit: string } & OfLoad)
  | ({ readonly do: 'pull-bung' } & Late)
  /** `sure`: though it was read to rise since, or nothing says that it was fired. */
  | ({ readonly do: 'switch-off'; readonly sure?: boolean } & Late)
  | ({ readonly do: 'open-lid'; readonly tempC?: number; readonly sure?: boolean } & Late)
  /** After the fire: this is that pot. */
  | ({
      readonly do: 'match'
      readonly potId: string
      readonly sureness: number
      readonly heightMm?: number
      readonly widthMm?: number
    } & OfLoad)
  | { readonly do: 'take-offset'; readonly kilnId: string; readonly offsetC: number; readonly of: number }
  /** The kiln is as it was before its offset was taken last. */
  | { readonly do: 'drop-offset'; readonly kilnId: string }
