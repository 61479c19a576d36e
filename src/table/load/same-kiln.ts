import type { KilnFacts } from '../../../shared/load.ts'

/** Every field of a kiln but its own name, in one order. */
const FIELDS = [
  ...['chamber', 'shelves', 'posts', 'couple', 'spyHoles', 'id', 'kind', 'elements', 'count'],
  ...['diameterMm', 'widthMm', 'depthMm', 'heightMm', 'thickMm', 'lengthMm', 'upMm', 'angleDeg', 'reachMm'],
]

type Measured = Omit<KilnFacts, 'kilnId'>

/** Whether two kilns have the same measures and furniture, whatever they are named. */
export const isSameKiln = (a: Measured, b: Measured): boolean =>
  JSON.stringify(a, FIELDS) === JSON.stringify(b, FIELDS)
