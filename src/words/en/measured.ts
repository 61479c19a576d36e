import type { Name } from '../name.ts'
import { isOne } from './counts.ts'

const percentOff = (x: number): number => Math.round((x - 1) * 100)

/** A factor on an estimate as a person says it: "12 % longer than", "as long as". */
const beside = (x: number, more: string, less: string, same: string): string => {
  const percent = percentOff(x)
  return percent === 0 ? same : `${Math.abs(percent)} % ${percent > 0 ? more : less}`
}

const signed = (percent: number): string => (percent < 0 ? `−${-percent}` : `+${percent}`)

/** The range of such a factor: "−5 to +30 %". */
const spread = (low: number, high: number): string =>
  `${signed(percentOff(low))} to ${signed(percentOff(high))} %`

/** English of what is measured: the day's air, the clay, a glaze's pick-up, and what the room has taught. */
export const measured = {
  air: {
    old: (ago: string) => `Noted ${ago} ago. Is it still so?`,
    still: 'No change',
    pair: 'Two thermometers',
    dry: 'Dry one reads',
    wet: 'Wet one reads',
    hung: 'The wet one was',
    hungs: { fanned: 'fanned', natural: 'in a draught', still: 'in still air' },
    pairRh: (rh: string) => `Humidity ${rh}.`,
    tooDry: 'No air is that dry: was the wet one fanned, or in a draught?',
    icy: 'The wick may be frozen: look.',
    wetAbove: 'The wet one can’t read above the dry one.',
    take: 'Take it',
    cloth: 'Witness cloth',
    clothHelp: 'A wrung-out cloth, hung by two corners among the pots, weighed twice.',
    wide: 'Cloth wide',
    high: 'Cloth high',
    weight: 'Weighs now',
    hang: 'Cloth is up',
    hanging: (clock: string, ago: string) => `Hung at ${clock}, ${ago} ago. Weigh it after 20 to 60 min.`,
    reading: 'Take the reading',
    lost: (grams: string, span: string) => `Cloth lost ${grams} g in ${span}: `,
    pace: { slow: 'slow air.', fast: 'fast air.', as: 'as computed.' },
    factor: (x: number) => `The air takes ${beside(x, 'more than', 'less than', 'as much as')} estimated.`,
    noAir: 'This air takes nothing: a cloth can’t tell.',
    wrong: 'It can’t have lost that: weigh again.',
    forget: 'Forget it',
    more: 'Altitude, cold pots',
    altitude: 'Above the sea',
    pots: 'Pots came in at',
    dew: (dew: string, mm: string) => `Dew settles below ${dew}: ${mm} mm an hour. Warm them, wipe them dry.`,
    noDew: (dew: string) => `No dew: it settles below ${dew}.`,
  },
  clay: {
    dips: 'Two water dips',
    help: 'One dry tile, weighed; a short dip in water, weighed; a longer one on the same face, weighed.',
    area: 'Face that got wet',
    firstS: 'First, seconds',
    firstG: 'Gained',
    secondS: 'Then, seconds',
    secondG: 'Gained in all',
    drinks: (x: number) =>
      `This clay drinks ${beside(x, 'faster than', 'slower than', 'as fast as')} assumed.`,
    wrong: 'The longer dip must gain more.',
    soak: 'One pot in water',
    soakHelp:
      'A dry pot without wax, weighed. Under water, inside full: these few seconds tell how fast it drinks, 10 min how much it holds. Wipe the drops off, weigh. No glaze before it is dry again.',
    pot: 'Pot',
    under: 'Seconds under',
    dry: 'Dry',
    wet: 'Wet',
    holds: (percent: string) => `This clay holds ${percent} % of its weight.`,
    little: 'Too few grams to tell: a larger pot, or longer.',
    between: 'Nearly full, so it tells neither: fewer seconds with a dry pot, or 10 min.',
    never: 'No pot does that: weigh again.',
  },
  glaze: {
    weighed: 'No pin? Weigh the tile',
    help: 'Straight after 3 s, slop and all, less its dry weight.',
    gain: 'Gained',
    area: 'Area that got wet',
    is: (mm: string) => `That is ${mm}.`,
    pickUp: (x: number, low: number, high: number) =>
      `Goes on ${beside(x, 'thicker than', 'thinner than', 'as thick as')} estimated (${spread(low, high)}).`,
    slide: 'Film on a full wall: weigh a slide',
    slideHelp:
      'A microscope slide, weighed. Dip it, let it drip as a pot, touch off the bead, weigh again: grams on both faces.',
    slideG: 'The slide gained',
    slideArea: 'Both faces that got wet',
    slideIs: (mm: string, pa: string) => `A full wall keeps ${mm}; its yield stress is ${pa} Pa at most.`,
    slideWas: (mm: string) => `By its slide, a full wall keeps ${mm}.`,
    slideWrong: 'No glaze leaves such a film: weigh again, both faces.',
    dose: 'Seconds and coat',
    on: (s: string, form: string, wall: string) => `${s} on a dry ${form}, wall ${wall}:`,
    at: (mm: string, density: string) => `${mm} at ${density}`,
    wanted: 'Wanted coat',
    density: (s: string, density: string) => `${s} give it at ${density}.`,
    noDensity: (s: string) => `No density gives it in ${s}.`,
    seconds: (s: string, density: string) => `At ${density} hold ${s}.`,
    tooQuick: (s: string, density: string) => `At ${density} it takes less than ${s}: thin it.`,
    noSeconds: (mm: string, density: string) => `At ${density} no seconds do: ${mm} at most.`,
  },
  dipped: {
    title: 'A dipped tile instead of a cup',
    help: 'Tiles of one batch, dipped for the same seconds, both faces 100 cm² in all. Weigh bare and, dry, the day after. Keep one or three right after a density reading.',
    gain: 'Gained, dry',
    says: {
      thin: 'Thinner than its target by this tile: weigh a cup.',
      thick: 'Thicker than its target by this tile: weigh a cup.',
      nothing: 'Nothing stands out. Only a cup tells the density.',
    },
    kept: (n: number) => (isOne(n) ? '1 tile to compare with' : `${n} tiles to compare with`),
    keep: (density: string) => `Keep it as dipped at ${density}`,
    forget: 'Forget them',
  },
  taught: {
    title: 'What this room has taught',
    none: 'Nothing yet. DRY and NOT YET teach the waits, and so does a pot on the scale.',
    from: (n: number) => (isOne(n) ? 'From 1 check:' : `From ${n} checks:`),
    waits: (x: number, low: number, high: number) =>
      `Coats wait ${beside(x, 'longer than', 'shorter than', 'as long as')} estimated (${spread(low, high)}).`,
    water: (x: number, low: number, high: number) =>
      `Dips bring ${beside(x, 'more water than', 'less water than', 'as much water as')} estimated (${spread(low, high)}).`,
    glaze: (name: string, x: number, low: number, high: number) =>
      `${name} waits ${beside(x, 'longer than', 'shorter than', 'as long as')} estimated (${spread(low, high)})`,
    board: (board: string, x: number, sittings: number) =>
      x > 1
        ? `Board ${board} dries ${Math.round(Math.abs(x - 1) * 100)} % slower than the others here (${sittings} sittings)`
        : `Board ${board} dries ${Math.round(Math.abs(x - 1) * 100)} % faster than the others here (${sittings} sittings)`,
    look: { damp: (clock: string) => `not yet ${clock}`, dry: (clock: string) => `dry ${clock}` },
    weighed: (grams: number, clock: string) => `${grams} g of glaze and water ${clock}`,
    changed: 'The room has changed',
    changedHelp: 'A heater, a fan, boards moved: which board dries faster is learned anew from now on.',
    changedAt: (moment: string) => `Boards are learned anew since ${moment}.`,
    notChanged: 'It has not: count all again',
    older: (n: number) => (isOne(n) ? '1 before that' : `${n} before that`),
    leave: 'Leave out',
    again: 'Count it',
    dropped: {
      contradiction: 'not used: dry before damp',
      tooEarly: 'not used: before the dip',
      never: 'not used: never dries in that air',
      noGain: 'not used: no heavier than its bisque',
    },
  },
  worth: {
    known: (factor: string) => `Waits are known to a factor of ${factor}.`,
    bought: (checks: number, before: string, now: string) =>
      `${checks} checks brought waits from a factor of ${before} to ${now}.`,
    clay: (factor: string) => `One pot weighed dry and after seconds in water (Room): factor ${factor}.`,
    scale: (pot: Name, coat: number, factor: string) =>
      `Pot ${pot} on a kitchen scale, bare and right after coat ${coat}: factor ${factor}.`,
    touch: (pot: Name, coat: number, factor: string) =>
      `Pot ${pot}, touched when its coat ${coat} is due: factor ${factor}.`,
  },
  fit: {
    full: (coat: number) => `The wall fills at coat ${coat}.`,
    take: (seconds: string) => `${seconds} s fits tonight`,
    split: 'Inside tonight, outside tomorrow',
    splitS: (inside: string, outside: string) => `${inside} s poured, then ${outside} s`,
    none: 'No seconds fit tonight.',
  },
}
