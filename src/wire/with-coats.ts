/** What a table with coats needs, and what earlier pages of this version computed for it. */

import '../table/card/with-coats.ts'
import { keptValues } from '../device/kept-values.ts'
import { isAtNodes, rememberRuns } from '../engine/wait/learn.ts'

// The name of a built file changes with any of the code it stands on.
rememberRuns(keptValues('bucketside.runs', import.meta.url, isAtNodes))
