import type { other as english } from '../en/other.ts'
import type { Name } from '../name.ts'
import { plain } from '../number.ts'
import { about } from './clocks.ts'
import { isOne } from './counts.ts'

/** Spanish of what is put right, of what keeps a melt off the shelf, and of ringing. */
export const other: typeof english = {
  count: {
    dipIn: 'DENTRO en',
    pourIn: 'VIERTE en',
    under: (s: number) => `luego ${plain(s)} s dentro`,
    inside: (s: number) => `luego ${plain(s)} s llena`,
  },
  hint: {
    wax: '¿Pie encerado? Golpea aquí con un nudillo.',
    wipe: '¿Toda limpia? Golpea aquí.',
    'foot-check': '¿Palpado todo alrededor? Golpea aquí.',
    stir: '¿Bien removido? Golpea aquí con un nudillo.',
    armed: '¿Pieza en mano? Golpea aquí y sigue el compás.',
    drip: '¿Limpia y en su lugar? Golpea aquí.',
    ready: 'Toca el esmalte. ¿Seca, o aún no?',
    return: '¿Todo devuelto? Golpea aquí.',
    held: '¿De vuelta? Golpea aquí.',
    'wax-pan': 'Mira la olla, luego responde.',
    'ask-dose': '¿Fue así? Nada se adivina.',
    lid: '¿Tapa puesta? Golpea aquí.',
    tools: '¿Todo lavado? Golpea aquí.',
    floor: '¿Todo fregado? Golpea aquí.',
  },
  ways: {
    stillLate: (span: string) => `${span} tarde para el horno`,
    inTime: 'A tiempo para el horno',
    latestStart: (clock: string) => `Último momento para empezar: ${clock}.`,
    way: {
      fan: () => 'Ventilador junto a las piezas',
      otherBoard: () => 'Otra tabla, junto a una ventana abierta',
      candling: () => 'Secar en el horno; primero su manual',
      skipCollar: (n: number) => (isOne(n) ? 'Sin franja en 1 pieza' : `Sin franja en ${n} piezas`),
      fewerCoats: (n: number) => (isOne(n) ? 'Una capa menos en 1 pieza' : `Una capa menos en ${n} piezas`),
      nextFiring: (n: number) =>
        isOne(n) ? '1 pieza a la próxima cocción' : `${n} piezas a la próxima cocción`,
    },
    ends: (when: string, then: string, outOfTen: number) =>
      `último baño ${when}, ${then}; a tiempo ${outOfTen} de 10`,
    none: 'Buscando salidas.',
  },
  other: {
    back: 'Atrás',
    takeBack: 'Anular',
    anotherPot: 'Otra pieza',
    anotherBucket: 'Otro cubo',
    wasPot: 'Era otra pieza',
    wasBucket: 'Era otro cubo',
    logDip: 'Anotar un baño',
    screens: 'Otras páginas',
    toSettle: (n: number) => `${n} por aclarar`,
    otherHands: 'La bañó la otra persona',
    about: (number: Name, glaze: string) => (glaze === '' ? `${number}` : `${number} en ${glaze}`),
    held: 'Cambiar los segundos',
    earlier: 'La saqué antes',
    more: 'Más',
    help: 'Ayuda',
    why: '¿Por qué?',
    dipInstead: (s: number, planned: number) => `Bañar ${plain(s)} s en vez de ${plain(planned)}`,
    leaveOut: 'Saltar esta capa',
    justNow: 'hace un momento',
    ago: (min: number) => `hace ${min} min`,
    earlierBy: (min: number) => `${min} min antes`,
    moreS: (s: number) => `+${plain(s)} s`,
    lessS: (s: number) => `−${plain(s)} s`,
    weighed: (grams: string) => `${grams} g`,
    makes: (s: number) => `en total ${plain(s)} s`,
    logged: (
      number: Name,
      s: number,
      build: string,
      planned: number | undefined,
      better: number | undefined,
    ) => {
      const next =
        planned === undefined
          ? ''
          : better === undefined
            ? ` Su próxima capa: ${plain(planned)} s.`
            : better > 0
              ? ` Su próxima capa: mejor ${plain(better)} s.`
              : ' Mejor salta su próxima capa.'
      return `${number}: ${plain(s)} s, ${build}.${next}`
    },
    coatsOn: (number: Name) => `${number}: capas que lleva`,
    notSure: 'no se sabe',
    weigh: 'Pesarla',
    weighBisque: (number: Name) => `${number} en bizcocho, seca`,
    weighNow: (number: Name) => `${number} como está ahora`,
    weighKeep: 'GUARDAR',
    pourInside: 'Verter primero por dentro',
    dab: 'Desconchón: retoca, deja secar, alisa con el dedo húmedo',
    dabGloves: 'usa guantes',
    panIsOn: (on: string, warm: string | undefined) =>
      warm === undefined ? `Olla ENCENDIDA, ${on}` : `Olla ENCENDIDA, ${on}, caliente ${about(warm)}`,
    panIsOff: 'Olla apagada',
    turnOff: 'Apagarla',
    turnOn: 'Encenderla',
    panCare: 'Termostato, extracción, mangas arriba.',
    gone: (number: Name) => `Quitar ${number} (mantén pulsado)`,
    pages: {
      pot: '¿Qué pieza?',
      bucket: '¿Qué cubo?',
      logged: '¿Cuándo salió?',
      held: '¿Cuánto duró?',
      earlier: '¿Cuánto antes?',
      more: 'Más',
      why: '¿Por qué?',
      weigh: 'En la balanza',
      shelf: 'Que no llegue a la placa',
      stray: 'Otro cubo',
      warnings: 'Antes de esta capa',
    },
  },
  remedy: {
    title: 'Que no llegue a la placa',
    edge: (glaze: string, mm: string) => `${glaze} hasta ${mm} del pie`,
    seconds: (glaze: string, s: number) => `${glaze} ${plain(s)} s`,
    skip: (glaze: string) => `Saltar ${glaze}`,
    stack: (name: string) => `Serie ${name}`,
    slab: 'Platillo',
    slabCare:
      'Las gotas cocidas cortan como navajas: usa guantes, y protege los ojos al picarlas o amolarlas.',
    slabMl: (ml: number) => `para ${ml} ml`,
    reaches: { clear: 'entonces lejos', near: 'entonces sin llegar a la placa' },
  },
  ring: {
    offer: '¿Sonar con la pantalla apagada? Detiene tu música mientras esperan piezas.',
    yes: 'SONAR',
    no: 'NO',
    next: (clock: string, places: string) => `Próxima ${clock}: ${places}`,
    ready: (places: string) => `${places} para tocar`,
    kilnDry: (places: string) =>
      places.includes(', ') ? `${places} secas para el horno` : `${places} seca para el horno`,
    noticeBody: 'Tócala, luego la próxima capa.',
    line: {
      proven: 'suena con la pantalla apagada',
      untested: 'aquí no se ha probado si suena',
      failed: 'no puede sonar: deja la pantalla encendida',
    },
    stopped: 'dejó de sonar: toca algo',
    calendar: 'AGENDAR',
  },
}
