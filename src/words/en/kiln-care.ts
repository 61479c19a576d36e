/** English of what to mind at the kiln, as it is loaded, fired, cooled and unloaded. */
export const kilnCare = {
  shelf:
    'Kiln isolated. A shelf takes two hands. Shelf wash and old glaze are silica and razors: wet, gloves, eye cover.',
  light:
    'Maker’s manual and local code first; wiring and gas are for licensed people. Stay with the kiln, out of burn-off; vent on from the start, nothing near that burns, CO alarm on.',
  glass:
    'Heat gloves, face to the side: steam comes out. The glass in tongs. Vent on, nothing near that burns, CO alarm on; the manual comes first.',
  spy: 'Stay with the kiln. Spy hole: rated dark glasses, an arm’s length away.',
  off: 'Off as the maker’s manual has it; gas shut at its valve. Stay until it falls: a relay may stick. The outside burns.',
  cool: 'The outside burns. The manual may say colder.',
  lid: 'Heat gloves, face away from the gap.',
  open: 'Heat gloves, then cut gloves. Chips and drips: grind wet, eye cover. Shivered ware is slivers: never for food, never again into the fire.',
  food: 'This app cannot tell whether a pot is safe for food.',
}
