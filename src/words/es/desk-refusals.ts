import type { deskRefusal as english } from '../en/desk-refusals.ts'

/** Spanish of what is refused where hands are clean. */
export const deskRefusal: typeof english = {
  'number-taken': (f: Facts) => `El número ${f.number} ya está en la mesa.`,
  'place-taken': (f: Facts) => `Ahí está la pieza ${f.number}.`,
  'letter-taken': (f: Facts) => `La letra ${f.letter} es de ${f.by}.`,
  'in-use': (f: Facts) => `Lo usa todavía ${f.by}.`,
  'hidden-letters': 'Tiene una letra que no se ve. Escribe el nombre de nuevo.',
  'too-long': (f: Facts) => `Como mucho ${f.most} letras.`,
  missing: 'Rellena esto.',
  'no-such-pot': 'Ninguna pieza tiene estas medidas. ¿Pared demasiado gruesa?',
  'not-a-cone': 'No es un cono de esta clase.',
  'unknown-tile': 'Esa probeta no está guardada.',
  'unknown-stack': 'Elige antes una serie.',
  'at-kiln': 'En el horno no puede ser.',
}

type Facts = Readonly<Record<string, string | number>>
