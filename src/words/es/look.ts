import type { look as english } from '../en/look.ts'

/** Spanish of the melt look-ahead. */
export const look: typeof english = {
  title: 'En el horno',
  watch: 'Ver cómo se funde',
  raw: 'crudo',
  cone: (cone: string) => `cono ${cone}`,
  label: (pot: string, moment: string) => `${pot}, ${moment}`,
  thick: (times: number) => `Dibujado a ${times} veces su grosor.`,
  verdict: {
    clear: 'lejos de la línea del pie',
    near: 'cerca, la mitad del pie desnudo o más',
    over: 'pasa, puede llegar a la placa',
    unknown: 'no se sabe',
  },
  flat: 'Pieza plana: no se juzga cuánto escurre.',
  noTile: (glaze: string) => `${glaze}: sin probeta de flujo`,
  pair: {
    'went-wrong': (over: string, under: string) => `${over} sobre ${under}: ya salió mal`,
    fired: (over: string, under: string) => `${over} sobre ${under}: cocida, aún sin confirmar`,
    untried: (over: string, under: string) => `${over} sobre ${under}: sin probar`,
  },
  room: (room: string, run: string, upper: string) =>
    `puede escurrir de ${run} a ${upper} de sus ${room} desnudos`,
  roomWorst: (room: string, run: string) =>
    `puede escurrir ${run} de sus ${room} desnudos, en el peor caso hasta la placa`,
  roomOver: (room: string, run: string) => `puede escurrir ${run}, solo ${room} desnudos`,
  carried: 'Probado en otra cocción: cuece una probeta nueva.',
  hangs: 'El fundido cuelga bajo la panza y puede gotear.',
  rim: (mm: string) => `borde con ${mm} de fundido`,
  pool: (mm: string) => `${mm} de grueso en el fondo`,
  noFiring: 'No se sabe cuánto escurre: sin probeta, y sin cocción dicha.',
  toTile: 'Probetas de flujo',
  remedies: (glaze: string) => `Remedio para ${glaze}`,
}
