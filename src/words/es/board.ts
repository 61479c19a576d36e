import type { board as boardEnglish, places as placesEnglish } from '../en/board.ts'
import type { Name } from '../name.ts'
import { isOne } from './counts.ts'

/** Spanish of the board. */
export const board: typeof boardEnglish = {
  title: 'Tablas',
  counts: (waiting: number, ready: number) =>
    `${waiting} ${isOne(waiting) ? 'espera' : 'esperan'}, ${ready} ${isOne(ready) ? 'lista' : 'listas'}`,
  pots: (n: number) => (isOne(n) ? '1 pieza' : `${n} piezas`),
  ends: (waiting: number, when: string) =>
    [
      ...(waiting > 0 ? [isOne(waiting) ? '1 espera' : `${waiting} esperan`] : []),
      `todas bañadas ${when}`,
    ].join(', '),
  judge: (n: number) => (isOne(n) ? 'Juzgar 1 pieza' : `Juzgar ${n} piezas`),
  lookAgain: (n: number) => (isOne(n) ? 'Mirar otra vez 1 pieza' : `Mirar otra vez ${n} piezas`),
  toSettle: (n: number) => (isOne(n) ? '1 cosa por aclarar' : `${n} cosas por aclarar`),
  fired: 'Piezas cocidas',
  bench: 'Mesa',
  add: 'Piezas',
  buckets: 'Cubos',
  stacks: 'Series',
  move: 'Mover piezas',
  room: 'Taller',
  air: (temp: string, rh: string, draught: string) => `${temp}, ${rh}, ${draught}`,
  wall: (wall: string) => `paredes de ${wall}`,
  state: {
    ready: 'LISTA',
    next: 'sigue',
    wax: 'cera',
    wipe: 'limpia',
    dip: 'baño',
    count: 'dentro',
    foot: 'pie',
    check: 'revisa',
    stuck: 'decide',
    later: 'luego',
    never: 'nunca',
  },
  kiln: {
    dry: 'seca',
    in: 'seca en',
  },
  hours: (h: number, min: number) => `${h} h ${String(min).padStart(2, '0')}`,
  tile: (number: Name, place: string, state: string) => `Pieza ${number} en ${place}: ${state}`,
  empty: {
    title: 'Tabla vacía',
    lines: 'Dos cosas, en este orden.',
    bucket: 'Pon nombre a tus cubos',
    bucketWhy: 'Un nombre cada uno. Lo demás puede esperar.',
    pots: 'Pon piezas en la tabla',
    potsWhy: 'Sus capas, luego un perfil y un tamaño cada una.',
  },
}

/** Spanish of the places on the boards. */
export const places: typeof placesEnglish = {
  title: 'Lugares',
  take: 'Toca una pieza, luego su lugar; o arrástrala.',
  free: (place: string) => `${place}, libre`,
  stands: (number: Name, place: string) => `${number} está en ${place}.`,
  where: (number: Name) => `¿Dónde está ${number}?`,
}
