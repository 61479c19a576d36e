/** Once fetched, it gives a table with coats what its cards need: what computes walls, and the end of a sitting. */

import '../forecast/walls.ts'
import { endSteps } from '../steps/close-down.ts'
import { haveEnd } from './end.ts'
import { closedCard, endCard } from './end-card.ts'

haveEnd({ endSteps, endCard, closedCard })
