import type { Face, ZoneName } from '../../engine/contract.ts'

/** What is said before a dip. Lengths mm. */
export type Warning = Said & {
  /** It was so at an earlier coat of this pot already, and was said then. */
  readonly before?: true
}

type Said =
  | {
      readonly kind: 'build'
      readonly grade: 'close' | 'over'
      readonly zone: ZoneName | 'overlap'
      readonly face: Face
      readonly likelyMm: number
      readonly upperMm: number
      readonly limitMm: number
      /** Seconds that would stay inside the limit; 0: skip this coat. */
      readonly remedyS: number
    }
  | {
      readonly kind: 'run'
      readonly grade: 'near' | 'over' | 'unknown'
      readonly roomMm: number
      /** Where two halves overlap. */
      readonly overlap?: true
      readonly runMm: number
      /** The flow was tested in another firing. */
      readonly carried: boolean
      /** Lower edge that clears the foot, or at least keeps it off the shelf, where one does. */
      readonly edgeUpMm?: number
      /** It is to stand on a catch slab. */
      readonly slab?: true
    }
  /**
   * The coat comes out thin, between `lowerMm` and `upperMm`, for the wall is full, or likely, for it is nearly so. No
   * seconds make up for it. `again`: when the wall likely drinks again, table time ms, and what the dip leaves then.
   */
  | {
      readonly kind: 'thin'
      readonly grade: 'likely' | 'full'
      readonly likelyMm: number
      readonly lowerMm: number
      readonly upperMm: number
      readonly again?: { readonly at: number; readonly likelyMm: number }
    }
  /** After a slip: seconds for this coat that come nearest to the plan; undefined: skip it. */
  | { readonly kind: 'repair'; readonly holdS: number | undefined }
  | { readonly kind: 'neck'; readonly fillS: number }
  /** Bisque from the cold: dew settles on it in this room's air. */
  | { readonly kind: 'dew'; readonly potC: number; readonly dewC: number }
  /** Made again: the seconds reckon with a wall that dried until then, table time ms. */
  | { readonly kind: 'held'; readonly until: number }
  | { readonly kind: 'level'; readonly levelMm: number; readonly needsMm: number }
  | { readonly kind: 'density'; readonly gramsPerMl: number; readonly targetGramsPerMl: number }
  /** It does not go into the bucket as it is, or the bucket runs over. */
  | { readonly kind: 'fit'; readonly misfit: 'mouth' | 'tongs' | 'overflow' }
  /** This glaze comes to lie on one that it was never fired over, or went wrong on. */
  | {
      readonly kind: 'pair'
      readonly is: 'untried' | 'went-wrong'
      readonly over: string
      readonly under: string
      readonly zone: ZoneName | 'overlap'
    }
  /** Fired pots ran farther with this glaze, or with it over another, than is reckoned with, and nobody took it. */
  | {
      readonly kind: 'ran'
      readonly over: string
      readonly under?: string
      /**
       * How far the worst of them went; `all-the-same`: one reached the shelf though results say no more of the glaze;
       * `gone`: those that less was reckoned with from count no more.
       */
      readonly to: 'shelf' | 'past-foot' | 'ran' | 'drip' | 'all-the-same' | 'gone'
      /** Its number; none where they are gone. */
      readonly number?: number
      /** So many times what tiles tell, and what is reckoned with. */
      readonly factor?: number
      readonly used: number
    }
  /** A fired pot crawled, and what is about to go on is thicker than results allow; nobody answered yet. */
  | {
      readonly kind: 'crawled'
      readonly glaze: string
      /** Where it lies on another: both together. */
      readonly under?: string
      readonly number: number
      readonly likelyMm: number
      readonly limitMm: number
    }

/** Worst first: what a slip asks of this very coat, then what stops or spoils it, then what is good to know. */
const GRAVITY: Readonly<Record<Exclude<Warning['kind'], 'build' | 'run' | 'thin' | 'pair'>, number>> = {
  repair: 0,
  level: 2,
  fit: 2,
  ran: 3,
  crawled: 3,
  dew: 4,
  held: 4,
  neck: 4,
  density: 6,
}

/** Its place among the warnings of a coat: the lower, the sooner it is said. */
export function gravity(warning: Warning): number {
  if ('grade' in warning) return { over: 1, near: 3, full: 5, likely: 7, close: 7, unknown: 8 }[warning.grade]
  if (warning.kind === 'pair') return warning.is === 'went-wrong' ? 3 : 9
  return GRAVITY[warning.kind]
}

/** Worth the one line of an armed card, once a pot; the others are read behind its key. */
export function isLoud(warning: Warning): boolean {
  if (warning.before) return false
  switch (warning.kind) {
    case 'repair':
    case 'level':
    case 'fit':
    case 'dew':
    case 'held':
    case 'neck':
    case 'ran':
    case 'crawled':
      return true
    case 'build':
      return warning.grade === 'over'
    case 'run':
      return warning.grade !== 'unknown' && !warning.slab
    case 'pair':
      return warning.is === 'went-wrong'
    case 'thin':
    case 'density':
      return false
  }
}

/** Seconds that a warning proposes for this coat instead; 0: leave it out. Undefined: nothing is proposed. */
export function remedyS(warnings: readonly Warning[]): number | undefined {
  for (const warning of warnings) {
    if (warning.kind === 'repair') return warning.holdS ?? 0
    if (warning.kind === 'build' && warning.grade === 'over') return warning.remedyS
  }
  return undefined
}
