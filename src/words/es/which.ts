import type { which as english } from '../en/which.ts'

/** Spanish of telling pots apart after the fire. */
export const which: typeof english = {
  shelf: 'Estaba en la placa',
  high: 'Alto ahora',
  wide: 'Lo más ancho ahora',
  stack: 'Esmalte, como se ve',
  bar: 'COMPARAR',
  sure: (percent: string) => `${percent} seguro`,
  sole: 'Es esta, por todo lo visto. Tócala.',
  which: 'Toca la que es. Ninguna se toma sin tocarla.',
  none: 'Están todas las piezas de esta hornada.',
  found: (pots: string) => `Encontradas: ${pots}`,
  nothing: 'Pon lo que ves: su placa, alto, ancho o esmalte.',
  other: 'NINGUNA DE ESTAS',
}
