/** A flow tile upright on its dish, mm. Assumption, as is the next. */
export const TILE = { radiusMm: 40, heightMm: 110 }
/** The same of a cone set. */
export const CONES = { radiusMm: 35, heightMm: 75 }
