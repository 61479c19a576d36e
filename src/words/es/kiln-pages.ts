import type { kilnPages as english } from '../en/kiln-pages.ts'
import { isOne } from './counts.ts'

const pots = (n: number): string => (isOne(n) ? '1 pieza' : `${n} piezas`)

/** Spanish of pages of the kiln that few hits lead to. */
export const kilnPages: typeof english = {
  why: {
    tooTall: (most: string) => `demasiado alta: quedan ${most}`,
    tooWide: (most: string) => `demasiado ancha: quedan ${most}`,
    noShelf: 'no queda placa',
    noPosts: 'no hay tres postes que la superen',
    noRoom: 'no queda sitio',
    noSlab: 'puede escurrir a la placa, y no tiene platillo',
    foot: 'su pie no está revisado',
    wet: 'no estará seca al encender',
    later: 'guardada para otra cocción',
    fits: 'ya puede entrar: propón de nuevo',
  },
  would: {
    posts: (mm: string) => `tres postes más de ${mm}`,
    shelf: 'una placa más',
    aside: (number: string, n: number) =>
      isOne(n) ? `aparta ${number}: entra ${pots(n)} más` : `aparta ${number}: entran ${pots(n)} más`,
    nextFiring: (n: number) => (n === 1 ? 'cabe en la próxima cocción' : 'cabe en una cocción posterior'),
    slab: 'Ponerla sobre un platillo',
    back: 'Meterla',
  },
  map: {
    place: 'Lugar',
    pot: 'Pieza',
    size: 'Alto × ancho, mm',
    after: 'Tras la cocción',
    posts: (n: number, mm: string) => `Placa ${n}: encima tres postes de ${mm}`,
    top: (n: number) => `Placa ${n}: la de arriba`,
    of: (day: string, cone: string) => `Hornada del ${day}, cono ${cone}`,
    key: 's sobre platillo · T probeta de flujo · C conos · rayado: postes',
    shrinks: 'Tras la cocción las piezas son de un 3 a un 7 % más pequeñas.',
  },
  late: { on: 'ENCENDIDO', off: 'APAGADO', bung: 'TAPÓN FUERA' },
  right: {
    firing: (cone: string) => `Cambiar la cocción, cono ${cone}`,
    tap: 'Toca lo que no es así:',
    cone: (cone: string, stand: string, clock: string) => `Cono ${cone} ${stand}, ${clock}`,
    glass: (fogged: boolean, clock: string) =>
      fogged ? `Vidrio empañado, ${clock}` : `Vidrio sin vaho, ${clock}`,
    offset: (degrees: string, hotter: boolean) =>
      hotter
        ? `Este horno está ${degrees} más caliente de lo que muestra`
        : `Este horno está ${degrees} más frío de lo que muestra`,
    drop: 'Quitar eso',
    deed: (what: string, clock: string) => `${what}, ${clock}`,
    shelf: (n: number) => `Placa ${n} cargada`,
    deeds: {
      'lid-shut': 'Tapa cerrada',
      'kiln-lit': 'Horno encendido',
      'bung-pulled': 'Tapón fuera',
      'kiln-off': 'Horno apagado',
      'lid-opened': 'Tapa abierta',
    },
  },
}
