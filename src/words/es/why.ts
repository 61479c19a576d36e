import type { why as english } from '../en/why.ts'
import { isOne } from './counts.ts'

/** Spanish of Why. */
export const why: typeof english = {
  zone: 'zona',
  likely: 'probable',
  upTo: 'hasta',
  full: 'pared llena',
  touch: 'seca al tacto',
  thirsty: 'con sed otra vez',
  kiln: 'seca para el horno',
  water: 'agua dentro',
  grams: (g: number) => `${g} g`,
  drinks: 'sitio que queda en la pared',
  part: (percent: number) => `${percent} %`,
  air: 'aire',
  airIs: (temp: string, rh: number, draught: string) => `${temp}, ${rh} %, ${draught}`,
  cloth: (percent: number) =>
    percent === 0
      ? ', también según el paño'
      : percent > 0
        ? `, ${Math.abs(percent)} % más según el paño`
        : `, ${Math.abs(percent)} % menos según el paño`,
  noted: (ago: string) => `, anotado hace ${ago}`,
  draughts: {
    still: 'quieto',
    room: 'aire de taller',
    window: 'ventana abierta',
    fan: 'ventilador en el cuarto',
    fanClose: 'ventilador al lado',
  },
  taught: 'según',
  untaught: 'sin pruebas',
  checks: (n: number) => (n === 0 ? 'aún sin pruebas' : isOne(n) ? '1 prueba' : `${n} pruebas`),
  band: (early: string, likely: string, late: string) => `${likely} (${early}–${late})`,
  bare: 'Aún no lleva nada.',
  trust: 'Cálculos a partir de la pared, las capas y el aire. Tu tacto decide.',
}
