import { isOne } from './counts.ts'

const many = (count: number, one: string, more: string) => (isOne(count) ? `1 ${one}` : `${count} ${more}`)

const all = (parts: readonly string[]): string => {
  const last = parts.at(-1) ?? ''
  return parts.length > 1 ? `${parts.slice(0, -1).join(', ')} and ${last}` : last
}

/** English of passing to another phone and taking in from it. */
export const passing = {
  title: 'Another phone',
  how: 'One phone shows, the other reads. Wet hands show. Dry hands hold the camera.',
  private: 'Nothing goes through the air or a network: what one screen shows is what the other sees.',
  show: 'SHOW',
  read: 'READ',
  showBack: 'SHOW BACK',
  file: 'Back up, or take in a file',
  called: (name: string) => `Where there are three, the others call this one phone ${name}.`,
  notes: 'A note is one thing said or done: a pot set up, a dip, a touch.',
  counting: 'A dip is being counted. First that.',
  toBench: 'TO THE BENCH',
  demo: 'The demo stays on this phone. Open your own table first.',
  showTitle: 'Show',
  hold: 'Camera 15 to 25 cm above.',
  shown: (records: number, of: number, seconds: number) =>
    records === 0
      ? 'Says who this is. Nothing else to pass.'
      : records < of
        ? `The latest ${records} of ${of} notes, about ${seconds} s.`
        : `All ${records} notes, about ${seconds} s.`,
  back: (records: number, seconds: number) =>
    isOne(records)
      ? `1 note it lacks, about ${seconds} s.`
      : `${records} notes it lacks, about ${seconds} s.`,
  tooMuch: 'Too much to show. Pass a backup file.',
  coarse: 'Coarser',
  fine: 'Finer',
  shownLong: 'Shown for two minutes.',
  done: 'DONE',
  again: 'SHOW AGAIN',
  readTitle: 'Read',
  stop: 'STOP',
  looking: 'Hold it over the other phone’s code.',
  closer: 'Closer, out of the light, and still.',
  coarser: 'On the other phone: Coarser.',
  part: (known: number, of: number) => `${known} of ${of}`,
  own: 'That is this phone’s own code.',
  ownClock: (by: string, ahead: boolean) =>
    ahead
      ? `The other phone’s clock is ${by} ahead. Set the wrong one first.`
      : `The other phone’s clock is ${by} behind. Set the wrong one first.`,
  damaged: 'Not whole. Nothing was changed. Reading again.',
  newer: 'Made by a newer version of this app. Update this one first.',
  unkept: 'Could not be kept. Nothing was changed.',
  camera: {
    refused: 'The camera is not allowed here. Allow it in the phone’s settings, or pass a file.',
    none: 'No camera. Pass a file instead.',
    busy: 'Another app has the camera. Close it, then READ again.',
  },
  camPrivate: 'Pictures are looked at and thrown away.',
  took: (coats: number, pots: number, others: number) => {
    const parts = [
      ...(coats > 0 ? [many(coats, 'coat', 'coats')] : []),
      ...(pots > 0 ? [many(pots, 'pot', 'pots')] : []),
      ...(others > 0 ? [many(others, 'other note', 'other notes')] : []),
    ]
    return `${all(parts)} from the other phone.`
  },
  nothingNew: 'Nothing new. All of it is here.',
  waiting: (count: number) =>
    isOne(count) ? 'One waits for an update of this app.' : `${count} wait for an update of this app.`,
  faulty: (count: number) => (isOne(count) ? '1 damaged note left out.' : `${count} damaged notes left out.`),
  ahead: (count: number) =>
    isOne(count)
      ? '1 note of a clock a day ahead left out.'
      : `${count} notes of a clock a day ahead left out.`,
  clocks: (by: string, ahead: boolean) =>
    ahead ? `Its clock is ${by} ahead.` : `Its clock is ${by} behind.`,
  theyLack: (count: number) =>
    isOne(count) ? '1 note here is not there yet.' : `${count} notes here are not there yet.`,
  more: 'It has more than it showed. Show back, then read once more.',
  both: 'Both phones have the same.',
  student: {
    title: 'Bench alone',
    why: 'This phone shows the bench and nothing else.',
    leave: 'Hold to show all screens',
    leaveHint: 'Hold it for 3 s',
  },
  next: 'Read the next phone',
  toBoard: 'All pots',
  class: {
    key: 'A class at one table',
    title: 'Class',
    none: 'No pot on the boards yet.',
    first: 'Add a name. Then tap the pots that are theirs.',
    tap: (name: string) => `Tap the pots of ${name}.`,
    name: 'Name',
    add: 'Add',
    has: (pots: number) => (pots === 0 ? '' : `${pots}`),
    pot: (number: number, at: string, whose = 'nobody') => `Pot ${number} at ${at}, ${whose}`,
    begun: (numbers: readonly number[]) =>
      isOne(numbers.length)
        ? `${all(numbers.map(String))} has coats on and is not in the plan. SHOW and READ pass all.`
        : `${all(numbers.map(String))} have coats on and are not in the plan. SHOW and READ pass all.`,
    sheet: 'Class sheet',
    show: 'Show the plan',
    plan: 'Class plan',
    how: 'On each phone: Room, Keep, Another phone, READ. Then tap the name.',
    nobody: 'Nobody’s yet',
    kiln: 'kiln',
    whose: 'Whose phone is this?',
    everyone: 'All pots',
    take: (name: string | undefined, numbers: readonly number[]) =>
      `${name === undefined ? 'Take' : `${name}: take`} ${isOne(numbers.length) ? 'pot' : 'pots'} ${all(numbers.map(String))}?`,
    coats: 'With their coats and buckets.',
    changes: 'Take the changes?',
    away: (numbers: readonly number[]) =>
      isOne(numbers.length)
        ? `${all(numbers.map(String))} is no longer yours: off this bench.`
        : `${all(numbers.map(String))} are no longer yours: off this bench.`,
    kept: (numbers: readonly number[]) =>
      isOne(numbers.length)
        ? `${all(numbers.map(String))} was set on this phone and stays so.`
        : `${all(numbers.map(String))} were set on this phone and stay so.`,
    buckets: (names: readonly string[]) => `New here: ${all(names)}.`,
    alone: 'Show the bench alone on this phone?',
    aloneHelp: 'No board, buckets or room to get lost in. A long press leads back.',
    aloneYes: 'BENCH ALONE',
    aloneNo: 'ALL',
  },
  handout: {
    title: 'Hand on',
    nth: (code: number, of: number) => `Code ${code} of ${of}`,
    print: 'Print',
    how: 'On the other phone: Room, Keep, Another phone, READ. It takes the coats and their buckets, no pots.',
    none: 'No stack to hand on.',
    tooMuch: 'Too much for codes that stand still. Hand the stacks on one by one, or SHOW all of it.',
    take: (names: readonly string[]) => (names.length === 0 ? 'Take these buckets?' : `Take ${all(names)}?`),
    other: (name: string) => `${name} stands here with other coats: pots that are to have it get these.`,
    buckets: (names: readonly string[]) =>
      isOne(names.length)
        ? `New here: ${all(names)}. Weigh and measure what is in your own bucket.`
        : `New here: ${all(names)}. Weigh and measure what is in your own buckets.`,
    yes: 'TAKE',
    no: 'LEAVE',
  },
}
