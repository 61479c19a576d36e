import { isOne } from './counts.ts'

/** What is told of a backup. `day`: as 2026-03-04. */
export interface Looked {
  readonly day: string | null
  readonly records: number
  readonly pots: number
  readonly pictures: number
  readonly fresh: number
}

/** English of the room. */
export const room = {
  title: 'Room',
  doors: {
    air: 'Air',
    kiln: 'Kiln',
    clay: 'Clay',
    count: 'Count and sound',
    phone: 'This phone',
    keep: 'Keep',
  },
  help: 'Help',
  noKiln: 'no hour set',
  kilnAt: (when: string) => `on ${when}`,
  clayStands: (wall: string, cone: string, takes: string) => `walls ${wall}, cone ${cone}, takes ${takes}`,
  countStands: (lead: string, sound: string) => `${lead} to IN, ${sound}`,
  copiedShort: (days: number | undefined) =>
    days === undefined
      ? 'no copy outside it yet'
      : days === 0
        ? 'copied today'
        : isOne(days)
          ? `copied ${days} day ago`
          : `copied ${days} days ago`,
  temp: 'Temperature',
  rh: 'Humidity',
  draught: 'Air at the pots',
  clayHelp: 'The board’s clay: for new pots; any pot may differ.',
  wall: 'Wall',
  footLine: 'Foot line up',
  cone: 'Bisque cone',
  absorption: 'Absorption',
  absorptionHelp: 'Water it takes, by weight, from a cold soak.',
  drinksLittle: (cone: string) => `Cone ${cone} bisque drinks little: expect thin coats.`,
  bisque: 'Bisque comes',
  bisques: { dry: 'dry', damp: 'damp', washed: 'washed' },
  bisqueHelp: 'Washed under the tap or damp, it has to dry before wax and glaze. Any pot may differ.',
  alone: 'Bench alone',
  aloneHelp: 'For a student’s phone: no other screen. Holding a key for 3 s leads back.',
  units: 'Units',
  unit: { metric: 'mm, °C, litres', us: 'inches, °F, gallons' },
  leadIn: 'Lead-in',
  leadInHelp: 'From the hit to IN.',
  lower: 'Lowering speed',
  drip: 'Drip',
  sound: 'Sound',
  sounds: { voice: 'voice', tones: 'tones', numerals: 'none' },
  spoken: 'The voice speaks',
  heard: {
    title: 'Hear every sound',
    none: 'Sound is set to none.',
    tones: {
      heard: 'Your hit was taken',
      low: 'A beat before IN',
      in: 'IN: now it goes under',
      tick: 'A second under',
      rise: 'The last second: OUT comes',
      out: 'OUT: lift it now',
      drip: 'Dripped off: foot or rim next',
      hold: 'A key is being held',
      refused: 'Not taken',
    },
    call: (glaze: string) => `A pot for ${glaze} is ready`,
  },
  noisy: 'Noisy room: show what sounds',
  noisyHelp: 'Stripes at the screen’s edge on each beat and call, never faster than two a second.',
  knock: 'Knock twice on the table',
  knocks: { off: 'off', motion: 'felt', mic: 'heard' },
  knockHelp:
    'Felt by the motion sensor, or heard by the microphone; nothing is kept. Only for steps that harm nothing: never a dip, never DRY.',
  knockStates: {
    off: '',
    listening: 'Listening for two knocks.',
    refused: 'Not allowed by the phone. Everything else works.',
    absent: 'This phone can’t.',
  },
  ring: 'Ringing with the screen off',
  ringOn: 'Ring with the screen off',
  ringHelp: 'Plays a silent track with the calls in it while pots wait. It stops your music.',
  ringProof: {
    proven: 'Rang with the screen off on this phone when it was tried.',
    untested: 'Not tried on this phone with this browser. Keep the screen on, or test it.',
    failed: 'Did not ring when it was tried. Keep the screen on, or use the calendar.',
  },
  ringNever: 'Nothing rings once the phone has closed the app. Only the calendar does.',
  ringTest: 'Test it: one minute',
  ringLock: (clock: string) => `Lock the phone now. It rings at ${clock}. Wait for it, then come back.`,
  ringAsk: 'Did it ring?',
  ringStayed: 'The screen was on when it was due. Lock it straight after the tap.',
  ringYes: 'It rang',
  ringNo: 'It did not',
  ringStop: 'Stop the test',
  ringFailed: 'The phone refused to play the track.',
  notices: {
    granted: 'Notices are on: the next call stands on the lock screen.',
    denied: 'Notices are blocked in the browser’s settings.',
    ask: 'Allow notices',
    absent: 'This browser has no notices here.',
  },
  calendar: 'Long waits to the calendar',
  calendarHelp: 'Waits of over an hour and kiln-dry, as a file that the phone’s own calendar rings for.',
  calendarDone: {
    shared: 'Passed on.',
    saved: 'Saved as a file: open it.',
    cancelled: 'Not passed on.',
    none: 'No wait of over an hour now.',
  },
  name: 'Its name, spoken',
  nameHelp: 'Hold the key, say the name, let go. Kept on this phone alone.',
  nameRecord: 'Hold and say it',
  nameRecording: 'Say it …',
  namePlay: 'Play',
  nameDrop: 'Use the letter',
  nameResults: {
    kept: 'Kept.',
    refused: 'The microphone is not allowed. It is called by its letter.',
    absent: 'No microphone here. It is called by its letter.',
    nothing: 'Nothing heard. Hold until you have said it.',
  },
  potters: 'Potters at this phone',
  potterCounts: { one: 'one', two: 'two' },
  kilnOn: 'Kiln on at',
  kilnOnRange: (days: number) => `From now to ${days} days ahead; empty: no kiln to meet.`,
  load: 'Loading takes',
  candle: 'Candling',
  candles: { no: 'no', yes: 'yes' },
  candleHelp:
    'Hold it below boiling, vent open, until no moisture shows. Stay with the kiln; its manual and local rules come first.',
  dippedBy: (when: string) => `All dipped ${when}`,
  waits: 'Waits',
  onIt: 'Wax, and coats in all',
  stale: 'A stir keeps',
  wax: 'Wax',
  waxes: { hot: 'hot', water: 'water-based' },
  waxCaution: 'Hot wax: thermostat, vent on, sleeves back. Never walk away, never water on it.',
  order: 'Order',
  orders: { wax: 'wax, then wipe', wipe: 'wipe, then wax' },
  ready: 'READY means',
  readies: { touch: 'sheen gone', thirsty: 'thirsty again', clock: 'own minutes' },
  firstWait: 'After a first coat',
  laterWait: 'After later coats',
  kilnWait: 'To kiln-dry',
  readyHelp: 'Thirsty waits until the wall can drink a full coat.',
  limit: 'Limit of all coats',
  vessel: 'Collar vessel across',
  language: 'Language',
  asPhone: 'as the phone',
  hand: 'Working hand',
  hands: { right: 'right', left: 'left' },
  phoneStands: (units: string, hand: string) => `${units}; ${hand} hand`,
  theme: 'Theme',
  themes: { auto: 'as the phone', paper: 'paper', dim: 'dim' },
  backUp: 'Back up',
  backedUp: { shared: 'Passed on.', saved: 'Saved as a file.', cancelled: 'Not backed up.' },
  failed: 'That did not work. Nothing was changed.',
  otherPhone: 'Another phone: show or read codes',
  sheets: 'Spreadsheet and pictures, one zip',
  passedSheets: { shared: 'Passed on.', saved: 'Saved as a file.', cancelled: 'Not passed on.' },
  takeIn: 'Take in a backup',
  looked: ({ day, records, pots, pictures, fresh }: Looked) =>
    `${day ? `Made ${day}: ` : ''}${records} ${isOne(records) ? 'note' : 'notes'}, ${pots} ${isOne(pots) ? 'pot' : 'pots'}${pictures > 0 ? (isOne(pictures) ? `, ${pictures} picture` : `, ${pictures} pictures`) : ''}. ${fresh} not here yet.`,
  notes: 'A note is one thing said or done: a pot set up, a dip, a touch.',
  unclocked: (n: number) =>
    isOne(n)
      ? 'The clock of one phone in it was never compared: its waits are told as if it agreed with this one. Meet it by codes to be sure.'
      : `The clocks of ${n} phones in it were never compared: their waits are told as if they agreed with this one. Meet them by codes to be sure.`,
  join: 'Join with this table',
  whose: 'Is this phone to go on as the one that made the file?',
  goOn: 'Yes: that one is lost or replaced',
  another: 'No: another phone at its table',
  clock: (there: string, here: string) =>
    `That phone’s clock showed ${there} when it made the file. Here it is ${here}. Waits go by that.`,
  justNow: 'It was made just now',
  agree: 'Made before; the clocks agree',
  clockElse: 'Neither? Leave it and meet by codes: they compare the clocks.',
  clockGone: 'Neither? Its waits may be wrong: touch each pot before its next dip.',
  leave: 'Leave it',
  tookIn: (added: number, known: number) => `${added} new, ${known} known already.`,
  photosIn: (n: number) => (isOne(n) ? `${n} picture new.` : `${n} pictures new.`),
  photosLost: (n: number) =>
    isOne(n) ? `${n} picture could not be read or kept.` : `${n} pictures could not be read or kept.`,
  photosLeft: (n: number) =>
    isOne(n)
      ? `${n} picture is not in it: it could not be read on this phone.`
      : `${n} pictures are not in it: they could not be read on this phone.`,
  photosGo: (n: number, size: string) =>
    isOne(n) ? `${n} picture goes along, ${size}.` : `${n} pictures go along, ${size}.`,
  notWhole: (read: number, of: number | null) =>
    of === null ? `The file is not whole: ${read} records read.` : `The file is not whole: ${read} of ${of}.`,
  leftOut: (n: number) => `${n} left out: damaged.`,
  waiting: (n: number) => `${n} kept aside until an update of this app knows them.`,
  ahead: (n: number) => `${n} refused: they are more than a day ahead of this phone's clock. Set the clocks.`,
  refused: {
    'too-large': 'Too large for a backup of ours.',
    'not-a-backup': 'Not a backup of ours. Nothing was changed.',
    newer: 'Written by a newer version. Update, then take it in.',
  },
  aside: (n: number) =>
    isOne(n)
      ? `${n} record set aside: damaged, or of a newer version. Back up holds them too.`
      : `${n} records set aside: damaged, or of a newer version. Back up holds them too.`,
  readOnly: 'Read only: a newer version has written here.',
  copied: (days: number | undefined) =>
    days === undefined
      ? 'No copy outside this phone yet.'
      : days === 0
        ? 'Last copy outside this phone: today.'
        : isOne(days)
          ? `Last copy outside this phone: ${days} day ago.`
          : `Last copy outside this phone: ${days} days ago.`,
  copyHere:
    'A second copy on this phone stands in when its storage breaks. Clearing site data, removing the app or losing the phone takes both: back up.',
  noCopyHere:
    'No second copy is kept on this phone. What breaks, clears or loses the storage takes everything: back up.',
  lasting: {
    yes: 'The browser has promised to throw nothing away by itself.',
    no: 'The browser may throw it away when the phone is full.',
  },
  licences: 'Licences of all that is in it',
  clear: 'Clear the table (press and hold)',
  clearHelp: 'Buckets, stacks and pots go; settings stay. Take back brings all of it back.',
  cleared: 'The table is empty.',
  install: 'Install',
  installBy: 'Use “Add to Home Screen” in the browser’s menu.',
  installed: 'Installed.',
  offline: 'Ready without a network.',
  notOffline: 'Not kept for offline use yet.',
  update: 'Update now',
  cautions: [
    'The wax pan: a thermostat, a vent that runs, sleeves and buckets away, somebody beside it. Off when the last foot is waxed.',
    'Unplug the mixer before you touch its blade.',
    'A glaze that contains lead, cadmium, barium, manganese or other harmful matter: wear gloves, read its safety sheet.',
    'The kiln: its manual, local rules, somebody who stays. Vent on while wax burns off; wiring by licensed people.',
    'Fired drips are razor-sharp: wear gloves, and eye cover to chip or grind.',
    'A full bucket is heavy: two people, or a dolly.',
  ],
  about: 'About',
  aboutText:
    'Waits and thickness are estimates from wall, coats and air, with their spread. Your touch decides.',
  private: 'No account. Nothing leaves this phone unless you pass it on.',
}
