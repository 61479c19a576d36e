import type { cool as english } from '../en/cool.ts'
import { about, at, hour } from './clocks.ts'

/** Spanish of a load while it cools. */
export const cool: typeof english = {
  bungAt: (clock: string) => `Tapón fuera ${at(clock)}`,
  calendar: 'Al calendario',
  coldTwice: (clock: string) =>
    `La tapa se levantó en caliente: las piezas están más calientes que el aire a su lado. Lee otra vez desde ${hour(clock)}.`,
  fromNever: (from: string, never: string) => `de ${from} a ${never}`,
  lidAt: (temp: string, at: string) => `Tapa desde ${temp}: ${at}`,
  moreReadings: (below: string) => `Dos lecturas por debajo de ${below} desde ahora, y se dicen las horas.`,
  oneMore: (below: string) =>
    `Una lectura más por debajo de ${below}, cuando haya bajado, y se dicen las horas.`,
  openHot: (lid: string, out: string) =>
    `Tapa levantada por encima de ${lid}: el aire frío puede rajar piezas. No saques ninguna por encima de ${out}.`,
  openUnread: (out: string) => `Saca las piezas por debajo de ${out}: léelo.`,
  readAt: (temp: string, at: string) => `Lee otra vez a ${temp}, ${about(at)}`,
  readAtTemp: (temp: string) => `Lee otra vez a ${temp}`,
  thermometer: 'Es el sitio del termómetro, no el de las piezas.',
  unloadAt: (temp: string, at: string) => `Por debajo de ${temp}: ${at}`,
}
