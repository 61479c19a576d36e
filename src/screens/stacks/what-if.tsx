import { AS_IS, type Suppose } from '../../table/advice/what-if.ts'
import { More } from '../../ui/more.tsx'
import { Stepper } from '../../ui/stepper.tsx'
import { decimal } from '../../words/number.ts'
import { useDesk } from '../desk/desk-app.ts'

/** One step of each, and how many steps either way are worth a look. Our choice. */
const STEP = { gramsPerMl: 0.02, wallMm: 0.5, rh: 0.1 } as const
const MOST_STEPS = 4

interface WhatIfProps {
  readonly suppose: Suppose
  readonly set: (suppose: Suppose) => void
}

/** The same stack in a thicker bucket, on another wall, in other air: the outlook above moves with it. */
export function WhatIf({ suppose, set }: WhatIfProps) {
  const { words } = useDesk()
  const w = words.value.desk.stacks.whatIf
  const keys = (of: keyof Suppose, label: string, text: string) => {
    const steps = Math.round(suppose[of] / STEP[of])
    const to = (next: number) =>
      Math.abs(next) > MOST_STEPS ? {} : { act: () => set({ ...suppose, [of]: next * STEP[of] }) }
    return (
      <Stepper
        label={label}
        text={text}
        plain
        less={{ label: w.less(label), ...to(steps - 1) }}
        more={{ label: w.more(label), ...to(steps + 1) }}
      />
    )
  }
  const signed = (value: number, digits: number) => `${value > 0 ? '+' : ''}${decimal(value, digits)}`
  return (
    <More label={w.title}>
      {keys('gramsPerMl', w.density, signed(suppose.gramsPerMl, 2))}
      {keys('wallMm', w.wall, `${signed(suppose.wallMm, 1)} mm`)}
      {keys('rh', w.air, `${signed(suppose.rh * 100, 0)} %`)}
      {suppose === AS_IS ? null : (
        <button type="button" class="key" onClick={() => set(AS_IS)}>
          {w.asIs}
        </button>
      )}
    </More>
  )
}
