const COUNTS = 'No One Two Three Four Five Six Seven Eight Nine Ten Eleven Twelve'.split(' ')

/** A count of things in English, at the head of a line. */
export const inWords = (n: number): string => COUNTS[n] ?? String(n)

let rules: Intl.PluralRules | undefined

/** Whether English says a count in the singular. */
export function isOne(n: number): boolean {
  rules ??= new Intl.PluralRules('en')
  return rules.select(n) === 'one'
}
