import type { measured as english } from '../en/measured.ts'
import type { Name } from '../name.ts'
import { at } from './clocks.ts'
import { isOne } from './counts.ts'

const percentOff = (x: number): number => Math.round((x - 1) * 100)

/** A factor on an estimate as a person says it. */
const beside = (x: number, more: string, less: string, same: string): string => {
  const percent = percentOff(x)
  return percent === 0 ? same : `un ${Math.abs(percent)} % ${percent > 0 ? more : less}`
}

const signed = (percent: number): string => (percent < 0 ? `−${-percent}` : `+${percent}`)

/** The range of such a factor: "de −5 a +30 %". */
const spread = (low: number, high: number): string =>
  `de ${signed(percentOff(low))} a ${signed(percentOff(high))} %`

/** Spanish of what is measured: the day's air, the clay, a glaze's pick-up, and what the room has taught. */
export const measured: typeof english = {
  air: {
    old: (ago: string) => `Anotado hace ${ago}. ¿Sigue así?`,
    still: 'Sin cambio',
    pair: 'Dos termómetros',
    dry: 'El seco marca',
    wet: 'El mojado marca',
    hung: 'El mojado estaba',
    hungs: { fanned: 'ventilado', natural: 'en corriente', still: 'en aire quieto' },
    pairRh: (rh: string) => `Humedad ${rh}.`,
    tooDry: 'No hay aire tan seco: ¿el mojado estaba ventilado, o en corriente?',
    icy: 'La mecha puede estar helada: mírala.',
    wetAbove: 'El mojado no puede marcar más que el seco.',
    take: 'Tomarlo',
    cloth: 'Paño testigo',
    clothHelp: 'Un paño escurrido, colgado de dos puntas entre las piezas, pesado dos veces.',
    wide: 'Ancho del paño',
    high: 'Alto del paño',
    weight: 'Pesa ahora',
    hang: 'Paño colgado',
    hanging: (clock: string, ago: string) => `Colgado ${at(clock)}, hace ${ago}. Pésalo a los 20 a 60 min.`,
    reading: 'Tomar la lectura',
    lost: (grams: string, span: string) => `El paño perdió ${grams} g en ${span}: `,
    pace: { slow: 'aire lento.', fast: 'aire rápido.', as: 'como se calculó.' },
    factor: (x: number) => `El aire se lleva ${beside(x, 'más de lo', 'menos de lo', 'lo')} calculado.`,
    noAir: 'Este aire no se lleva nada: un paño no dice nada.',
    wrong: 'No puede haber perdido eso: pesa otra vez.',
    forget: 'Olvidarlo',
    more: 'Altitud, piezas frías',
    altitude: 'Sobre el mar',
    pots: 'Las piezas llegaron a',
    dew: (dew: string, mm: string) =>
      `Por debajo de ${dew} se forma rocío: ${mm} mm por hora. Caliéntalas, sécalas con un paño.`,
    noDew: (dew: string) => `Sin rocío: se forma por debajo de ${dew}.`,
  },
  clay: {
    dips: 'Dos baños de agua',
    help: 'Una probeta seca, pesada; un baño corto en agua, pesada; otro más largo por la misma cara, pesada.',
    area: 'Cara que se mojó',
    firstS: 'Primero, segundos',
    firstG: 'Ganó',
    secondS: 'Luego, segundos',
    secondG: 'Ganó en total',
    drinks: (x: number) =>
      `Este barro bebe ${beside(x, 'más rápido de lo', 'más lento de lo', 'como lo')} supuesto.`,
    wrong: 'El baño más largo tiene que ganar más.',
    soak: 'Una pieza en agua',
    soakHelp:
      'Una pieza seca sin cera, pesada. Bajo agua, llena por dentro: estos segundos dicen qué tan rápido bebe, 10 min cuánto le cabe. Quita las gotas y pésala. Nada de esmalte hasta que esté seca otra vez.',
    pot: 'Pieza',
    under: 'Segundos dentro',
    dry: 'Seca',
    wet: 'Mojada',
    holds: (percent: string) => `A este barro le cabe un ${percent} % de su peso.`,
    little: 'Muy pocos gramos para saber: una pieza mayor, o más tiempo.',
    between: 'Casi llena, así no dice ni lo uno ni lo otro: menos segundos con una pieza seca, o 10 min.',
    never: 'Ninguna pieza hace eso: pesa otra vez.',
  },
  glaze: {
    weighed: '¿Sin aguja? Pesa la probeta',
    help: 'Justo después de 3 s, con todo lo mojado, menos su peso en seco.',
    gain: 'Ganó',
    area: 'Superficie que se mojó',
    is: (mm: string) => `Eso es ${mm}.`,
    pickUp: (x: number, low: number, high: number) =>
      `La capa sale ${beside(x, 'más gruesa de lo', 'más fina de lo', 'como lo')} calculado (${spread(low, high)}).`,
    slide: 'Película en pared llena: pesa un vidrio',
    slideHelp:
      'Un portaobjetos, pesado. Báñalo, deja que escurra como una pieza, quita la gota, pesa otra vez: gramos de las dos caras.',
    slideG: 'El vidrio ganó',
    slideArea: 'Las dos caras que se mojaron',
    slideIs: (mm: string, pa: string) =>
      `Una pared llena retiene ${mm}; su límite de fluencia es de ${pa} Pa como mucho.`,
    slideWas: (mm: string) => `Según su vidrio, una pared llena retiene ${mm}.`,
    slideWrong: 'Ningún esmalte deja esa película: pesa otra vez, las dos caras.',
    dose: 'Segundos y capa',
    on: (s: string, form: string, wall: string) => `${s} en ${form} (en seco), pared de ${wall}:`,
    at: (mm: string, density: string) => `${mm} a ${density}`,
    wanted: 'Capa que quieres',
    density: (s: string, density: string) => `${s} la dan a ${density}.`,
    noDensity: (s: string) => `Ninguna densidad la da en ${s}.`,
    seconds: (s: string, density: string) => `A ${density} mantén ${s}.`,
    tooQuick: (s: string, density: string) =>
      `A ${density} hacen falta menos de ${s}: añade agua al esmalte.`,
    noSeconds: (mm: string, density: string) => `A ${density} no hay segundos que basten: ${mm} como mucho.`,
  },
  dipped: {
    title: 'Una probeta bañada en vez de un vaso',
    help: 'Probetas de una misma tanda, bañadas los mismos segundos, las dos caras 100 cm² en total. Pésalas desnudas y, secas, al día siguiente. Guarda de una a tres justo tras leer la densidad.',
    gain: 'Ganó, en seco',
    says: {
      thin: 'Más líquido que su objetivo según esta probeta: pesa un vaso.',
      thick: 'Más denso que su objetivo según esta probeta: pesa un vaso.',
      nothing: 'Nada llama la atención. Solo un vaso dice la densidad.',
    },
    kept: (n: number) => (isOne(n) ? '1 probeta para comparar' : `${n} probetas para comparar`),
    keep: (density: string) => `Guardar como bañada a ${density}`,
    forget: 'Olvidarlas',
  },
  taught: {
    title: 'Lo que enseñó este taller',
    none: 'Aún nada. SECA y AÚN NO enseñan las esperas, y también una pieza en la balanza.',
    from: (n: number) => (isOne(n) ? 'De 1 prueba:' : `De ${n} pruebas:`),
    waits: (x: number, low: number, high: number) =>
      `Las capas esperan ${beside(x, 'más de lo', 'menos de lo', 'lo')} calculado (${spread(low, high)}).`,
    water: (x: number, low: number, high: number) =>
      `Los baños traen ${beside(x, 'más de agua que la', 'menos de agua que la', 'el agua')} calculada (${spread(low, high)}).`,
    glaze: (name: string, x: number, low: number, high: number) =>
      `${name} espera ${beside(x, 'más de lo', 'menos de lo', 'lo')} calculado (${spread(low, high)})`,
    board: (board: string, x: number, sittings: number) =>
      x > 1
        ? `La tabla ${board} seca un ${Math.round(Math.abs(x - 1) * 100)} % más lenta que las otras (${sittings} sesiones)`
        : `La tabla ${board} seca un ${Math.round(Math.abs(x - 1) * 100)} % más rápida que las otras (${sittings} sesiones)`,
    look: { damp: (clock: string) => `aún no ${clock}`, dry: (clock: string) => `seca ${clock}` },
    weighed: (grams: number, clock: string) => `${grams} g de esmalte y agua ${clock}`,
    older: (n: number) => (isOne(n) ? '1 anterior' : `${n} anteriores`),
    changed: 'El taller ha cambiado',
    changedHelp:
      'Una estufa, un ventilador, tablas movidas: qué tabla seca antes se aprende de nuevo desde ahora.',
    changedAt: (moment: string) => `Las tablas se aprenden de nuevo desde ${moment}.`,
    notChanged: 'No ha cambiado: contar todo otra vez',
    leave: 'No contar',
    again: 'Contar',
    dropped: {
      contradiction: 'sin usar: seca antes que húmeda',
      tooEarly: 'sin usar: antes del baño',
      never: 'sin usar: con ese aire no seca nunca',
      noGain: 'sin usar: no pesa más que su bizcocho',
    },
  },
  worth: {
    known: (factor: string) => `Las esperas se conocen con un factor de ${factor}.`,
    bought: (checks: number, before: string, now: string) =>
      `${checks} pruebas llevaron las esperas de un factor de ${before} a ${now}.`,
    clay: (factor: string) =>
      `Una pieza pesada seca y tras unos segundos en agua (Taller): factor ${factor}.`,
    scale: (pot: Name, coat: number, factor: string) =>
      `La pieza ${pot} en una balanza de cocina, desnuda y justo tras la capa ${coat}: factor ${factor}.`,
    touch: (pot: Name, coat: number, factor: string) =>
      `La pieza ${pot}, tocada cuando le toca a su capa ${coat}: factor ${factor}.`,
  },
  fit: {
    full: (coat: number) => `La pared se llena en la capa ${coat}.`,
    take: (seconds: string) => `${seconds} s caben hoy`,
    split: 'Interior hoy, exterior mañana',
    splitS: (inside: string, outside: string) => `${inside} s vertido, luego ${outside} s`,
    none: 'Hoy no cabe ningún segundo.',
  },
}
