import { useDesk } from '../desk/desk-app.ts'

/** An empty board leads on: buckets, then pots with their coats. What is done is ticked; the next step is inked. */
export function EmptyBoard() {
  const { table, words, go } = useDesk()
  const w = words.value.desk.board.empty
  const hasBucket = Object.keys(table.value.buckets).length > 0
  const steps = [
    {
      done: hasBucket,
      title: w.bucket,
      why: w.bucketWhy,
      open: () => go({ at: 'buckets', bucketId: 'new' }),
    },
    { done: false, title: w.pots, why: w.potsWhy, open: () => go({ at: 'pot' }) },
  ]
  const next = steps.findIndex((step) => !step.done)
  return (
    <section class="empty">
      <h2>{w.title}</h2>
      <p>{w.lines}</p>
      <ol>
        {steps.map((step, i) => (
          <li key={step.title}>
            <button
              type="button"
              class={i === next ? 'empty-step is-next' : step.done ? 'empty-step is-done' : 'empty-step'}
              disabled={i > next}
              onClick={step.open}
            >
              <span class="empty-count figures" aria-hidden="true">
                {step.done ? (
                  <svg viewBox="0 0 24 24" width="28" height="28" aria-hidden="true">
                    <path d="M3 13 L10 20 L21 5" fill="none" stroke="currentColor" stroke-width="4" />
                  </svg>
                ) : (
                  i + 1
                )}
              </span>
              <span>
                <strong>{step.title}</strong>
                <small>{step.why}</small>
              </span>
            </button>
          </li>
        ))}
      </ol>
    </section>
  )
}
