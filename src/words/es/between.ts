import type { between as english } from '../en/between.ts'
import type { Name } from '../name.ts'
import { plain } from '../number.ts'
import { about } from './clocks.ts'
import { isOne } from './counts.ts'

/** Spanish of cards between dips: ready pots, a pour to bring back, a pause, the wax pan, what the person has to decide. */
export const between: typeof english = {
  readyMany: (n: number) => (isOne(n) ? '¿1 lista?' : `¿${n} listas?`),
  readyNext: (glaze: string) => `luego ${glaze}`,
  returnTitle: (name: string) => `Devuélvelo a ${name}`,
  pouredAgo: (ago: string) => `vertido hace ${ago}`,
  returnText: (amount: string) => `Lo que queda de los ${amount} que apartaste.`,
  heldText: 'No empieza ningún baño. El secado sigue.',
  heldWhere: 'Estabas en:',
  heldArmed: (number: Name, name: string, s: number) => `${number} en ${name}, ${plain(s)} s`,
  heldLine: {
    drips: (number: Name) => `${number} escurre`,
    'foot-not-sponged': (number: Name) => `${number}: pie sin limpiar`,
    wait: (number: Name) => `${number} se está secando`,
    ready: (number: Name) => `${number} lista para tocar`,
    'dip-next': (number: Name) => `${number} se puede bañar`,
    wax: (number: Name) => `${number}: pie por encerar`,
    wipe: (number: Name) => `${number} por limpiar`,
    'foot-check': (number: Name) => `${number}: pie por revisar`,
  },
  heldWax: (on: string) => `La olla de cera está ENCENDIDA, ${on}. Apágala antes de irte: Corregir, Más.`,
  panTitle: (on: string) => `Olla de cera ENCENDIDA, ${on}`,
  panWarms: (clock: string) => `Olla ENCENDIDA, caliente ${about(clock)}.`,
  panDone: 'Pies encerados. ¿Olla apagada?',
  panAsk: '¿Estás al lado?',
  panClosing: 'Todas las capas puestas. Apágala ahora.',
  panCaution:
    'Usa su termostato, la extracción en marcha, mangas y cubos lejos. Si arde: apágala, tápala, nunca agua.',
  askText: (s: number) => `¿Estuvo dentro ${plain(s)} s?`,
  stuckUncounted: (number: Name) => `${number}: ¿cuántas capas lleva?`,
  stuckUncountedText: 'Raspa un canto, o pésala.',
  stuckStrayed: (number: Name, glaze: string) => `${number} recibió ${glaze}`,
  stuckStrayedText: (next: string) =>
    next === ''
      ? 'No era el plan. Sigue, o lávala: Corregir.'
      : `No era el plan. Luego iría ${next}. Sigue, o lávala: Corregir.`,
  stuckNoStack: (number: Name) => `${number} no tiene capas en el plan`,
  stuckNoBucket: (number: Name) => `${number}: su cubo ya no está`,
  stuckPlan: 'Dale una serie en las tablas.',
}
