import type { kilnForm as english } from '../en/kiln-form.ts'
import { isOne } from './counts.ts'

/** Spanish of a kiln and its measures. */
export const kilnForm: typeof english = {
  title: '¿Qué horno?',
  text: 'Se pregunta una vez. Toma el más parecido, luego cambia lo que difiera.',
  take: 'ESTE HORNO',
  sure: 'Cambiarlo de todos modos',
  change: 'Cambiar de horno',
  edit: 'Cambiar sus medidas',
  inUse: 'en uso',
  mine: (kind: string, across: string, high: string) => `${kind}, ${across} × ${high}`,
  round: 'redondo',
  box: 'cuadrado',
  offers: {
    small: 'redondo pequeño',
    round: 'redondo',
    wide: 'redondo ancho',
    box: 'cuadrado',
    halves: 'redondo, medias placas',
  },
  across: 'Ancho por dentro',
  wide: 'Ancho por dentro',
  deep: 'Fondo por dentro',
  high: 'Alto por dentro',
  shelves: {
    round: (n: number) => (isOne(n) ? '1 redonda' : `${n} redondas`),
    halfRound: (n: number) => (isOne(n) ? '1 media redonda' : `${n} medias redondas`),
    box: (n: number) => (isOne(n) ? '1 cuadrada' : `${n} cuadradas`),
    halfBox: (n: number) => (isOne(n) ? '1 media cuadrada' : `${n} medias cuadradas`),
  },
  shelfAcross: 'Placa, ancho',
  shelfDeep: 'Placa, fondo',
  thick: 'Placa, grosor',
  count: 'Placas, cuántas',
  posts: (mm: string) => `Postes de ${mm}`,
  spy: 'Mirilla, altura',
  couple: 'Termopar, altura',
  line: (kind: string, across: string, high: string, shelves: string) =>
    `Horno: ${kind}, ${across} de ancho, ${high} de alto. Placas: ${shelves}.`,
}
