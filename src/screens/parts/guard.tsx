import type { ComponentChildren } from 'preact'
import { Boundary } from '../../ui/boundary.tsx'
import { PressButton } from '../../ui/press.tsx'
import { useApp } from '../app.ts'
import { lazyPart } from '../lazy.tsx'

/** Fetched in good time with all other parts. */
const Broken = lazyPart(() => import('./broken.tsx').then((part) => part.Broken))

/** A screen, or a part of one: where it fails, what broke is said in its place, and kept to be passed on. */
export function Guard({
  where,
  children,
  small,
}: {
  readonly where: string
  readonly children: ComponentChildren
  /** In place of a part: a line instead of a page. */
  readonly small?: true
}) {
  const { fault, words } = useApp()
  return (
    <Boundary
      failed={(error) => fault(where, error)}
      instead={(again) =>
        small ? (
          <p class="said" role="alert">
            {words.value.broken.part}{' '}
            <PressButton class="key" onPress={again}>
              {words.value.broken.again}
            </PressButton>
          </p>
        ) : (
          <Broken again={again} />
        )
      }
    >
      {children}
    </Boundary>
  )
}
