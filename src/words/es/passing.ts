import type { passing as english } from '../en/passing.ts'
import { isOne } from './counts.ts'

const many = (count: number, one: string, more: string) => (isOne(count) ? `1 ${one}` : `${count} ${more}`)

/** One after another, "y" turned to "e" where the last one begins with its sound. */
const all = (parts: readonly string[]): string => new Intl.ListFormat('es').format(parts)

/** Spanish of passing to another phone and taking in from it. */
export const passing: typeof english = {
  title: 'Otro teléfono',
  how: 'Un teléfono muestra, el otro lee. Manos mojadas muestran. Manos secas sujetan la cámara.',
  private: 'Nada va por el aire ni por una red: lo que muestra una pantalla es lo que ve el otro.',
  show: 'MOSTRAR',
  read: 'LEER',
  showBack: 'MOSTRARLE',
  file: 'Sacar o incorporar una copia',
  called: (name: string) => `Donde hay tres, los otros llaman a este teléfono ${name}.`,
  notes: 'Una nota es una cosa dicha o hecha: una pieza puesta, un baño, un toque.',
  counting: 'Se está contando un baño. Primero, eso.',
  toBench: 'A LA MESA',
  demo: 'El ejemplo queda en este teléfono. Abre antes tu propia mesa.',
  showTitle: 'Mostrar',
  hold: 'La cámara de 15 a 25 cm por encima.',
  shown: (records: number, of: number, seconds: number) =>
    records === 0
      ? 'Dice quién es. No hay más que pasar.'
      : records < of
        ? `Las últimas ${records} de ${of} notas, unos ${seconds} s.`
        : `Las ${records} notas, unos ${seconds} s.`,
  back: (records: number, seconds: number) =>
    isOne(records)
      ? `1 nota que le falta, unos ${seconds} s.`
      : `${records} notas que le faltan, unos ${seconds} s.`,
  tooMuch: 'Demasiado para mostrarlo. Pasa un archivo.',
  coarse: 'Más grande',
  fine: 'Más fino',
  shownLong: 'Lleva dos minutos mostrado.',
  done: 'HECHO',
  again: 'MOSTRAR OTRA VEZ',
  readTitle: 'Leer',
  stop: 'PARAR',
  looking: 'Ponlo sobre el código del otro teléfono.',
  closer: 'Más cerca, sin reflejos, y quieto.',
  coarser: 'En el otro teléfono: Más grande.',
  part: (known: number, of: number) => `${known} de ${of}`,
  own: 'Es el código de este mismo teléfono.',
  ownClock: (by: string, ahead: boolean) =>
    ahead
      ? `El reloj del otro teléfono va ${by} adelantado. Pon bien antes el que falla.`
      : `El reloj del otro teléfono va ${by} atrasado. Pon bien antes el que falla.`,
  damaged: 'No está entero. Nada ha cambiado. Leyendo otra vez.',
  newer: 'Hecho por una versión más nueva de esta app. Actualiza antes esta.',
  unkept: 'No se pudo guardar. Nada ha cambiado.',
  camera: {
    refused: 'Aquí no se permite la cámara. Permítela en los ajustes del teléfono, o pasa un archivo.',
    none: 'Sin cámara. Pasa un archivo.',
    busy: 'Otra app tiene la cámara. Ciérrala, luego LEER otra vez.',
  },
  camPrivate: 'Las imágenes se miran y se tiran.',
  took: (coats: number, pots: number, others: number) => {
    const parts = [
      ...(coats > 0 ? [many(coats, 'capa', 'capas')] : []),
      ...(pots > 0 ? [many(pots, 'pieza', 'piezas')] : []),
      ...(others > 0 ? [many(others, 'nota más', 'notas más')] : []),
    ]
    return `${all(parts)} del otro teléfono.`
  },
  nothingNew: 'Nada nuevo. Todo está aquí.',
  waiting: (count: number) =>
    isOne(count)
      ? 'Una espera una actualización de esta app.'
      : `${count} esperan una actualización de esta app.`,
  faulty: (count: number) => (isOne(count) ? '1 nota dañada fuera.' : `${count} notas dañadas fuera.`),
  ahead: (count: number) =>
    isOne(count)
      ? '1 nota fuera: su reloj va un día adelantado.'
      : `${count} notas fuera: su reloj va un día adelantado.`,
  clocks: (by: string, ahead: boolean) =>
    ahead ? `Su reloj va ${by} adelantado.` : `Su reloj va ${by} atrasado.`,
  theyLack: (count: number) =>
    isOne(count) ? '1 nota de aquí aún no está allí.' : `${count} notas de aquí aún no están allí.`,
  more: 'Tiene más de lo que mostró. Muéstrale, luego lee otra vez.',
  both: 'Los dos teléfonos tienen lo mismo.',
  student: {
    title: 'Solo la mesa',
    why: 'Este teléfono muestra la mesa y nada más.',
    leave: 'Mantén para ver todas las páginas',
    leaveHint: 'Mantén 3 s',
  },
  next: 'Leer el siguiente teléfono',
  toBoard: 'Todas las piezas',
  class: {
    key: 'Una clase en una mesa',
    title: 'Clase',
    none: 'Aún no hay piezas en las tablas.',
    first: 'Añade un nombre. Luego toca sus piezas.',
    tap: (name: string) => `Toca las piezas de ${name}.`,
    name: 'Nombre',
    add: 'Añadir',
    has: (pots: number) => (pots === 0 ? '' : `${pots}`),
    pot: (number: number, at: string, whose = 'de nadie') => `Pieza ${number} en ${at}, ${whose}`,
    begun: (numbers: readonly number[]) =>
      isOne(numbers.length)
        ? `${all(numbers.map(String))} ya lleva capas y no está en el plan. MOSTRAR y LEER pasan todo.`
        : `${all(numbers.map(String))} ya llevan capas y no están en el plan. MOSTRAR y LEER pasan todo.`,
    sheet: 'Hoja de clase',
    show: 'Mostrar el plan',
    plan: 'Plan de clase',
    how: 'En cada teléfono: Taller, Guardar, Otro teléfono, LEER. Luego toca el nombre.',
    nobody: 'Aún de nadie',
    kiln: 'horno',
    whose: '¿De quién es este teléfono?',
    everyone: 'Todas las piezas',
    take: (name: string | undefined, numbers: readonly number[]) =>
      `¿${name === undefined ? 'Tomar' : `${name}: tomar`} ${isOne(numbers.length) ? 'la pieza' : 'las piezas'} ${all(numbers.map(String))}?`,
    coats: 'Con sus capas y cubos.',
    changes: '¿Tomar los cambios?',
    away: (numbers: readonly number[]) =>
      isOne(numbers.length)
        ? `La ${numbers[0]} ya no es tuya: sale de esta mesa.`
        : `Las ${all(numbers.map(String))} ya no son tuyas: salen de esta mesa.`,
    kept: (numbers: readonly number[]) =>
      isOne(numbers.length)
        ? `La ${numbers[0]} se ajustó en este teléfono y queda así.`
        : `Las ${all(numbers.map(String))} se ajustaron en este teléfono y quedan así.`,
    buckets: (names: readonly string[]) => `Nuevo aquí: ${all(names)}.`,
    alone: '¿Mostrar solo la mesa en este teléfono?',
    aloneHelp: 'Sin tablas, cubos ni taller en que perderse. Una pulsación larga lleva de vuelta.',
    aloneYes: 'SOLO LA MESA',
    aloneNo: 'TODO',
  },
  handout: {
    title: 'Pasar',
    nth: (code: number, of: number) => `Código ${code} de ${of}`,
    print: 'Imprimir',
    how: 'En el otro teléfono: Taller, Guardar, Otro teléfono, LEER. Toma las capas y sus cubos, ninguna pieza.',
    none: 'No hay serie que pasar.',
    tooMuch: 'Demasiado para códigos quietos. Pasa las series una a una, o MOSTRAR todo.',
    take: (names: readonly string[]) =>
      names.length === 0 ? '¿Tomar estos cubos?' : `¿Tomar ${all(names)}?`,
    other: (name: string) => `${name} está aquí con otras capas: las piezas que la llevan toman estas.`,
    buckets: (names: readonly string[]) =>
      isOne(names.length)
        ? `Nuevo aquí: ${all(names)}. Pesa y mide lo que hay en tu propio cubo.`
        : `Nuevo aquí: ${all(names)}. Pesa y mide lo que hay en tus propios cubos.`,
    yes: 'TOMAR',
    no: 'DEJAR',
  },
}
