/** Which pot a piece is counts as known from here. Our choice. */
export const SURE = 0.9
