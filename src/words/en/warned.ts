import { plain } from '../number.ts'
import { isOne } from './counts.ts'
/** English of what is warned of before a dip, and of days. */
export const warned = {
  where: {
    outside: {
      foot: 'just above the foot',
      skirt: 'low on the outside',
      body: 'under the belly',
      collar: 'under the lip',
      inside: 'the inside floor',
    },
    inside: 'the inside floor',
    /** Of a form without a belly. */
    halfway: 'halfway up the outside',
    /** Of the inside, where no hand goes in. */
    neck: 'just inside the rim',
    overlap: 'where the halves overlap',
  },
  zone: {
    foot: 'foot',
    skirt: 'skirt',
    body: 'body',
    collar: 'collar',
    inside: 'inside',
    overlap: 'overlap',
    half: 'one half',
    otherHalf: 'other half',
  },
  warning: {
    over: (zone: string, mm: string, limit: string) => `${zone} ${mm}, limit ${limit}: too thick`,
    close: (zone: string, mm: string, limit: string) => `${zone} may reach ${mm}, limit ${limit}`,
    seconds: (s: number) => `${plain(s)} s would fit`,
    skip: 'Better without this coat',
    runOver: (room: string) => `May run down its ${room} of bare foot onto the shelf`,
    runNear: (run: string, room: string) => `May run ${run} of its ${room} of bare foot`,
    runUnknown: 'Unknown whether it runs: no test tile yet',
    runSlab: 'May run: it stands on a catch slab',
    edge: (mm: string) => `Stop at ${mm} up, or use a catch slab`,
    catch: 'Use a catch slab',
    carried: 'tested in another firing',
    thin: (low: string, high: string) => `The wall is full: ${low} to ${high} now.`,
    thinLikely: (mm: string, low: string, high: string) => `Likely thin: ${mm} now, ${low} to ${high}.`,
    thinOne: (mm: string) => `The wall is full: ${mm} now.`,
    thinAgain: (mm: string, clock: string) => `${mm} from about ${clock}.`,
    thinWait: 'No seconds would help, waiting would.',
    repair: (s: number) => `Shown as planned. After the slip better ${plain(s)} s`,
    repairSkip: 'Shown as planned. After the slip better left out',
    neck: 'The neck is too narrow to fill in time: pour the inside',
    dew: (pot: string, dew: string) => `Warm it first: the pot is at ${pot}, and dew settles below ${dew}`,
    held: (clock: string) => `Its seconds reckon with a wait until ${clock}: sooner comes out thinner`,
    pair: {
      untried: (upper: string, lower: string, zone: string) => `${upper} over ${lower}, ${zone}: untried`,
      'went-wrong': (upper: string, lower: string, zone: string) =>
        `${upper} over ${lower}, ${zone}: went wrong before`,
    },
    ran: {
      shelf: (pot: string, glaze: string, times: string) => `${pot} ran to the shelf: ${glaze} runs ${times}`,
      'past-foot': (pot: string, glaze: string, times: string) =>
        `${pot} ran past its foot line: ${glaze} runs ${times}`,
      ran: (pot: string, glaze: string, times: string) => `${pot} ran: ${glaze} runs ${times}`,
      drip: (pot: string, glaze: string) => `${pot} dripped far past its front: ${glaze}`,
      'all-the-same': (pot: string, glaze: string) => `${pot} ran to the shelf: ${glaze}`,
      gone: (_pot: string, glaze: string) => `${glaze}: results of its run were left out`,
    },
    ofTiles: (times: string) => `${times} times what its tiles say`,
    thanUsed: (times: string, used: string) => `${times}, not ${used} as planned`,
    crawled: (pot: string, glaze: string, mm: string) => `${pot} crawled: keep ${glaze} under ${mm}`,
    overUnder: (upper: string, lower: string) => `${upper} over ${lower}`,
    fit: {
      mouth: 'Wider than the bucket: pour it, or take a wider one',
      tongs: 'No room for the tongs beside it',
      overflow: 'The bucket will run over',
    },
    level: (level: string, needs: string) => `The glaze stands ${level} deep, this pot needs ${needs}`,
    density: (now: string, target: string) => `The glaze reads ${now}, its target is ${target}`,
    more: (n: number) => (n === 0 ? 'What to do' : isOne(n) ? '1 more warning' : `${n} more warnings`),
    notes: (n: number) => (isOne(n) ? '1 thing to know' : `${n} things to know`),
  },
  days: {
    tomorrow: (clock: string) => `${clock} tomorrow`,
    yesterday: (clock: string) => `${clock} yesterday`,
    on: (clock: string, day: string) => `${clock} on ${day}`,
    /** How a date is written, in the tokens of the date library. */
    date: 'd LLLL',
    dateOfYear: 'd LLLL yyyy',
    about: (when: string) => `about ${when}`,
    in: (span: string) => `in ${span}`,
    ago: (span: string) => `${span} ago`,
  },
}
