import { isOne } from './counts.ts'

const coats = (n: number): string => (isOne(n) ? '1 coat' : `${n} coats`)

/** English of looking back: plots, a glaze's results, a story that is played. */
export const back = {
  title: 'Looking back',
  toStory: 'Its story',
  tap: 'Tap a mark: what it is, and its story.',
  asTable: (n: number) => `As a table: ${n}`,
  results: {
    unknown: 'No such glaze',
  },
  film: {
    play: 'PLAY',
    stop: 'STOP',
    again: 'AGAIN',
    next: 'NEXT',
    before: 'BACK',
    part: (n: number, of: number) => `Part ${n} of ${of}`,
    bare: 'Bare bisque',
    waxed: 'Waxed foot',
    coat: (n: number, glaze: string) => `Coat ${n}: ${glaze}`,
    under: (cover: string, seconds: string, thick: string | undefined) =>
      [cover, `${seconds} under`, thick].filter(Boolean).join(', '),
    thick: (mm: string) => `about ${mm}`,
    wait: 'It dries',
    waited: (span: string) => `after ${span}`,
    water: (grams: number) => `${grams} g of water in it`,
    loaded: (place: string) => `Into the kiln, place ${place}`,
    inKiln: 'In the kiln',
    fire: 'It melts',
    fired: (span: string) => `kiln on for ${span}`,
    cone: (cone: string) => `cone ${cone} down`,
    photo: 'As it came out',
  },
  runs: {
    title: 'Runs, told and found',
    none: 'No run was told and found yet. Each judged pot whose glazes have tiles stands here.',
    said: (n: number, within: number, farther: number, less: number) =>
      isOne(n)
        ? `1 pot: it ${within ? 'kept to the range told' : farther ? 'ran farther than told' : 'ran less than told'}.`
        : `${within} of ${n} pots kept to the range told; ${farther} ran farther, ${less} less.`,
    edges: (none: number, shelf: number) =>
      [none > 0 ? `${none} did not run.` : '', shelf > 0 ? `${shelf} came onto the shelf.` : '']
        .filter(Boolean)
        .join(' '),
    x: { metric: 'told, mm', us: 'told, in' },
    y: { metric: 'found, mm', us: 'found, in' },
    noRun: 'none',
    shelf: 'shelf',
    legend: {
      dot: 'fixed before the lid',
      ring: 'as tiles tell it',
      down: 'did not run',
      up: 'on the shelf',
      bar: 'ran, not measured',
    },
    line: (pot: string, told: string, low: string, high: string, found: string) =>
      `Pot ${pot}: told ${told} (${low} to ${high}), found ${found}.`,
    heads: ['Pot', 'Told', 'From', 'To', 'Found'],
  },
  waits: {
    title: 'Waits, check by check',
    none: 'No check yet. DRY and NOT YET teach the waits, and so does a pot on the scale.',
    said: (checks: number, low: string, high: string, was: string, wasHigh: string) =>
      isOne(checks)
        ? `1 check: an hour estimated is ${low} to ${high} for all coats alike. Before any check: ${was} to ${wasHigh}.`
        : `${checks} checks: an hour estimated is ${low} to ${high} for all coats alike. Before any check: ${was} to ${wasHigh}.`,
    coat: (low: string, high: string) => `One coat by itself differs by more: ${low} to ${high}.`,
    x: 'checks',
    y: 'min for an hour estimated',
    legend: { solid: 'all coats alike', hatch: 'one coat by itself', dot: 'after this check' },
    before: (low: string, high: string) => `Before any check: ${low} to ${high}.`,
    line: (checks: number, pot: string, glaze: string, low: string, high: string) =>
      `Check ${checks}, pot ${pot}, ${glaze}: ${low} to ${high}.`,
    heads: ['Check', 'Pot', 'Glaze', 'From', 'To'],
  },
  density: {
    title: 'A bucket’s density',
    none: 'No coat was dipped, and no cup weighed, of this bucket yet.',
    bucket: 'Bucket',
    said: (name: string, n: number, low: string, high: string) =>
      low === high ? `${name}: ${coats(n)}, all at ${low}.` : `${name}: ${coats(n)} at ${low} to ${high}.`,
    within: (n: number, low: string, high: string) => `${n} within its target, ${low} to ${high}.`,
    weighed: (n: number) => (isOne(n) ? '1 cup weighed of this fill.' : `${n} cups weighed of this fill.`),
    thinner: (n: number) => (isOne(n) ? 'Water went in once.' : `Water went in ${n} times.`),
    x: 'day',
    y: 'g/mL',
    legend: {
      ring: 'a coat',
      square: 'a cup weighed',
      hatch: 'target',
      w: 'w: thinner, water went in',
      line: 'dashed: new fill',
    },
    dipped: (pot: string, moment: string, density: string) => `Pot ${pot}, ${moment}: dipped at ${density}.`,
    cup: (moment: string, density: string) => `A cup, ${moment}: ${density}.`,
    cupName: 'cup',
    heads: ['What', 'When', 'Density'],
  },
}
