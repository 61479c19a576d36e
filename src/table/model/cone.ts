import type { ConeMake } from '../../../shared/nouns.ts'

/** Labels of each make as they are written, without their figures: the bench needs no cone table. */
const LABELS: Readonly<Record<ConeMake, RegExp>> = {
  american: /^(02[0-2]|01\d|0[1-9]|[1-9]|10|0?5\.5)$/,
  seger: /^(0[46]a|[156]a|[7-9]|10)$/,
}

/** The softest and the hardest of a make. */
export const coneEnds = (make: ConeMake): readonly [string, string] =>
  make === 'american' ? ['022', '10'] : ['04a', '10']

/** Whether a make has a cone of this label. */
export const isCone = (cone: string, make: ConeMake): boolean => LABELS[make].test(cone)

/** Fewest readings that a heat work can be told from. */
export const LEAST_READINGS = 2
