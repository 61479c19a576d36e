import type { fire as english } from '../en/fire.ts'
import { about, at, hour } from './clocks.ts'
import { isOne } from './counts.ts'

/** Spanish of a load in the fire. */
export const fire: typeof english = {
  conesFall: (cone: string, at: string) => `Cono ${cone} ${about(at)}`,
  overdue: (cone: string, at: string) =>
    `El cono ${cone} tenía que caer ${about(at)}: mira ahora, o lee otra vez`,
  still: (cone: string, seen: string, again: string) =>
    `Cono ${cone} aún de pie ${at(seen)}: mira otra vez ${at(again)}`,
  between: (from: string, to: string) => `(de ${from} a ${to})`,
  decides: 'Decide el cono que está en el horno.',
  early: (within: string) =>
    `Cuándo cae el cono se dice con dos lecturas a media hora una de otra, a menos de ${within} de él.`,
  oneMore: 'Una lectura más, media hora tras la última, y se dice la hora del cono.',
  untold: (cone: string, end: string, from: string) =>
    `La hora de un cono de esta clase no se dice. El cono ${cone} figura a ${end}: mira desde ${from}.`,
  holdUntil: (clock: string) => `Mantén hasta ${clock}`,
  offEarlier: 'Se apagó antes',
  seen: (cone: string, stand: string, clock: string) => `Cono ${cone} ${stand}, visto ${clock}`,
  past: (cone: string, wanted: string, clock: string) =>
    `Cono ${cone} caído ${at(clock)}: más allá del cono ${wanted}`,
  down: (cone: string, clock: string) => `Cono ${cone} caído ${at(clock)}`,
  candling: (boils: string) =>
    `Por debajo de ${boils}, extracción abierta. Secas: vidrio frío sin vaho dos veces, separadas 20 min.`,
  glassFogged: (clock: string) => `Empañado ${at(clock)}`,
  steams: {
    unclear: (temp: string) =>
      `${temp}, y el vidrio no salió limpio dos veces: las piezas mojadas revientan. Frena o baja, y prueba el vidrio.`,
    fogged: (temp: string, clock: string) =>
      `El vidrio se empañó ${at(clock)}, y ahora ${temp}: las piezas mojadas revientan. Frena o baja, y prueba otra vez el vidrio.`,
    atHeat: (temp: string, clock: string) =>
      `Se empañó ${at(clock)}, a ${temp}: hay vapor en las piezas. Baja ya, por debajo de la ebullición, o revientan.`,
    wet: (pots: string, many: boolean) =>
      many
        ? `${pots} entraron mojadas: el vapor las revienta. Por debajo de la ebullición hasta que el vidrio salga limpio dos veces.`
        : `${pots} entró mojada: el vapor la revienta. Por debajo de la ebullición hasta que el vidrio salga limpio dos veces.`,
  },
  glassFrom: (clock: string) => `Demasiado frío para dar vapor hasta ${hour(clock)}.`,
  glassEarly: (clock: string, from: string) =>
    `Limpio ${at(clock)} no cuenta: demasiado frío para dar vapor hasta ${hour(from)}.`,
  glassClear: (clock: string, again: string) => `Limpio ${at(clock)}. Otra vez desde ${hour(again)}.`,
  glassDry: (clock: string) => `Limpio desde ${hour(clock)}: secas. Si se empaña otra vez, sigue secando.`,
  both: (load: string) => `${load}: también está caliente en este horno. Una de las dos está mal: corrígela.`,
  cold: 'Bastante frío para sacar.',
  offset: (cone: string, shown: string, chart: string) =>
    `El cono ${cone} cayó con ${shown} en el termómetro; su tabla dice ${chart}.`,
  stands: (cone: string, shown: string, chart: string) =>
    `El cono ${cone} está de pie con ${shown} en el termómetro; según su tabla cae a ${chart}.`,
  learned: (degrees: string, spread: string, n: number) =>
    isOne(n)
      ? `Este horno está ${degrees} de lo que muestra, más o menos ${spread} (1 cono).`
      : `Este horno está ${degrees} de lo que muestra, más o menos ${spread} (${n} conos).`,
  hotter: (degrees: string) => `${degrees} más caliente`,
  cooler: (degrees: string) => `${degrees} más frío`,
  use: 'Usarlo',
  odd: 'Difiere mucho. ¿Qué está mal? Si nada, el horno es así.',
  coneWrong: 'El cono',
  readingWrong: 'Una lectura',
  kilnIsSo: 'Nada',
}
