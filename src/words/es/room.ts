import type { room as english, Looked } from '../en/room.ts'
import { at } from './clocks.ts'
import { isOne } from './counts.ts'

const images = (n: number): string => (isOne(n) ? '1 imagen' : `${n} imágenes`)

/** Spanish of the room. */
export const room: typeof english = {
  title: 'Taller',
  doors: {
    air: 'Aire',
    kiln: 'Horno',
    clay: 'Barro',
    count: 'Cuenta y sonido',
    phone: 'Este teléfono',
    keep: 'Guardar',
  },
  help: 'Ayuda',
  noKiln: 'sin hora puesta',
  kilnAt: (when: string) => `se enciende ${when}`,
  clayStands: (wall: string, cone: string, takes: string) =>
    `paredes de ${wall}, cono ${cone}, toma ${takes}`,
  countStands: (lead: string, sound: string) => `${lead} hasta DENTRO, ${sound}`,
  copiedShort: (days: number | undefined) =>
    days === undefined
      ? 'aún sin copia fuera'
      : days === 0
        ? 'copiado hoy'
        : isOne(days)
          ? `copiado hace ${days} día`
          : `copiado hace ${days} días`,
  temp: 'Temperatura',
  rh: 'Humedad',
  draught: 'Aire junto a las piezas',
  clayHelp: 'El barro de la tabla: para piezas nuevas; cualquiera puede diferir.',
  wall: 'Pared',
  footLine: 'Altura de la línea del pie',
  cone: 'Cono de bizcocho',
  absorption: 'Absorción',
  absorptionHelp: 'Agua que toma, en peso, en remojo frío.',
  drinksLittle: (cone: string) => `El bizcocho a cono ${cone} bebe poco: espera capas finas.`,
  bisque: 'El bizcocho llega',
  bisques: { dry: 'seco', damp: 'húmedo', washed: 'lavado' },
  bisqueHelp:
    'Lavado bajo el grifo o húmedo, tiene que secar antes de cera y esmalte. Cualquier pieza puede diferir.',
  units: 'Unidades',
  unit: { metric: 'mm, °C, litros', us: 'pulgadas, °F, galones' },
  leadIn: 'Antes de entrar',
  leadInHelp: 'Del toque a DENTRO.',
  lower: 'Velocidad al bajar',
  drip: 'Escurrido',
  sound: 'Sonido',
  sounds: { voice: 'voz', tones: 'tonos', numerals: 'ninguno' },
  spoken: 'La voz habla',
  heard: {
    title: 'Oír todos los sonidos',
    none: 'El sonido está en ninguno.',
    tones: {
      heard: 'Tu golpe cuenta',
      low: 'Un pulso antes de DENTRO',
      in: 'DENTRO: ahora entra',
      tick: 'Un segundo dentro',
      rise: 'El último segundo: viene FUERA',
      out: 'FUERA: levántala ya',
      drip: 'Ya escurrió: sigue el pie o el borde',
      hold: 'Se mantiene una tecla',
      refused: 'No cuenta',
    },
    call: (glaze: string) => `Una pieza para ${glaze} está lista`,
  },
  noisy: 'Sala ruidosa: mostrar lo que suena',
  noisyHelp: 'Franjas al borde de la pantalla en cada pulso y llamada, nunca más de dos por segundo.',
  knock: 'Dos golpes en la mesa',
  knocks: { off: 'no', motion: 'sentidos', mic: 'oídos' },
  knockHelp:
    'Sentidos por el sensor de movimiento, u oídos por el micrófono; no se guarda nada. Solo para pasos que no dañan: nunca un baño, nunca SECA.',
  knockStates: {
    off: '',
    listening: 'Atento a dos golpes.',
    refused: 'El teléfono no lo permite. Todo lo demás funciona.',
    absent: 'Este teléfono no puede.',
  },
  ring: 'Sonar con la pantalla apagada',
  ringOn: 'Sonar con la pantalla apagada',
  ringHelp:
    'Reproduce una pista casi muda que lleva las llamadas mientras esperan piezas. Detiene tu música.',
  ringProof: {
    proven: 'Al probarlo, sonó en este teléfono con la pantalla apagada.',
    untested: 'Sin probar en este teléfono con este navegador. Deja la pantalla encendida, o pruébalo.',
    failed: 'Al probarlo no sonó. Deja la pantalla encendida, o usa el calendario.',
  },
  ringNever: 'Nada suena cuando el teléfono ha cerrado la app. Solo el calendario.',
  ringTest: 'Probarlo: un minuto',
  ringLock: (clock: string) => `Bloquea ahora el teléfono. Suena ${at(clock)}. Espera, luego vuelve.`,
  ringAsk: '¿Sonó?',
  ringStayed: 'La pantalla estaba encendida cuando tocaba. Bloquéalo justo tras el toque.',
  ringYes: 'Sonó',
  ringNo: 'No sonó',
  ringStop: 'Dejar la prueba',
  ringFailed: 'El teléfono no quiso poner la pista.',
  notices: {
    granted: 'Avisos permitidos: la próxima llamada sale en la pantalla de bloqueo.',
    denied: 'Los avisos están bloqueados en los ajustes del navegador.',
    ask: 'Permitir avisos',
    absent: 'Este navegador no tiene avisos aquí.',
  },
  calendar: 'Esperas largas al calendario',
  calendarHelp:
    'Esperas de más de una hora y secas para el horno, como archivo con el que suena el calendario del teléfono.',
  calendarDone: {
    shared: 'Enviado.',
    saved: 'Guardado como archivo: ábrelo.',
    cancelled: 'No se envió.',
    none: 'Ahora no hay esperas de más de una hora.',
  },
  name: 'Su nombre, hablado',
  nameHelp: 'Mantén la tecla, di el nombre, suelta. Solo en este teléfono.',
  nameRecord: 'Mantén y dilo',
  nameRecording: 'Dilo …',
  namePlay: 'Oír',
  nameDrop: 'Usar la letra',
  nameResults: {
    kept: 'Guardado.',
    refused: 'El micrófono no está permitido. Se llama por su letra.',
    absent: 'Aquí no hay micrófono. Se llama por su letra.',
    nothing: 'No se oyó nada. Mantén hasta haberlo dicho.',
  },
  potters: 'Personas en este teléfono',
  potterCounts: { one: 'una', two: 'dos' },
  kilnOn: 'Hora de encender el horno',
  kilnOnRange: (days: number) => `De ahora a ${days} días; vacío: sin horno a la vista.`,
  load: 'Cargar tarda',
  candle: 'Secar en el horno',
  candles: { no: 'no', yes: 'sí' },
  candleHelp:
    'Mantenlo por debajo de la ebullición, extracción abierta, hasta que no salga humedad. Quédate junto al horno; primero, su manual y las normas locales.',
  dippedBy: (when: string) => `Todas bañadas ${when}`,
  waits: 'Esperas',
  onIt: 'Cera, y capas en total',
  stale: 'Un removido vale',
  wax: 'Cera',
  waxes: { hot: 'caliente', water: 'al agua' },
  waxCaution: 'Cera caliente: termostato, extracción, mangas arriba. Nunca te alejes, nunca agua encima.',
  order: 'Orden',
  orders: { wax: 'cera, luego esponja', wipe: 'esponja, luego cera' },
  ready: 'LISTA quiere decir',
  readies: { touch: 'sin brillo', thirsty: 'con sed otra vez', clock: 'minutos propios' },
  firstWait: 'Tras una primera capa',
  laterWait: 'Tras otras capas',
  kilnWait: 'Hasta seca para el horno',
  readyHelp: 'Con sed espera hasta que la pared pueda beber una capa entera.',
  limit: 'Límite de todas las capas',
  vessel: 'Ancho del recipiente de la franja',
  phoneStands: (units: string, hand: string) => `${units}; mano ${hand}`,
  language: 'Idioma',
  asPhone: 'como el teléfono',
  hand: 'Mano que trabaja',
  hands: { right: 'derecha', left: 'izquierda' },
  theme: 'Aspecto',
  themes: { auto: 'como el teléfono', paper: 'papel', dim: 'oscuro' },
  alone: 'Solo la mesa',
  aloneHelp: 'Para el teléfono de un alumno: ninguna otra página. Mantener una tecla 3 s lleva de vuelta.',
  backUp: 'Sacar una copia',
  backedUp: { shared: 'Enviada.', saved: 'Guardada como archivo.', cancelled: 'No se sacó copia.' },
  failed: 'No funcionó. Nada ha cambiado.',
  otherPhone: 'Otro teléfono: mostrar o leer códigos',
  sheets: 'Hoja de cálculo e imágenes, en un zip',
  passedSheets: { shared: 'Enviado.', saved: 'Guardado como archivo.', cancelled: 'No se envió.' },
  takeIn: 'Incorporar una copia',
  looked: ({ day, records, pots, pictures, fresh }: Looked) =>
    `${day ? `Del ${day}: ` : ''}${records} ${isOne(records) ? 'nota' : 'notas'}, ${pots} ${isOne(pots) ? 'pieza' : 'piezas'}${pictures > 0 ? `, ${images(pictures)}` : ''}. ${fresh} aún no aquí.`,
  notes: 'Una nota es una cosa dicha o hecha: una pieza puesta, un baño, un toque.',
  unclocked: (n: number) =>
    isOne(n)
      ? 'El reloj de un teléfono del archivo nunca se comparó: sus esperas se dicen como si fuera igual que este. Para estar seguro, usa los códigos con él.'
      : `Los relojes de ${n} teléfonos del archivo nunca se compararon: sus esperas se dicen como si fueran igual que este. Para estar seguro, usa los códigos con ellos.`,
  join: 'Unir con esta mesa',
  whose: '¿Seguirá este teléfono en lugar del que hizo el archivo?',
  goOn: 'Sí: aquel se perdió o se cambió',
  another: 'No: es otro teléfono de su mesa',
  clock: (there: string, here: string) =>
    `El reloj de ese teléfono marcaba ${there} al hacer el archivo. Aquí son las ${here}. De eso dependen las esperas.`,
  justNow: 'Se hizo hace un momento',
  agree: 'Se hizo antes; los relojes van iguales',
  clockElse: '¿Ninguna? Déjala y usa los códigos: comparan los relojes.',
  clockGone: '¿Ninguna? Sus esperas pueden fallar: toca cada pieza antes del próximo baño.',
  leave: 'Dejarla',
  tookIn: (added: number, known: number) => `${added} nuevos, ${known} ya conocidos.`,
  photosIn: (n: number) => (isOne(n) ? `${images(n)} nueva.` : `${images(n)} nuevas.`),
  photosLost: (n: number) =>
    isOne(n) ? `${images(n)} no se pudo leer o guardar.` : `${images(n)} no se pudieron leer o guardar.`,
  photosLeft: (n: number) =>
    isOne(n)
      ? `${images(n)} no va dentro: no se pudo leer en este teléfono.`
      : `${images(n)} no van dentro: no se pudieron leer en este teléfono.`,
  photosGo: (n: number, size: string) =>
    isOne(n) ? `${images(n)} va dentro, ${size}.` : `${images(n)} van dentro, ${size}.`,
  notWhole: (read: number, of: number | null) =>
    of === null
      ? `El archivo no está entero: ${read} registros leídos.`
      : `El archivo no está entero: ${read} de ${of}.`,
  leftOut: (n: number) => `${n} fuera: dañados.`,
  waiting: (n: number) => `${n} aparte hasta que una actualización de esta app los conozca.`,
  ahead: (n: number) =>
    `${n} rechazados: van más de un día por delante del reloj de este teléfono. Pon bien los relojes.`,
  refused: {
    'too-large': 'Demasiado grande para una copia nuestra.',
    'not-a-backup': 'No es una copia nuestra. Nada ha cambiado.',
    newer: 'Escrita por una versión más nueva. Actualiza, luego incorpórala.',
  },
  aside: (n: number) =>
    isOne(n)
      ? `${n} registro aparte: dañado, o de una versión más nueva. La copia también los lleva.`
      : `${n} registros aparte: dañados, o de una versión más nueva. La copia también los lleva.`,
  readOnly: 'Solo lectura: aquí ha escrito una versión más nueva.',
  copied: (days: number | undefined) =>
    days === undefined
      ? 'Aún sin copia fuera de este teléfono.'
      : days === 0
        ? 'Última copia fuera de este teléfono: hoy.'
        : isOne(days)
          ? `Última copia fuera de este teléfono: hace ${days} día.`
          : `Última copia fuera de este teléfono: hace ${days} días.`,
  copyHere:
    'Una segunda copia en este teléfono suple si falla su memoria. Borrar los datos del sitio, quitar la app o perder el teléfono se lleva ambas: saca una copia.',
  noCopyHere:
    'Este teléfono no guarda segunda copia. Si la memoria falla, se borra o se pierde, se va todo: saca una copia.',
  lasting: {
    yes: 'El navegador ha prometido no borrar nada por su cuenta.',
    no: 'El navegador puede borrarlo cuando el teléfono se llene.',
  },
  licences: 'Licencias de todo lo que lleva',
  clear: 'Vaciar la mesa (mantén pulsado)',
  clearHelp: 'Se van cubos, series y piezas; los ajustes quedan. Anular lo trae todo de vuelta.',
  cleared: 'La mesa está vacía.',
  install: 'Instalar',
  installBy: 'Usa «Añadir a pantalla de inicio» en el menú del navegador.',
  installed: 'Instalada.',
  offline: 'Lista sin red.',
  notOffline: 'Aún no guardada para usarla sin red.',
  update: 'Actualizar ahora',
  cautions: [
    'La olla de cera: un termostato, extracción en marcha, mangas y cubos lejos, alguien al lado. Apagada tras el último pie.',
    'Desenchufa la batidora antes de tocar el aspa.',
    'Un esmalte con plomo, cadmio, bario, manganeso u otra cosa nociva: usa guantes, lee su hoja de seguridad.',
    'El horno: su manual, las normas locales, alguien que se queda. Extracción en marcha mientras se quema la cera; la instalación, por personas autorizadas.',
    'Las gotas cocidas cortan como navajas: usa guantes, y protege los ojos al picarlas o amolarlas.',
    'Un cubo lleno pesa: dos personas, o una base con ruedas.',
  ],
  about: 'Acerca de',
  aboutText:
    'Esperas y grosores son cálculos desde la pared, las capas y el aire, con su margen. Tu tacto decide.',
  private: 'Sin cuenta. Nada sale de este teléfono si no lo pasas tú.',
}
