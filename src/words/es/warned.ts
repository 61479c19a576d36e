import type { warned as english } from '../en/warned.ts'
import { plain } from '../number.ts'
import { about, hour } from './clocks.ts'
import { isOne } from './counts.ts'

/** Spanish of what is warned of before a dip, and of days. */
export const warned: typeof english = {
  where: {
    outside: {
      foot: 'justo sobre el pie',
      skirt: 'abajo por fuera',
      body: 'bajo la panza',
      collar: 'bajo el labio',
      inside: 'el fondo',
    },
    inside: 'el fondo',
    halfway: 'a media altura por fuera',
    neck: 'justo dentro del borde',
    overlap: 'donde se cruzan las mitades',
  },
  zone: {
    foot: 'pie',
    skirt: 'falda',
    body: 'cuerpo',
    collar: 'franja del borde',
    inside: 'interior',
    overlap: 'cruce',
    half: 'una mitad',
    otherHalf: 'otra mitad',
  },
  warning: {
    over: (zone: string, mm: string, limit: string) =>
      `${zone} ${mm}, límite ${limit}: capa demasiado gruesa`,
    close: (zone: string, mm: string, limit: string) => `${zone} puede llegar a ${mm}, límite ${limit}`,
    seconds: (s: number) => `cabrían ${plain(s)} s`,
    skip: 'Mejor sin esta capa',
    runOver: (room: string) => `Puede escurrir por los ${room} sin esmalte del pie hasta la placa`,
    runNear: (run: string, room: string) => `Puede escurrir ${run} de los ${room} sin esmalte del pie`,
    runUnknown: 'No se sabe si escurre: aún sin probeta',
    runSlab: 'Puede escurrir: va sobre un platillo',
    edge: (mm: string) => `Deja ${mm} libres desde el pie, o usa un platillo`,
    catch: 'Usa un platillo',
    carried: 'probado en otra cocción',
    thin: (low: string, high: string) => `La pared está llena: ahora de ${low} a ${high}.`,
    thinLikely: (mm: string, low: string, high: string) =>
      `Probablemente fina: ahora ${mm}, de ${low} a ${high}.`,
    thinOne: (mm: string) => `La pared está llena: ahora ${mm}.`,
    thinAgain: (mm: string, clock: string) => `${mm} desde ${clock}, más o menos.`,
    held: (clock: string) => `Sus segundos cuentan con esperar hasta ${hour(clock)}: antes sale más fina`,
    thinWait: 'Más segundos no ayudan, esperar sí.',
    repair: (s: number) => `Así el plan. Tras el fallo mejor ${plain(s)}\u00a0s`,
    repairSkip: 'Así el plan. Tras el fallo mejor sin ella',
    neck: 'El cuello es demasiado estrecho para llenarse a tiempo: vierte por dentro',
    dew: (pot: string, dew: string) =>
      `Caliéntala primero: la pieza está a ${pot}, y bajo ${dew} se forma rocío`,
    pair: {
      untried: (upper: string, lower: string, zone: string) => `${upper} sobre ${lower}, ${zone}: sin probar`,
      'went-wrong': (upper: string, lower: string, zone: string) =>
        `${upper} sobre ${lower}, ${zone}: antes salió mal`,
    },
    ran: {
      shelf: (pot: string, glaze: string, times: string) =>
        `${pot} escurrió hasta la placa: ${glaze} escurre ${times}`,
      'past-foot': (pot: string, glaze: string, times: string) =>
        `${pot} pasó la línea del pie: ${glaze} escurre ${times}`,
      ran: (pot: string, glaze: string, times: string) => `${pot} escurrió: ${glaze} escurre ${times}`,
      drip: (pot: string, glaze: string) => `A ${pot} le bajó una gota mucho más que el resto: ${glaze}`,
      'all-the-same': (pot: string, glaze: string) => `${pot} escurrió hasta la placa: ${glaze}`,
      gone: (_pot: string, glaze: string) => `${glaze}: se quitaron resultados de cómo escurre`,
    },
    ofTiles: (times: string) => `${times} veces lo que dicen sus probetas`,
    thanUsed: (times: string, used: string) => `${times}, no ${used} como en el plan`,
    crawled: (pot: string, glaze: string, mm: string) => `${pot} se recogió: ${glaze} por debajo de ${mm}`,
    overUnder: (upper: string, lower: string) => `${upper} sobre ${lower}`,
    fit: {
      mouth: 'Más ancha que el cubo: viértelo, o toma uno más ancho',
      tongs: 'Sin sitio para las pinzas al lado',
      overflow: 'El cubo rebosará',
    },
    level: (level: string, needs: string) => `El esmalte tiene ${level} de fondo, esta pieza pide ${needs}`,
    density: (now: string, target: string) => `El esmalte marca ${now}, su objetivo es ${target}`,
    more: (n: number) => (n === 0 ? 'Qué hacer' : isOne(n) ? '1 aviso más' : `${n} avisos más`),
    notes: (n: number) => (isOne(n) ? '1 cosa que saber' : `${n} cosas que saber`),
  },
  days: {
    tomorrow: (clock: string) => `mañana ${clock}`,
    yesterday: (clock: string) => `ayer ${clock}`,
    on: (clock: string, day: string) => `${day} ${clock}`,
    date: "d 'de' LLLL",
    dateOfYear: "d 'de' LLLL 'de' yyyy",
    about,
    in: (span: string) => `en ${span}`,
    ago: (span: string) => `hace ${span}`,
  },
}
