import type { waits as english } from '../en/waits.ts'
import type { Name } from '../name.ts'
import { about, fromTo, hour } from './clocks.ts'
import { inWords, isOne } from './counts.ts'

/** Spanish of what the bench fetches after its first card: cards of waits and decisions, ways out, the hands line. */
export const waits: typeof english = {
  touchAt: (where: string) => `toca ${where}`,
  touchEach: (pots: string, where: string) => `${pots} ${where}`,
  tongMarks: (which: string) =>
    which === ''
      ? '¿Ya sin brillo? Retoca las marcas de pinza.'
      : `¿Ya sin brillo? Retoca las marcas de pinza en ${which}.`,
  widerVessel: (wide: string) => `Usa un recipiente de ${wide} de ancho.`,
  decantJug: (amount: string) =>
    `El borde no cabe en ningún recipiente: vierte ${amount} alrededor con una jarra.`,
  decant: (amount: string, level: string) =>
    `Vierte ${amount} en el recipiente de la franja, ${level} de fondo.`,
  leaveOut: 'Toca una para dejarla fuera.',
  waitUntil: (clock: string) => `hasta ${hour(clock)}`,
  waitTitle: 'Espera',
  waitNever: 'no seca con este aire',
  waitSoon: 'pronto',
  waitTouch: (number: Name, place: string) => `luego toca ${number} en ${place}`,
  waitWax: (number: Name) => `cuaja la cera de ${number}`,
  waitDamp: (number: Name) => `se va la humedad de ${number}`,
  waitStir: (name: string) => `luego remueve ${name}`,
  waitFoot: (number: Name) => `luego revisa el pie de ${number}`,
  waitDip: (number: Name) => `luego baña ${number}`,
  dueWhat: {
    touch: 'por tocar',
    'wax-sets': 'cuaja la cera',
    'wipe-dries': 'se va la humedad',
    'damp-dries': 'se seca la pared',
    'foot-check': 'pie por revisar',
    stir: 'por remover',
    dip: 'por bañar',
  },
  touchFirst: (number: Name, others: number) =>
    isOne(others)
      ? `Toca primero ${number}: sigue ${inWords(others).toLowerCase()} más.`
      : `Toca primero ${number}: siguen ${inWords(others).toLowerCase()} más.`,
  visit: (n: number) => `baño ${n} de esta tanda`,
  elsewhere: 'Suena en otra ventana',
  follows: (name: string, clock: string) => `luego ${name} ${clock}`,
  free: (span: string) => `libre ${span}`,
  done: (clock: string) => `todas bañadas ${about(clock)}`,
  doneBetween: (early: string, late: string) => `todas bañadas de ${early} a ${late}`,
  tenMore: (span: string) => `diez minutos más cuestan ${span}`,
  spare: (span: string) =>
    /^1\s\D+$/.test(span) ? `sobra ${span} para el horno` : `sobran ${span} para el horno`,
  late: (span: string) => `${span} tarde para el horno`,
  mayBeLate: (outOfTen: number) => `Quizá tarde: ${outOfTen} de 10`,
  potterDoes: {
    empty: '',
    held: 'en pausa',
    count: 'cuenta',
    out: 'fuera',
    'ask-dose': '',
    drip: 'dejar',
    stuck: 'decidir',
    wax: 'cera',
    wipe: 'esponja',
    stir: 'remover',
    armed: '',
    ready: 'tocar',
    'foot-check': 'revisar pie',
    return: 'devolver',
    wait: 'libre',
    lid: 'tapa',
    tools: 'herramientas',
    floor: 'fregar',
    closed: 'terminado',
    'wax-pan': 'olla de cera',
  },
  reason: {
    kept: 'como se dijo',
    bucketOpen: '',
    longestChain: 'primero el plan más largo',
    deadline: 'es la última en secar',
    heldSavesStir: 'espera a propósito: ahorra remover',
    keptSavesOpening: 'espera a propósito: ahorra abrir otra vez',
    onlyReady: 'no hay otra cosa',
    inWait: 'hay tiempo de remover ahora',
    nextBucket: 'las demás se secan o están hechas',
    stale: 'hace mucho que se removió',
    staleByDip: 'sería mucho hasta el próximo baño',
    stirInWait: 'adelantado: hay manos libres',
    pourOff: 'para las franjas',
    startsWait: 'para que seque antes',
  },
  waitBand: (early: string, late: string) => `podría estar seca de ${early} a ${late}`,
  waitLate: (late: string) => `podría estar seca ya, o no hasta ${late}`,
  washed: (number: Name) => `${number} lavada: pared llena`,
  drinksAgain: (when: string) => `Bebe otra vez ${when}.`,
  waitWall: (number: Name) => `la pared de ${number} está mojada`,
  kept: (pots: string, n: number, name: string, clock: string, later: boolean) => {
    const bucket = later ? `${name} más tarde` : name
    const then = clock === '' ? bucket : `${bucket}, ${clock}`
    return isOne(n) ? `Lista ${pots}. Se guarda para ${then}.` : `Listas ${pots}. Se guardan para ${then}.`
  },
  keptMore: (n: number) => (isOne(n) ? `${inWords(n)} más guardada.` : `${inWords(n)} más guardadas.`),
  oneNow: 'BAÑAR UNA YA',
  dipNow: (number: Name) => `BAÑAR ${number} IGUAL`,
  touchNow: (number: Name) => `TOCAR ${number} YA`,
  footNow: (number: Name) => `REVISAR ${number} YA`,
  panCold: 'Enciéndela: tarda unos 15 min.',
  lookOver: (left: number) => (isOne(left) ? 'la última: ¿grietas?' : `faltan ${left}: ¿grietas?`),
  kilnDry: (when: string) => `secas para el horno ${when}`,
  fromTo,
  othersRest: 'La otra persona tiene el resto.',
  washOff: 'Lavarla (mantén pulsado)',
  backText: 'Lo que tocaba entretanto, lo más viejo primero. Nada avanzó solo.',
  backNone: 'Entretanto no tocaba nada.',
  overdue: (ago: string) => `hace ${ago}`,
}
