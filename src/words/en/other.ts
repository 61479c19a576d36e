import type { Name } from '../name.ts'
import { plain } from '../number.ts'
import { isOne } from './counts.ts'
/** English of Other, of what keeps a melt off the shelf, and of ringing: fetched with what says them. */
export const other = {
  /** Of the seconds before a dip: what begins then, and for how long. */
  count: {
    dipIn: 'IN in',
    pourIn: 'POUR in',
    under: (s: number) => `then ${plain(s)} s under`,
    inside: (s: number) => `then ${plain(s)} s inside`,
  },
  /** On the bar, the first time a card of its kind stands there: how it is answered. */
  hint: {
    wax: 'Foot waxed? Hit here with a knuckle.',
    wipe: 'All of it wiped? Hit here.',
    'foot-check': 'Felt all round? Hit here.',
    stir: 'Well stirred? Hit here with a knuckle.',
    armed: 'Pot in your hand? Hit here, follow the beats.',
    drip: 'Clean, and set down? Hit here.',
    ready: 'Touch the glaze. Dry, or not yet?',
    return: 'All of it poured back? Hit here.',
    held: 'Back at the table? Hit here.',
    'wax-pan': 'Look at the pan, then answer.',
    'ask-dose': 'Was it so? Nothing is guessed.',
    lid: 'Lid shut? Hit here.',
    tools: 'All washed? Hit here.',
    floor: 'All mopped? Hit here.',
  },
  /** Ways out of being late for the kiln. */
  ways: {
    stillLate: (span: string) => `${span} late for the kiln`,
    inTime: 'In time for the kiln',
    latestStart: (clock: string) => `The latest start was ${clock}.`,
    way: {
      fan: () => 'Fan close to the pots',
      otherBoard: () => 'Another board, by an open window',
      candling: () => 'Candle the kiln; its manual first',
      skipCollar: (n: number) => (isOne(n) ? 'Skip the collar on 1 pot' : `Skip the collar on ${n} pots`),
      fewerCoats: (n: number) => (isOne(n) ? 'One coat less on 1 pot' : `One coat less on ${n} pots`),
      nextFiring: (n: number) => (isOne(n) ? '1 pot into the next firing' : `${n} pots into the next firing`),
    },
    ends: (when: string, then: string, outOfTen: number) =>
      `last dip ${when}, ${then}; in time ${outOfTen} in 10`,
    none: 'Looking for ways out.',
  },
  other: {
    back: 'Back',
    takeBack: 'Take back',
    anotherPot: 'Another pot',
    anotherBucket: 'Another bucket',
    wasPot: 'It was another pot',
    wasBucket: 'It was another bucket',
    logDip: 'Log a dip',
    screens: 'Other screens',
    toSettle: (n: number) => `${n} to settle`,
    otherHands: 'The other potter dipped it',
    about: (number: Name, glaze: string) => (glaze === '' ? `${number}` : `${number} in ${glaze}`),
    held: 'Change the seconds',
    earlier: 'I lifted earlier',
    more: 'More',
    help: 'Help',
    why: 'Why?',
    dipInstead: (s: number, planned: number) => `Dip ${plain(s)} s instead of ${plain(planned)}`,
    leaveOut: 'Leave this coat out',
    justNow: 'just now',
    ago: (min: number) => `${min} min ago`,
    earlierBy: (min: number) => `${min} min earlier`,
    moreS: (s: number) => `+${plain(s)} s`,
    lessS: (s: number) => `−${plain(s)} s`,
    weighed: (grams: string) => `${grams} g`,
    makes: (s: number) => `makes ${plain(s)} s`,
    /** Of one pot by its name: the card below may be about another. `better`: seconds for its next coat, 0: none. */
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
            ? ` Its next coat: ${plain(planned)} s.`
            : better > 0
              ? ` Its next coat: better ${plain(better)} s.`
              : ' Better leave out its next coat.'
      return `${number}: ${plain(s)} s, ${build}.${next}`
    },
    coatsOn: (number: Name) => `${number}: coats on it`,
    notSure: 'not sure',
    weigh: 'Weigh it',
    weighBisque: (number: Name) => `${number} as bisque, dry`,
    weighNow: (number: Name) => `${number} as it is now`,
    weighKeep: 'KEEP',
    pourInside: 'Pour the inside first',
    dab: 'Chip: dab it, let it dry, smooth it with a damp finger',
    dabGloves: 'wear gloves',
    panIsOn: (on: string, warm: string | undefined) =>
      warm === undefined ? `Pan is ON, ${on}` : `Pan is ON, ${on}, warm about ${warm}`,
    panIsOff: 'Pan is off',
    turnOff: 'Turn it off',
    turnOn: 'Turn it on',
    panCare: 'Thermostat, vent, sleeves back.',
    gone: (number: Name) => `Remove ${number} (press and hold)`,
    pages: {
      pot: 'Which pot?',
      bucket: 'Which bucket?',
      logged: 'When did it come out?',
      held: 'How long was it?',
      earlier: 'How much earlier?',
      more: 'More',
      why: 'Why?',
      weigh: 'On the scale',
      shelf: 'Keep it off the shelf',
      stray: 'Another bucket',
      warnings: 'Before this coat',
    },
  },
  remedy: {
    title: 'Keep it off the shelf',
    edge: (glaze: string, mm: string) => `${glaze} down to ${mm}`,
    seconds: (glaze: string, s: number) => `${glaze} ${plain(s)} s`,
    skip: (glaze: string) => `Leave ${glaze} out`,
    stack: (name: string) => `Stack ${name}`,
    slab: 'Catch slab',
    slabCare: 'Fired drips are razor-sharp: wear gloves, and eye cover to chip or grind them off.',
    slabMl: (ml: number) => `for ${ml} ml`,
    reaches: { clear: 'then clear', near: 'then off the shelf' },
  },
  ring: {
    offer: 'Ring with the screen off? It stops your music while pots wait.',
    yes: 'RING',
    no: 'NO',
    next: (clock: string, places: string) => `Next ${clock}: ${places}`,
    ready: (places: string) => `${places} ready to touch`,
    kilnDry: (places: string) => `${places} kiln-dry`,
    noticeBody: 'Touch-check, then the next coat.',
    line: {
      proven: 'rings with the screen off',
      untested: 'ringing is not tested here',
      failed: 'can’t ring: keep the screen on',
    },
    stopped: 'ringing stopped: hit anything',
    calendar: 'TO THE CALENDAR',
  },
}
