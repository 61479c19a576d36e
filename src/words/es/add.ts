import type { add as english } from '../en/add.ts'
import type { Name } from '../name.ts'

/** Spanish of adding pots. */
export const add: typeof english = {
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
  number: 'Número siguiente',
  wrongNumber: 'Ese número no puede ser.',
  noBucket: 'Primero hace falta un cubo.',
  toBucket: 'Poner nombre a un cubo',
  coats: {
    of: (name: string) => `Capas: ${name}`,
    anew: 'Otras capas',
    title: 'Capas, en el orden en que van',
    help: 'Toda la pieza, 3 s cada una. Límites y segundos están en Series.',
    none: 'Toca el cubo de la primera capa.',
    nth: (bucket: string, nth: number) => `${bucket}, capa ${nth}`,
    name: 'Nombre de estas capas',
  },
}
