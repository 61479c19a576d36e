import type { desk as english } from '../en/desk.ts'
import { board, places } from './board.ts'
import { measured } from './measured.ts'
import { melt } from './melt.ts'
import { pot } from './pot.ts'
import { shelf } from './shelf.ts'
import { stacks } from './stacks.ts'

/** Spanish of the screens for clean hands, a file a screen. */
export const desk: typeof english = {
  board,
  pot,
  places,
  stacks,
  measured,
  melt,
  shelf,
  demo: { here: 'Esto es el ejemplo.', leave: 'Volver a mis piezas' },
  back: 'Atrás',
  save: 'Guardar',
  done: 'Hecho',
  takeBack: 'Anular',
  range: (least: string, most: string) => `de ${least} a ${most}`,
  optional: (range: string) => `${range}, o vacío`,
  letters: (most: number) => `hasta ${most} letras`,
  wrong: {
    missing: (range: string) => `Rellena esto: ${range}.`,
    unreadable: (range: string) => `No es un número. Va ${range}.`,
    'not-whole': (range: string) => `Un número entero, ${range}.`,
    'out-of-range': (range: string) => `Solo ${range}.`,
    place: 'Una letra y un número, como B 3.',
    letter: 'Una letra mayúscula.',
    name: (most: number) => `Un nombre de 1 a ${most} letras.`,
  },
  meant: (text: string) => `¿${text}?`,
  holdHint: 'Mantén pulsado',
  form: {
    beaker: 'vaso',
    bowl: 'cuenco',
    bottle: 'botella',
    cup: 'taza',
    jar: 'tarro',
    plate: 'plato',
    cylinder: 'cilindro',
    lid: 'tapa',
  },
  size: { small: 'pequeño', medium: 'mediano', large: 'grande' },
  pattern: {
    hatch: 'rayas',
    wave: 'ondas',
    dots: 'puntos',
    brick: 'ladrillo',
    cross: 'cruces',
    dash: 'trazos',
    ring: 'aros',
    chevron: 'espiga',
  },
}
