import { Choice } from '../../ui/choice.tsx'
import { useDesk } from '../desk/desk-app.ts'

/** Which of the table's stacks. */
export function StackChoice({
  label,
  value,
  onChoose,
}: {
  readonly label: string
  readonly value: string
  readonly onChoose: (stackId: string) => void
}) {
  const { table } = useDesk()
  const options = Object.values(table.value.stacks).map(({ stackId, name }) => ({
    value: stackId,
    label: name,
  }))
  return <Choice label={label} options={options} value={value} onChoose={onChoose} />
}
