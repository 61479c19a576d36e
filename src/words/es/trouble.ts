import type { trouble as english } from '../en/trouble.ts'

/** Spanish of what the phone says when something about keeping is wrong or was mended. */
export const trouble: typeof english = {
  notSaved: 'SIN GUARDAR',
  notSavedText:
    'El teléfono no lo acepta ahora. Queda aquí y se prueba otra vez. Guarda un archivo; borrar fotos o apps libera espacio.',
  unread: 'No se puede leer lo guardado en este teléfono',
  unreadText:
    'La mesa que ves no es la tuya. Cierra las otras ventanas de esta app y ábrela otra vez. Lo que hagas entretanto queda.',
  readOnly: 'Hay abierta una versión más nueva',
  readOnlyText: 'Esta ventana solo muestra. Cierra todas las ventanas de esta app y ábrela otra vez.',
  lost: (records: number) => `Había ${records} registros, y el navegador los ha perdido`,
  lostText:
    'La segunda copia de este teléfono tampoco está. Incorpora tu última copia; nada más los trae de vuelta.',
  recovered: (records: number) =>
    records === 1
      ? '1 registro tomado de la segunda copia'
      : `${records} registros tomados de la segunda copia`,
  recoveredText: 'El navegador los había perdido. Están todos. Saca ahora una copia.',
  some: (back: number, of: number) => `${back} de ${of} registros tomados de la segunda copia`,
  someText: (missing: number) =>
    missing === 1
      ? 'El navegador los había perdido. Falta 1: la segunda copia no lo tenía entero. Incorpora tu última copia.'
      : `El navegador los había perdido. Faltan ${missing}: la segunda copia no los tenía enteros. Incorpora tu última copia.`,
  fellBack: 'La versión nueva no arrancó',
  fellBackText: 'Se muestra la anterior. La siguiente llega sola.',
  file: 'Guardar un archivo',
  again: 'Probar otra vez',
  takeIn: 'Incorporar una copia',
  noted: 'Entendido',
}
