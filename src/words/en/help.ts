/** English of the help: a stage of the work a page, in plain words, with its caution. */
export const help = {
  title: 'Help',
  toBench: 'Bench',
  more: 'Every card has its caution too. Makers’ sheets, manuals and local rules come before this page.',
  stages: {
    setup: {
      title: 'Setting up',
      lines: [
        'Name each bucket as its lid does. Stir it, weigh a cup of it, save the reading.',
        'Say which coats go on and in which order. Put each pot on its place.',
        'Look each pot over for cracks. Tap it: a dull sound is a crack you can’t see.',
      ],
      caution:
        'Dry glaze and dry clay are silica dust: work wet, mop, never sweep. Keep each maker’s safety sheet at hand.',
    },
    wax: {
      title: 'Waxing and wiping',
      lines: [
        'Wax the foot up to the line, all round: no glaze sticks there.',
        'Wipe the pot with a damp sponge: on dust a glaze crawls.',
        'Both have to dry. The phone counts that too.',
      ],
      caution:
        'Hot wax burns and can catch fire: thermostat and vent on, never leave it. On fire: heat off, lid on, never water. Local fire rules decide.',
    },
    dip: {
      title: 'Dipping',
      lines: [
        'Stir from the bottom until nothing lies there.',
        'Hit START with the pot in hand. Under at IN, out at OUT.',
        'Let it drip, sponge its foot, set it on its place.',
        'Held too long, or it was another pot: Put right.',
      ],
      caution:
        'Wear gloves where a label or the card says so. No food at the buckets. A mixer needs a tested GFCI or RCD; its socket is for a licensed electrician.',
    },
    wait: {
      title: 'Waiting',
      lines: [
        'A coat has to lose its water before the next: else it peels, cracks or comes out thin.',
        'The phone counts each wait and calls. Touch the glaze and say what you felt: it learns.',
        'Meanwhile it gives you other pots.',
      ],
      caution: 'A fan must not raise dust, nor its cable lie in the wet.',
    },
    end: {
      title: 'Ending',
      lines: [
        'Clean each rim, shut each lid, note the level.',
        'Wash tools in the settling bucket, not into the drain.',
        'Mop wet. Wash your hands; leave your apron there.',
      ],
      caution: 'What may go into a drain or a bin is ruled where you are: ask those who run it.',
    },
    load: {
      title: 'Loading',
      lines: [
        'Only kiln-dry pots: the board says when.',
        'Each foot bare, shelves washed, room round each pot and under each shelf.',
        'Set the cones where the spy hole sees them.',
      ],
      caution:
        'A kiln is placed, wired and vented by licensed people, by its manual and local codes. It is off at its switch before a hand goes in.',
    },
    fire: {
      title: 'Firing',
      lines: [
        'Candle what is damp: steam bursts pots.',
        'Note readings. The cone says when it is done, not the clock.',
        'Stay near until it is off: controllers fail.',
      ],
      caution:
        'Fumes: vent on, room empty. The outside burns: keep children and all that burns away. Look in with glasses made for kilns. Manual and local codes decide.',
    },
    open: {
      title: 'Opening',
      lines: [
        'Wait until it is cool: the kiln’s card says when.',
        'Lift pots with gloves; drips cut like glass.',
        'Say what each pot did: it teaches the next firing.',
      ],
      caution:
        'A glaze that looks sound is not known to be safe for food: only a laboratory’s test of your fired pot tells.',
    },
  },
}
