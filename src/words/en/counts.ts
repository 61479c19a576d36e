const COUNTS = 'No One Two Three Four Five Six Seven Eight Nine Ten Eleven Twelve'.split(' ')

/** A count of things in English, at the head of a line. */
export const inWords = (n: number): string => COUNTS[n] ?? String(n)
