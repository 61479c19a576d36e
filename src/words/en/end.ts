import { isOne } from './counts.ts'

/** English of the end of a sitting: fetched with its faces. */
export const end = {
  lidBar: 'LID ON',
  levelBar: 'OTHER LEVEL',
  toolsBar: 'TOOLS IN',
  floorBar: 'MOPPED',
  lid: (name: string) => `Lid on ${name}`,
  deep: (mm: string) => `${mm} deep`,
  level: (litres: string) => `${litres} as computed. Look in first.`,
  levelRead: (litres: string) => `${litres} as you read it.`,
  more: (n: number) => (n === 0 ? 'the last bucket' : isOne(n) ? '1 more bucket' : `${n} more buckets`),
  tools: 'Tools into the settling bucket',
  toolsText: 'Tongs, cups, whisk, sponges. Never the sink.',
  toolsCaution:
    'Unplug the mixer before you touch the blade. No glaze down a drain: local rules say where it goes.',
  floor: 'Mop it wet',
  floorText: 'Table, boards, floor. The water goes into the settling bucket.',
  floorCaution: 'Dry glaze is silica dust: never sweep or brush it. Wipe it wet.',
  leave: 'Leave this step out',
  pots: (n: number): string => (isOne(n) ? 'pot' : 'pots'),
  coats: (n: number): string => (isOne(n) ? 'coat' : 'coats'),
  fromTo: (likely: string, late: string) => (likely === late ? likely : `${likely}–${late}`),
  days: (likely: string, late: string) => (likely === late ? likely : `${likely || 'today'} – ${late}`),
  dry: 'Dry for the kiln',
  dryToCandle: 'Dry enough to candle',
  early: (span: string) => `${span} early`,
  late: (span: string) => `${span} late`,
  isDry: 'now',
  never: 'never in this air',
  leftOut: (what: string) => `Left out: ${what}. Done now?`,
  left: { 'lid-on': (name: string) => `lid on ${name}`, 'tools-washed': 'tools', 'floor-mopped': 'mop' },
  noCopy: (days: number | undefined) =>
    days === undefined
      ? 'No copy outside this phone yet.'
      : `Last copy outside this phone: ${days} days ago.`,
  copyFailed: 'That did not work. There is no new copy.',
  backUp: 'Back up',
  notNow: 'Not now',
  sooner: 'DRY SOONER',
  load: 'LOAD THE KILN',
  soonerTitle: 'Dry sooner',
  lastDry: (when: string) => `The last pot now: ${when}.`,
  candled: (when: string) => `last pot into the kiln ${when}`,
  candledFor: (likely: string, late: string, water: string) =>
    `${likely} to ${late} below 100 °C: ${water} of water has to leave`,
  soonerBy: (when: string, span: string | undefined) =>
    span === undefined ? `last pot ${when}` : `last pot ${when}, ${span} sooner`,
  looking: 'Looking for what would help.',
  noSooner: 'Nothing here would gain ten minutes.',
  next: (from: number, to: number, of: number) => `${from} to ${to} of ${of}. NEXT`,
  caution:
    'Kiln: vent on, stay with it, out of burn-off; its manual and local rules come first. This app cannot tell whether a pot is safe for food.',
}
