import type { end as english } from '../en/end.ts'
import { isOne } from './counts.ts'

/** Spanish of the end of a sitting. */
export const end: typeof english = {
  lidBar: 'TAPADO',
  levelBar: 'OTRO NIVEL',
  toolsBar: 'A REMOJO',
  floorBar: 'FREGADO',
  lid: (name: string) => `Tapa en ${name}`,
  deep: (mm: string) => `nivel ${mm}`,
  level: (litres: string) => `${litres} por cálculo. Mira antes dentro.`,
  levelRead: (litres: string) => `${litres} leídos por ti.`,
  more: (n: number) => (n === 0 ? 'el último cubo' : isOne(n) ? '1 cubo más' : `${n} cubos más`),
  tools: 'Herramientas al cubo de decantar',
  toolsText: 'Pinzas, vasos, varilla, esponjas. Nunca al fregadero.',
  toolsCaution:
    'Desenchufa la batidora antes de tocar el aspa. Nada de esmalte al desagüe: las normas locales dicen adónde va.',
  floor: 'Friega en mojado',
  floorText: 'Mesa, tablas, suelo. El agua, al cubo de decantar.',
  floorCaution: 'El esmalte seco es polvo de sílice: nunca barras ni cepilles. Limpia en mojado.',
  leave: 'Saltar este paso',
  pots: (n: number) => (isOne(n) ? 'pieza' : 'piezas'),
  coats: (n: number) => (isOne(n) ? 'capa' : 'capas'),
  fromTo: (likely: string, late: string) => (likely === late ? likely : `${likely}–${late}`),
  days: (likely: string, late: string) => (likely === late ? likely : `${likely || 'hoy'} – ${late}`),
  dry: 'Secas para el horno',
  dryToCandle: 'Bastante secas para secar en el horno',
  early: (span: string) => `${span} antes`,
  late: (span: string) => `${span} tarde`,
  isDry: 'seca ya',
  never: 'nunca con este aire',
  leftOut: (what: string) => `Sin hacer: ${what}. ¿Hecho ahora?`,
  left: {
    'lid-on': (name: string) => `tapa en ${name}`,
    'tools-washed': 'herramientas',
    'floor-mopped': 'fregado',
  },
  noCopy: (days: number | undefined) =>
    days === undefined
      ? 'Aún no hay copia fuera de este teléfono.'
      : `Última copia fuera de este teléfono: hace ${days} días.`,
  copyFailed: 'No ha funcionado. No hay copia nueva.',
  backUp: 'Sacar copia',
  notNow: 'Ahora no',
  sooner: 'SECAR ANTES',
  load: 'CARGAR EL HORNO',
  soonerTitle: 'Secar antes',
  lastDry: (when: string) => `La última pieza ahora: ${when}.`,
  candled: (when: string) => `última pieza dentro del horno: ${when}`,
  candledFor: (likely: string, late: string, water: string) =>
    `de ${likely} a ${late} por debajo de 100 °C: tienen que salir ${water} de agua`,
  soonerBy: (when: string, span: string | undefined) =>
    span === undefined ? `última pieza ${when}` : `última pieza ${when}, ${span} antes`,
  looking: 'Buscando qué ayudaría.',
  noSooner: 'Nada de aquí ganaría diez minutos.',
  next: (from: number, to: number, of: number) => `${from} a ${to} de ${of}. SIGUE`,
  caution:
    'Horno: extracción, quédate, fuera del humo; primero manual y normas locales. Esta app no sabe si una pieza es segura para alimentos.',
}
