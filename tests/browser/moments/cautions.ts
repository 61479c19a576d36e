/** What has to stand on the screen at a step that can hurt someone: of each story, by its moments. */
export const CAUTIONS: Readonly<Record<string, Readonly<Record<string, readonly RegExp[]>>>> = {
  'one pot': {
    wax: [/thermostat/, /vent on/, /sleeves back/, /Never walk away/, /wet pot makes it spit/],
    'wax done: pan off?': [/thermostat/, /vent/, /sleeves/, /never water/],
    wipe: [/dust is silica/],
    'open a bucket': [/GFCI or RCD/, /dry hands/, /cable clear/, /Unplug it before you touch the blade/],
    'stir again': [/GFCI or RCD/, /Unplug it before you touch the blade/],
    decant: [/manganese/, /GFCI or RCD/],
    'armed: collar': [/manganese: wear gloves/],
    return: [/manganese: wear gloves/],
    'tools: in the settling bucket': [/Unplug the mixer before you touch the blade/, /drain: local rules/],
    closed: [
      /vent on/,
      /stay with it, out of burn-off/,
      /manual and local rules come first/,
      /cannot tell whether a pot is safe for food/,
    ],
  },
  'the end': {
    lid: [/manganese: wear gloves/],
    tools: [/manganese: wear gloves/, /Never the sink/, /Unplug the mixer/, /drain: local rules/],
    floor: [/silica dust: never sweep or brush/, /Wipe it wet/],
    closed: [/vent on/, /cannot tell whether a pot is safe for food/],
    'dry sooner': [/its manual first/],
  },
  'the kiln': {
    'a shelf': [/Kiln isolated/, /shelf takes two hands/],
    on: [
      /manual and local code first/,
      /licensed people/,
      /Stay with the kiln/,
      /vent on from the start/,
      /CO alarm/,
    ],
    'a cone': [/rated dark glasses/, /an arm’s length/],
    'cone down?': [/Stay with the kiln/, /rated dark glasses/],
    cooling: [/The outside burns/, /thermometer’s place, not the pots’/],
    'lid open?': [/Heat gloves/],
    'at what degrees': [/Heat gloves/],
    unload: [
      /then cut gloves/,
      /eye cover/,
      /never for food, never again into the fire/,
      /cannot tell whether a pot is safe for food/,
    ],
  },
  'the opening': {
    'a pot': [/Heat gloves/, /cut gloves/],
    stuck: [/eye cover/, /wet/],
    shivered: [/never for food/, /Do not refire/],
  },
  'much to say': {
    'armed: one in hand, a run, gloves': [/sponge the foot/, /May run/, /manganese: wear gloves/],
  },
  'marks to dab': {
    'armed: marks, a run, gloves': [/tong marks/, /May run/, /manganese: wear gloves/],
  },
  slips: { 'other: more': [/Thermostat, vent, sleeves back/] },
  'first visit': {
    'first visit': [
      /Hot wax/,
      /silica/,
      /GFCI or RCD/,
      /cannot tell whether a pot is safe for food/,
      /Local rules/,
    ],
  },
}

/** Which of them are missing among the words of a screen. */
export const missingCautions = (story: string, moment: string, text: string): string[] =>
  (CAUTIONS[story]?.[moment] ?? [])
    .filter((caution) => !caution.test(text))
    .map((caution) => `no word of ${caution.source}`)
