import { isOne } from './counts.ts'

/** English of a load in the fire. */
export const fire = {
  conesFall: (cone: string, at: string) => `Cone ${cone} about ${at}`,
  overdue: (cone: string, at: string) => `Cone ${cone} was due about ${at}: look now, or read again`,
  still: (cone: string, seen: string, again: string) =>
    `Cone ${cone} still standing at ${seen}: look again at ${again}`,
  between: (from: string, to: string) => `(${from} to ${to})`,
  decides: 'The cone in the kiln decides.',
  early: (within: string) =>
    `When the cone falls is told from two readings half an hour apart, within ${within} of it.`,
  oneMore: 'One more reading, half an hour after the last, and the hour of the cone is told.',
  untold: (cone: string, end: string, from: string) =>
    `The hour of a cone of this make is not told. Cone ${cone} is listed at ${end}: look from ${from} on.`,
  holdUntil: (clock: string) => `Hold until ${clock}`,
  offEarlier: 'Off earlier',
  seen: (cone: string, stand: string, clock: string) => `Cone ${cone} ${stand}, seen ${clock}`,
  past: (cone: string, wanted: string, clock: string) => `Cone ${cone} down at ${clock}: past cone ${wanted}`,
  down: (cone: string, clock: string) => `Cone ${cone} down at ${clock}`,
  candling: (boils: string) => `Below ${boils}, vent open. Dry: cold glass clear twice, 20 min apart.`,
  glassFogged: (clock: string) => `Fogged at ${clock}`,
  steams: {
    unclear: (temp: string) =>
      `${temp}, and the glass was not clear twice: wet pots burst. Hold back or go down, and try the glass.`,
    fogged: (temp: string, clock: string) =>
      `The glass fogged at ${clock}, and now ${temp}: wet pots burst. Hold back or go down, and try the glass again.`,
    atHeat: (temp: string, clock: string) =>
      `It fogged at ${clock}, at ${temp}: steam is in the pots. Turn down now, below boiling, or they burst.`,
    wet: (pots: string, many: boolean) =>
      many
        ? `${pots} went in wet: steam bursts them. Stay below boiling until the glass is clear twice.`
        : `${pots} went in wet: steam bursts it. Stay below boiling until the glass is clear twice.`,
  },
  glassFrom: (clock: string) => `Too cold to steam until ${clock}.`,
  glassEarly: (clock: string, from: string) =>
    `Clear at ${clock} does not count: pots are too cold to steam until ${from}.`,
  glassClear: (clock: string, again: string) => `Clear at ${clock}. Once more from ${again}.`,
  glassDry: (clock: string) => `Clear since ${clock}, which means dry. If it fogs again, candle on.`,
  both: (load: string) => `${load} is warm in this kiln too: one of the two is wrong. Put it right.`,
  cold: 'Cool enough to unload.',
  offset: (cone: string, shown: string, chart: string) =>
    `Cone ${cone} fell at ${shown} shown; its chart has ${chart}.`,
  stands: (cone: string, shown: string, chart: string) =>
    `Cone ${cone} stands at ${shown} shown; its chart has it fall at ${chart}.`,
  learned: (degrees: string, spread: string, n: number) =>
    isOne(n)
      ? `This kiln is ${degrees} than it shows, give or take ${spread} (1 cone).`
      : `This kiln is ${degrees} than it shows, give or take ${spread} (${n} cones).`,
  hotter: (degrees: string) => `${degrees} hotter`,
  cooler: (degrees: string) => `${degrees} cooler`,
  use: 'Use it',
  odd: 'That is far apart. Which is wrong? If neither is, the kiln is so.',
  coneWrong: 'The cone',
  readingWrong: 'A reading',
  kilnIsSo: 'Neither',
}
