import type { melt as english } from '../en/melt.ts'
import { isOne } from './counts.ts'

/** Spanish of flow tiles and the firing. */
export const melt: typeof english = {
  tile: {
    title: 'Probetas de flujo',
    line: (dry: string, run: string, n: number) =>
      isOne(n)
        ? `${dry} en seco escurren unos ${run}: 1 probeta`
        : `${dry} en seco escurren unos ${run}: ${n} probetas`,
    none: 'Aún sin probeta de flujo: no se sabe cuánto escurre.',
    on: 'Bañada sobre',
    alone: 'la probeta desnuda',
    over: (glaze: string) => `sobre ${glaze}`,
    runs: (dry: string, likely: string, high: string) =>
      `${dry} en seco escurren unos ${likely}, hasta ${high}.`,
    spread: (likely: string, low: string, high: string) =>
      `Dosis de flujo ${likely} /mm, de ${low} a ${high}`,
    drips: (factor: string) => `las gotas llegan ${factor} veces más lejos`,
    noPair: 'Sin probeta de esta pareja: vale la mayor dosis de las dos, y sigue sin probar.',
    carried: (from: string, to: string) =>
      `Llevado del cono ${from} al ${to}, con más margen. Cuece una probeta nueva.`,
    fired: (cone: string, rise: string) => `cono ${cone}, ${rise}`,
    held: (hold: string) => `mantenido ${hold}`,
    stripe: (dry: string, run: string) => `${dry} escurrieron ${run}`,
    remove: 'Quitar',
    removed: 'Quitada.',
    make: 'Medir una probeta cocida',
    how: 'De pie, bañada una, dos, tres veces. Mide cada capa seca con el calibre que usas en las piezas; tras la cocción, cuánto bajó su borde.',
    howPair: 'De una pareja: el grosor seco de las dos capas juntas.',
    care: 'Las gotas cocidas cortan como navajas: usa guantes, y protege los ojos al picarlas o amolarlas.',
    stripeOf: (n: number) => `Banda ${n}`,
    dry: 'Capa seca',
    band: 'Alto de la banda',
    bandHelp: 'Antes de la cocción.',
    run: 'Bajó, en promedio',
    longest: 'La gota más larga',
    more: 'Otra banda',
    less: 'Una banda menos',
    firing: 'Cocida a',
    gives: (dose: string) => `Da una dosis de flujo de ${dose} /mm.`,
    keep: 'Guardar esta probeta',
  },
  firing: {
    title: 'La cocción del esmalte',
    asTile: 'Nadie lo ha dicho: se toma como se coció la última probeta.',
    unsaid: 'Nadie lo ha dicho. Con esta cocción se calcula cuánto escurre.',
    cone: 'Cono',
    coneHint: (first: string, last: string) => `de ${first} a ${last}`,
    notACone: (first: string, last: string) => `No hay tal cono: de ${first} a ${last}.`,
    otherMake: 'Ese es un cono de la otra clase.',
    make: 'Clase de cono',
    care: 'Primero, el manual del fabricante y las normas locales. Alguien se queda junto al horno mientras está encendido.',
    makes: { american: 'americano', seger: 'Seger' },
    makeHelp: 'El mismo número de otra clase es otro cono.',
    rise: 'Subida al final',
    riseHelp: 'En los últimos 100 °C.',
    hold: 'Mantener arriba',
    top: 'Temperatura máxima',
    falls: (cone: string, temp: string, rise: string) =>
      `El cono ${cone} cae hacia ${temp}, subiendo ${rise}.`,
    unsure: 'Más allá de la tabla: la columna más próxima.',
    query: (typed: string, nearest: string, cone: string, temp: string) =>
      `${typed} va con el cono ${nearest}. El cono ${cone} cae a ${temp}. ¿Cuál es?`,
    wasCone: (cone: string) => `Cono ${cone}`,
    dropTop: (cone: string) => `Solo cono ${cone}`,
    besides: (rise: string, temp: string) => `Subiendo ${rise}: hacia ${temp}.`,
    mark: { chart: '', list: '', memory: 'De memoria.' },
    log: 'Lecturas de una cocción',
    logHint: '14:00 1050, 15:10 1160, ...',
    logWrong: 'Una hora y una temperatura cada vez, como 14:00 1050.',
    logKeep: 'Guardar lecturas',
    reached: (cone: string) => `Su calor tumbó el cono autoportante ${cone}.`,
    reachedNone: 'Su calor no tumbó ningún cono.',
    degrees: { metric: (n: number) => `${n} °C`, us: (n: number) => `${n} °F` },
    next: (cone: string, kelvins: string) => `Al cono ${cone} le faltaron unos ${kelvins}.`,
    ahead: (cone: string, likely: string, low: string, high: string) =>
      `El cono ${cone} cae probablemente ${likely} tras la última lectura, de ${low} a ${high}.`,
    pyrometer: 'Solo según el termómetro: decide el cono que está en el horno.',
  },
  cooling: {
    title: 'Enfriamiento',
    more: (temp: string) =>
      `Dos lecturas por debajo de ${temp}, con una hora entre ellas, dicen cuándo se puede abrir.`,
    lid: (temp: string) => `Tapa cerrada por encima de ${temp}`,
    unload: (temp: string) => `Piezas fuera por debajo de ${temp}`,
    line: (goal: string, likely: string, low: string, high: string) =>
      `${goal}: probablemente ${likely} tras la última lectura, de ${low} a ${high}.`,
    reached: (goal: string) => `${goal}: alcanzado.`,
    beyond: 'más de 96 h',
    dayOn: 'más de un día',
    again: (temp: string) => `La próxima lectura dice más hacia ${temp}.`,
    care: 'Por fuera quema. La lectura es del aire en el termómetro, no de las piezas. Primero, el manual del horno y las normas locales.',
  },
  ticket: {
    title: 'Una probeta que va con la hornada',
    one: (glaze: string, pots: string) => `${glaze}: nunca probado, en ${pots}`,
    pair: (over: string, under: string, pots: string) =>
      `${over} sobre ${under}: nunca cocidos juntos, en ${pots}`,
    dips: (glaze: string, band: string) => `Baña ${glaze} una, dos, tres veces en bandas de ${band} de alto.`,
    under: (glaze: string) => `Da antes a la probeta ${glaze}, como en las piezas.`,
    measure: 'Mide cada banda seca con el calibre que usas en las piezas, y escríbelo por detrás.',
    stand: 'Ponla de pie sobre un platillo junto al cono testigo.',
    enter: 'Anótala tras la cocción',
    decides: (pots: string) => `Decide ${pots}: con platillo debajo o sin él.`,
    nothing: 'Ninguna probeta cambiaría aquí lo que va sobre platillo.',
  },
}
