/** Spanish of why something is not done at the kiln, by what is wrong. */
export const refusal: Readonly<Record<string, string | ((n: string) => string)>> = {
  'no-kiln': 'Ese horno no se conoce.',
  'no-load': 'Esa hornada no se conoce.',
  'no-shelf': 'No hay tal placa.',
  'no-place': 'No es un lugar: toca en la placa.',
  'other-kiln': (n: string) =>
    n === '1'
      ? 'Sus placas son de otra clase: la que está puesta se propone de nuevo.'
      : `Sus placas son de otra clase: las ${n} que están puestas se proponen de nuevo.`,
  'not-back': 'Corrige antes lo que vino después.',
  wet: 'Sus piezas no están secas: sécalas primero en el horno, o espera.',
  'hot-kiln': 'Este horno sigue caliente con otra hornada.',
  'shelf-below': 'La placa de abajo aún no está cargada.',
  loaded: (n: string) => `La placa ${n} está cargada: queda como está.`,
  'lit-already': 'El horno está encendido: la hornada queda como está.',
  'not-lit': 'El horno aún no está encendido.',
  'off-already': 'El horno ya está apagado.',
  'not-off': 'El horno aún no está apagado.',
  'open-already': 'La tapa ya está abierta.',
  'on-other-load': (n: string) => `${n} está en otra hornada.`,
  'already-fired': (n: string) => `${n} ya se coció.`,
  'not-open': 'La tapa aún no está abierta.',
  'matched-already': (n: string) => `${n} ya se encontró.`,
  'same-minute': 'Hay una lectura de ese minuto. Dale otra hora a esta.',
}
