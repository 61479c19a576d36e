import type { Name } from '../name.ts'
import { plain } from '../number.ts'

/** English of cards between dips: ready pots, a pour to bring back, a pause, the wax pan, what the person has to decide. */
export const between = {
  readyMany: (n: number) => `${n} ready?`,
  readyNext: (glaze: string) => `next ${glaze}`,
  returnTitle: (name: string) => `Pour it back into ${name}`,
  pouredAgo: (ago: string) => `poured ${ago} ago`,
  returnText: (amount: string) => `What is left of the ${amount} you poured off.`,
  heldText: 'No dip can start. Drying goes on.',
  heldWhere: 'You were:',
  heldArmed: (number: Name, name: string, s: number) => `${number} into ${name}, ${plain(s)} s`,
  heldLine: {
    drips: (number: Name) => `${number} drips`,
    'foot-not-sponged': (number: Name) => `${number}: foot not sponged`,
    wait: (number: Name) => `${number} is drying`,
    ready: (number: Name) => `${number} is ready to touch`,
    'dip-next': (number: Name) => `${number} can be dipped`,
    wax: (number: Name) => `${number}: foot to wax`,
    wipe: (number: Name) => `${number} to wipe`,
    'foot-check': (number: Name) => `${number}: foot to check`,
  },
  heldWax: (on: string) => `The wax pan is ON, ${on}. Turn it off before you leave: Put right, More.`,
  panTitle: (on: string) => `Wax pan is ON, ${on}`,
  panWarms: (clock: string) => `Pan is ON, warm about ${clock}.`,
  panDone: 'Wax done. Pan off?',
  panAsk: 'Are you beside it?',
  panClosing: 'All coats are on. Turn it off now.',
  panCaution:
    'Use its thermostat, run the vent, keep sleeves and buckets away. On fire: heat off, lid on, never water.',
  askText: (s: number) => `Was it under for ${plain(s)} s?`,
  stuckUncounted: (number: Name) => `${number}: how many coats are on?`,
  stuckUncountedText: 'Scratch an edge, or weigh it.',
  stuckStrayed: (number: Name, glaze: string) => `${number} got ${glaze}`,
  stuckStrayedText: (next: string) =>
    next === ''
      ? 'Not as planned. Carry on, or wash it off: Put right.'
      : `Not as planned. Next would be ${next}. Carry on, or wash it off: Put right.`,
  stuckNoStack: (number: Name) => `${number} has no coats planned`,
  stuckNoBucket: (number: Name) => `${number}: its bucket is gone`,
  stuckPlan: 'Give it a stack on the board.',
}
