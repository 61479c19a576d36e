import type { add as addEnglish, board as boardEnglish, places as placesEnglish } from '../en/board.ts'
import type { Name } from '../name.ts'
import { isOne } from './counts.ts'

/** Spanish of the board. */
export const board: typeof boardEnglish = {
  title: 'Tablas',
  counts: (waiting: number, ready: number) => `${waiting} esperan, ${ready} listas`,
  pots: (n: number) => (isOne(n) ? '1 pieza' : `${n} piezas`),
  ends: (waiting: number, early: string, late: string) =>
    [
      ...(waiting > 0 ? [`${waiting} esperan`] : []),
      `todas bañadas ${early === late ? `hacia ${early}` : `de ${early} a ${late}`}`,
    ].join(', '),
  judge: (n: number) => `Juzgar ${isOne(n) ? '1 pieza' : `${n} piezas`}`,
  lookAgain: (n: number) => `Mirar otra vez ${isOne(n) ? '1 pieza' : `${n} piezas`}`,
  toSettle: (n: number) => `${isOne(n) ? '1 cosa' : `${n} cosas`} por aclarar`,
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
    check: 'mirar',
    stuck: 'decide',
    later: 'luego',
    never: 'nunca',
  },
  kiln: {
    dry: 'al horno',
    in: 'al horno en',
  },
  hours: (h: number, min: number) => `${h} h ${String(min).padStart(2, '0')}`,
  tile: (number: Name, place: string, state: string) => `Pieza ${number} en ${place}: ${state}`,
  empty: {
    title: 'Tabla vacía',
    lines: 'Tres cosas, en este orden.',
    bucket: 'Pon nombre a un cubo',
    bucketWhy: 'Su esmalte, su densidad, lo gruesa que puede ir.',
    stack: 'Planea una serie',
    stackWhy: 'Qué capas, en qué orden, cuánto tiempo.',
    pots: 'Pon piezas en la tabla',
    potsWhy: 'Un perfil y un tamaño: dos toques cada una.',
  },
}

/** Spanish of adding pots. */
export const add: typeof addEnglish = {
  title: 'Añadir piezas',
  which: '¿Qué forma?',
  size: '¿Qué tamaño?',
  own: 'propia',
  ownName: 'medidas propias',
  stack: 'Serie',
  many: 'Cuántas',
  fewer: 'menos',
  more: 'más',
  added: (numbers: string, places: string) => `${numbers} en ${places}`,
  next: (number: Name, place: string) => `sigue: ${number} en ${place}`,
  measures: (height: string, rim: string) => `${height} × ${rim}`,
  lid: 'Con tapa',
  lidHelp:
    'En el lugar siguiente, con capas propias. Asiento y canto quedan desnudos: ahí el esmalte los pega.',
  lidStack: 'Su tapa',
  look: 'Mira cada pieza por si hay grietas, y el cono testigo de su bizcocho.',
  cone: 'Su cono testigo',
  noStack: 'Antes hace falta una serie.',
  toStack: 'Planear una serie',
}

/** Spanish of the places on the boards. */
export const places: typeof placesEnglish = {
  title: 'Lugares',
  take: 'Toca una pieza, luego su lugar; o arrástrala.',
  free: (place: string) => `${place}, libre`,
  stands: (number: Name, place: string) => `${number} está en ${place}.`,
  where: (number: Name) => `¿Dónde está ${number}?`,
}
