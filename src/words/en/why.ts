import { isOne } from './counts.ts'

/** English of Why. */
export const why = {
  zone: 'zone',
  likely: 'likely',
  upTo: 'up to',
  full: 'wall full',
  touch: 'touch-dry',
  thirsty: 'thirsty again',
  kiln: 'kiln-dry',
  water: 'water in it',
  grams: (g: number) => `${g} g`,
  drinks: 'room left in the wall',
  part: (percent: number) => `${percent} %`,
  air: 'air',
  airIs: (temp: string, rh: number, draught: string) => `${temp}, ${rh} %, ${draught}`,
  cloth: (percent: number) =>
    percent === 0
      ? ', by the cloth too'
      : percent > 0
        ? `, ${Math.abs(percent)} % more by the cloth`
        : `, ${Math.abs(percent)} % less by the cloth`,
  noted: (ago: string) => `, noted ${ago} ago`,
  draughts: {
    still: 'still',
    room: 'a room',
    window: 'open window',
    fan: 'fan in the room',
    fanClose: 'fan close by',
  },
  taught: 'based on',
  untaught: 'without checks',
  checks: (n: number) => (n === 0 ? 'no checks yet' : isOne(n) ? '1 check' : `${n} checks`),
  band: (early: string, likely: string, late: string) => `${likely} (${early} to ${late})`,
  bare: 'Nothing is on it yet.',
  trust: 'Estimates from wall, coats and air. Your touch decides.',
}
