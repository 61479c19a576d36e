/** What the opening chooses among, for screens: they know shared nouns by their types alone. */
export { FAULTS, type Fault, PHOTO_SIDES, STUCK, type Stuck } from '../../../shared/opening.ts'
