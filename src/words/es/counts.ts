const COUNTS = 'Ninguna Una Dos Tres Cuatro Cinco Seis Siete Ocho Nueve Diez Once Doce'.split(' ')

/** A count of pieces in Spanish, at the head of a line. */
export const inWords = (n: number): string => COUNTS[n] ?? String(n)

let rules: Intl.PluralRules | undefined

/** Whether Spanish says a count in the singular. */
export function isOne(n: number): boolean {
  rules ??= new Intl.PluralRules('es')
  return rules.select(n) === 'one'
}
