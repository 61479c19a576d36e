/** English of the first screen, which shows before anything else is fetched. */
export const front = {
  name: 'Bucketside',
  tag: 'The second head at the glaze table.',
  missing: 'This part is not on the phone yet, and there is no network.',
  faulty: 'This part is broken, or did not come whole. What you put in is kept.',
  retry: 'Try again',
  toBench: 'To the bench',
  unopened: {
    title: 'Bucketside did not open',
    text: 'What you put in is still on this phone. Try again; if it stays like this, back up first.',
    backUp: 'Back up',
    passOn: 'Save what broke, to pass it on',
    failed: 'That did not work. Try again.',
  },
  first: {
    job: 'The second head at the glaze table: it counts your dips aloud, estimates when each coat will take the next one, warns before a coat may be too thick or run, and keeps a record of every dip.',
    own: 'My own pots',
    back: 'Back to my pots',
    demo: 'Try the demo evening',
    demoText: 'Eight invented pots, three invented glazes.',
    cautionTitle: 'Before you start',
    cautions: [
      'Hot wax burns and can catch fire. Never leave the pan; never water on a wax fire.',
      'Glaze dust is silica. Wipe wet, never sweep or sand dry.',
      'Wet hands and a mixer: a tested GFCI or RCD, cable off the floor.',
      'This app cannot tell whether a pot is safe for food. Only a laboratory can.',
      'Local rules and licensed people come first.',
    ],
    keep: 'Works without a network. Nothing leaves this phone.',
  },
}
