import type { front as english } from '../en/front.ts'

/** Spanish of the first screen. */
export const front: typeof english = {
  name: 'Bucketside',
  tag: 'La segunda cabeza en la mesa de esmaltar.',
  missing: 'Esta parte aún no está en el teléfono, y no hay red.',
  faulty: 'Esta parte está rota o no llegó entera. Lo que anotaste sigue guardado.',
  retry: 'Probar otra vez',
  toBench: 'A la mesa',
  unopened: {
    title: 'Bucketside no se abrió',
    text: 'Lo que anotaste sigue en este teléfono. Prueba otra vez; si sigue igual, saca antes una copia.',
    backUp: 'Sacar una copia',
    passOn: 'Guardar qué falló, para enseñarlo',
    failed: 'No funcionó. Prueba otra vez.',
  },
  first: {
    job: 'La segunda cabeza en la mesa de esmaltar: cuenta tus baños en voz alta, calcula cuándo cada capa admite la siguiente, avisa antes si una capa puede quedar demasiado gruesa o escurrir, y anota cada baño.',
    own: 'Mis propias piezas',
    back: 'Volver a mis piezas',
    demo: 'Ver la tarde de ejemplo',
    demoText: 'Ocho piezas inventadas, tres esmaltes inventados.',
    cautionTitle: 'Antes de empezar',
    cautions: [
      'La cera caliente quema y puede arder. Nunca dejes sola la olla; nunca agua sobre cera en llamas.',
      'El polvo de esmalte es sílice. Limpia en mojado; nunca barras ni lijes en seco.',
      'Manos mojadas y batidora: un diferencial (GFCI) probado, el cable lejos del suelo.',
      'Esta app no puede saber si una pieza es segura para alimentos. Solo un laboratorio puede.',
      'Las normas locales y las personas autorizadas van primero.',
    ],
    keep: 'Funciona sin red. Nada sale de este teléfono.',
  },
}
