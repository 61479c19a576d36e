import type { broken as english } from '../en/broken.ts'
import type { Name } from '../name.ts'
import { front } from './front.ts'

/** Spanish of a screen that failed. */
export const broken: typeof english = {
  title: 'Algo falló en esta página',
  text: 'Tus piezas y todo lo anotado están guardados, y las esperas siguen. Prueba otra vez, o sigue desde otra página.',
  again: 'Probar otra vez',
  board: 'A las tablas',
  bench: 'A la mesa',
  backUp: front.unopened.backUp,
  passOn: front.unopened.passOn,
  failed: front.unopened.failed,
  out: (pot: Name, place: string, ago: string) => `${pot} en ${place}: salió del cubo hace ${ago}`,
}
