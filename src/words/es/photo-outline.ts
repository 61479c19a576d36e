import type { photo as english } from '../en/photo-outline.ts'

/** Spanish of the outline that is read off a photo. */
export const photo: typeof english = {
  title: 'Perfil de una foto',
  stand: [
    'Pon la pieza en una mesa, sin nada cerca por detrás.',
    'Sujeta el teléfono vertical, a la altura del medio de la pieza.',
    'A un brazo de distancia, o más. Luz de un lado.',
  ],
  one: 'Mide su altura o lo más ancho con una regla. Un cuenco bajo: las dos.',
  camera: 'Sacar una foto',
  file: 'Elegir una imagen',
  stays: 'La foto no se guarda. Solo el perfil.',
  round: 'Una pieza con asa, pico o esquinas no es redonda: mídela a mano.',
  notRead: 'Ese archivo no es una foto que se pueda leer aquí.',
  wait: 'Un momento',
  box: 'Traza un marco ajustado a la pieza, de esquina a esquina.',
  side: 'Sigue el lado derecho del pie al borde. Toca donde gira, o arrastra.',
  sideDone: 'Ya en el borde: sigue',
  footLeft: 'Toca el extremo izquierdo del pie.',
  rimLeft: 'Toca el extremo izquierdo del borde.',
  undo: 'Anular',
  again: 'Otra foto',
  retrace: 'Trazar otra vez',
  looks: '¿Se ve el interior de la pieza?',
  look: { yes: 'Sí', no: 'No', line: 'El borde es una línea' },
  which: '¿Qué longitud mediste?',
  known: { heightMm: 'Altura', bellyMm: 'Lo más ancho, a menudo el borde' },
  length: 'Cuánto mide',
  find: 'Buscar el perfil',
  keep: 'Guardarlo',
  found: '¿Va la línea sobre la pieza? Donde es de puntos no se halló canto.',
  height: 'de alto',
  rim: 'borde',
  widest: 'lo más ancho',
  foot: 'pie',
  steep: 'El teléfono estaba muy por encima del borde. Bájalo para una altura más segura.',
  picture: 'La foto',
  wrong: {
    points: (value: string, least: string, most: string) =>
      `Puntos por el lado: ${value}. Toca de ${least} a ${most}, el pie primero.`,
    height: (value: string, least: string, most: string) =>
      `Del pie al borde es ${value} de la imagen, se admite de ${least} a ${most}. Traza del pie hacia arriba.`,
    across: (value: string, least: string, most: string) =>
      `El pie o el borde es ${value} del ancho de la imagen, se admite de ${least} a ${most}. Traza el lado derecho, luego toca los extremos izquierdos.`,
    edge: (value: string, least: string, most: string) =>
      `Se ve canto en ${value} del perfil, hacen falta de ${least} a ${most}. Mide otra vez las dos longitudes, o pon algo liso detrás de la pieza.`,
    off: (value: string, least: string, most: string) =>
      `El canto está a ${value} de tus toques, se admite de ${least} a ${most}. Traza otra vez, más ajustado.`,
    lengths: (value: string, _least: string, most: string) =>
      `Altura y ancho difieren ${value} de lo que muestra la foto, se admite ${most}. Mide las dos otra vez.`,
    known: (value: string, least: string) =>
      `Longitudes sabidas: ${value}. Esta foto pide ${least}: mide también la otra.`,
    low: (value: string, least: string) =>
      `Su altura es ${value} de su ancho, hace falta ${least}. Mide a mano una pieza tan baja.`,
    heightMm: (value: string, least: string, most: string) => `Altura ${value}: solo de ${least} a ${most}.`,
    rimMm: (value: string, least: string, most: string) => `Borde ${value}: solo de ${least} a ${most}.`,
    bellyMm: (value: string, least: string, most: string) =>
      `Lo más ancho ${value}: solo de ${least} a ${most}.`,
    footMm: (value: string, least: string, most: string) => `Pie ${value}: solo de ${least} a ${most}.`,
    wallMm: (value: string, least: string, most: string) =>
      `La pared de ${value} no deja sitio dentro. Solo de ${least} a ${most}.`,
  },
}
