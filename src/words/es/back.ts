import type { back as english } from '../en/back.ts'
import { isOne } from './counts.ts'

const coats = (n: number): string => (isOne(n) ? '1 capa' : `${n} capas`)

/** Spanish of looking back: plots, a glaze's results, a story that is played. */
export const back: typeof english = {
  title: 'Mirar atrás',
  toStory: 'Su historia',
  tap: 'Toca una marca: qué es, y su historia.',
  asTable: (n: number) => `Como tabla: ${n}`,
  results: {
    unknown: 'No hay tal esmalte',
  },
  film: {
    play: 'VER',
    stop: 'PARAR',
    again: 'OTRA VEZ',
    next: 'SIGUE',
    before: 'ATRÁS',
    part: (n: number, of: number) => `Parte ${n} de ${of}`,
    bare: 'Bizcocho desnudo',
    waxed: 'Pie encerado',
    coat: (n: number, glaze: string) => `Capa ${n}: ${glaze}`,
    under: (cover: string, seconds: string, thick: string | undefined) =>
      [cover, `${seconds} dentro`, thick].filter(Boolean).join(', '),
    thick: (mm: string) => `unos ${mm}`,
    wait: 'Se seca',
    waited: (span: string) => `tras ${span}`,
    water: (grams: number) => `${grams} g de agua dentro`,
    loaded: (place: string) => `Al horno, lugar ${place}`,
    inKiln: 'En el horno',
    fire: 'Se funde',
    fired: (span: string) => `horno encendido ${span}`,
    cone: (cone: string) => `cono ${cone} caído`,
    photo: 'Como salió',
  },
  runs: {
    title: 'Cuánto escurre, dicho y hallado',
    none: 'Aún no hay nada dicho y hallado. Aquí va cada pieza juzgada cuyos esmaltes tienen probetas.',
    said: (n: number, within: number, farther: number, less: number) =>
      isOne(n)
        ? `1 pieza: ${within ? 'quedó en lo dicho' : farther ? 'escurrió más de lo dicho' : 'escurrió menos de lo dicho'}.`
        : `${within} de ${n} piezas en lo dicho; ${farther} escurrieron más, ${less} menos.`,
    edges: (none: number, shelf: number) =>
      [none > 0 ? `${none} sin escurrir.` : '', shelf > 0 ? `${shelf} hasta la placa.` : '']
        .filter(Boolean)
        .join(' '),
    x: { metric: 'dicho, mm', us: 'dicho, in' },
    y: { metric: 'hallado, mm', us: 'hallado, in' },
    noRun: 'nada',
    shelf: 'placa',
    legend: {
      dot: 'fijado antes de abrir',
      ring: 'según las probetas',
      down: 'no escurrió',
      up: 'en la placa',
      bar: 'escurrió, sin medir',
    },
    line: (pot: string, told: string, low: string, high: string, found: string) =>
      `Pieza ${pot}: dicho ${told} (de ${low} a ${high}), hallado ${found}.`,
    heads: ['Pieza', 'Dicho', 'Desde', 'Hasta', 'Encontrado'],
  },
  waits: {
    title: 'Esperas, prueba a prueba',
    none: 'Aún sin pruebas. SECA y AÚN NO enseñan las esperas, y también una pieza en la balanza.',
    said: (checks: number, low: string, high: string, was: string, wasHigh: string) =>
      isOne(checks)
        ? `1 prueba: una hora calculada va de ${low} a ${high} para todas las capas por igual. Sin pruebas: de ${was} a ${wasHigh}.`
        : `${checks} pruebas: una hora calculada va de ${low} a ${high} para todas las capas por igual. Sin pruebas: de ${was} a ${wasHigh}.`,
    coat: (low: string, high: string) => `Una capa sola varía más: de ${low} a ${high}.`,
    x: 'pruebas',
    y: 'min por hora calculada',
    legend: { solid: 'todas las capas', hatch: 'una capa sola', dot: 'tras esta prueba' },
    before: (low: string, high: string) => `Sin pruebas: de ${low} a ${high}.`,
    line: (checks: number, pot: string, glaze: string, low: string, high: string) =>
      `Prueba ${checks}, pieza ${pot}, ${glaze}: de ${low} a ${high}.`,
    heads: ['Prueba', 'Pieza', 'Esmalte', 'Desde', 'Hasta'],
  },
  density: {
    title: 'La densidad de un cubo',
    none: 'De este cubo aún no se bañó ninguna capa ni se pesó un vaso.',
    bucket: 'Cubo',
    said: (name: string, n: number, low: string, high: string) =>
      low === high ? `${name}: ${coats(n)}, todas a ${low}.` : `${name}: ${coats(n)} de ${low} a ${high}.`,
    within: (n: number, low: string, high: string) => `${n} en su objetivo, de ${low} a ${high}.`,
    weighed: (n: number) =>
      isOne(n) ? '1 vaso pesado de este llenado.' : `${n} vasos pesados de este llenado.`,
    thinner: (n: number) => (isOne(n) ? 'Se añadió agua una vez.' : `Se añadió agua ${n} veces.`),
    x: 'día',
    y: 'g/mL',
    legend: {
      ring: 'una capa',
      square: 'un vaso pesado',
      hatch: 'objetivo',
      w: 'w: más líquido, se añadió agua',
      line: 'a rayas: llenado nuevo',
    },
    dipped: (pot: string, moment: string, density: string) => `Pieza ${pot}, ${moment}: bañada a ${density}.`,
    cup: (moment: string, density: string) => `Un vaso, ${moment}: ${density}.`,
    cupName: 'vaso',
    heads: ['Qué', 'Cuándo', 'Densidad'],
  },
}
