import type { PotFacts } from '../../../shared/nouns.ts'
import { lidFor, withGallery } from '../../../src/table/advice/lid.ts'
import { demoEvents } from '../../../src/table/decide/demo.ts'
import { stepShape } from '../../../src/table/entry/offer.ts'
import { DEFAULT_BOARD } from '../../../src/table/model/defaults.ts'
import { BenchPage } from '../bench.ts'
import type { Story } from './story.ts'

const shape = withGallery(stepShape(DEFAULT_BOARD, 'jar', 'medium'))
const jar: PotFacts = {
  potId: 'jar',
  number: 39,
  place: { board: 'C', spot: 1 },
  shape,
  stackId: 'demo.tideline',
}
const lid: PotFacts = {
  ...jar,
  potId: 'lid',
  place: { board: 'C', spot: 2 },
  shape: lidFor(shape),
  lidOf: 'jar',
}

/** Two pieces of one number, whose seat has to stay bare. */
export const lidded: Story = {
  name: 'jar and lid',
  hands: 'bench',
  async tell(page, see) {
    const demo = demoEvents().filter((event) => event.kind !== 'pot-set')
    const bench = await BenchPage.on(page, [
      demo,
      [
        { kind: 'pot-set', pot: jar },
        { kind: 'pot-set', pot: lid },
      ],
    ])
    await bench.pass(11)
    await see('wax: jar')
    await bench.hit()
    await see('wax: lid')
  },
}
