import type { kilnCare as english } from '../en/kiln-care.ts'

/** Spanish of what to mind at the kiln, as it is loaded, fired, cooled and unloaded. */
export const kilnCare: typeof english = {
  shelf:
    'Horno desconectado. Placas a dos manos. Su capa protectora es sílice y el esmalte viejo corta: moja, guantes, gafas.',
  light:
    'Primero, el manual del fabricante y las normas locales; electricidad y gas, solo por personas autorizadas. Quédate junto al horno, fuera del humo de la cera; extracción desde el principio, nada cerca que arda, alarma de CO encendida.',
  glass:
    'Guantes de calor, la cara a un lado: sale vapor. El vidrio con pinzas. Extracción en marcha, nada cerca que arda, alarma de CO encendida; primero, el manual.',
  spy: 'Quédate junto al horno. Mirilla: gafas oscuras homologadas, a un brazo de distancia.',
  off: 'Apaga como dice el manual del fabricante; el gas, cerrado en su llave. Quédate hasta que baje: un relé puede pegarse. Por fuera quema.',
  cool: 'Por fuera quema. El manual puede pedir más frío.',
  lid: 'Guantes de calor, la cara lejos de la rendija.',
  open: 'Guantes de calor, luego contra cortes. Esquirlas y gotas: amola en mojado, protege los ojos. Lo que se desconcha son astillas: nunca para alimentos, nunca otra vez al fuego.',
  food: 'Esta app no puede saber si una pieza es segura para alimentos.',
}
