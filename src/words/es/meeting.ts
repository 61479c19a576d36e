import type { meeting as english } from '../en/meeting.ts'
import type { Name } from '../name.ts'
import { isOne } from './counts.ts'

/** Spanish of what phones that met have in two ways. */
export const meeting: typeof english = {
  title: 'Por aclarar',
  left: (n: number) => (isOne(n) ? 'lo último' : `${n} por aclarar`),
  none: 'No queda nada por aclarar.',
  why: 'Dos teléfonos lo tienen de dos maneras. Se guardan ambas hasta que digas.',
  here: 'este teléfono',
  there: 'el otro teléfono',
  said: (clock: string, who: string) => `${clock}, ${who}`,
  coat: (pot: Name, glaze: string) => `La pieza ${pot} tiene ${glaze} dos veces`,
  coatWhy: 'La misma capa se bañó en dos teléfonos. Mira la pieza.',
  both: 'Se dieron las dos',
  only: 'Solo se dio esta',
  held: (seconds: string) => `${seconds} dentro`,
  number: (number: Name) => `Dos piezas ${number}`,
  becomes: (number: Name) => `Esta pasa a ser ${number}`,
  place: (place: string) => `Dos piezas en ${place}`,
  goesTo: (place: string) => `Esta va a ${place}`,
  letter: (letter: string) => `Dos cubos ${letter}`,
  relabel: (letter: string) => `Este pasa a ser ${letter}`,
  changed: {
    pot: (pot: Name) => `La pieza ${pot} se cambió dos veces`,
    stack: (name: string) => `La serie ${name} se cambió dos veces`,
    bucket: (name: string) => `El cubo ${name} se cambió dos veces`,
  },
  so: 'Es así',
  fact: {
    number: (number: Name) => `número ${number}`,
    place: (place: string) => `en ${place}`,
    stack: (name: string) => `serie ${name}`,
    whose: (name: string) => `pieza de ${name}`,
    heightMm: (length: string) => `${length} de alto`,
    rimMm: (length: string) => `borde ${length}`,
    bellyMm: (length: string) => `panza ${length}`,
    footMm: (length: string) => `pie ${length}`,
    wallMm: (length: string) => `pared ${length}`,
    footLineMm: (length: string) => `línea del pie ${length}`,
    coat: (glaze: string, seconds: string) => `${glaze} ${seconds}`,
    letter: (letter: string) => `letra ${letter}`,
    litres: (volume: string) => `${volume} dentro`,
    density: (density: string) => `baña a ${density}`,
    coatLimit: (thickness: string) => `capas de hasta ${thickness}`,
    other: 'con otros detalles',
  },
}
