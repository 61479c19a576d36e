import type { help as english } from '../en/help.ts'

/** Spanish of the help. */
export const help: typeof english = {
  title: 'Ayuda',
  toBench: 'Mesa',
  more: 'Cada tarjeta trae también su aviso. Fichas, manuales y normas locales van antes que esta página.',
  stages: {
    setup: {
      title: 'Preparar',
      lines: [
        'Nombra cada cubo como dice su tapa. Remuévelo, pesa un vaso, guarda la lectura.',
        'Di qué capas van y en qué orden. Pon cada pieza en su lugar.',
        'Mira cada pieza por si hay grietas. Dale un toque con el nudillo: si suena a roto, hay una que no se ve.',
      ],
      caution:
        'Esmalte seco y barro seco son polvo de sílice: trabaja en mojado, friega, nunca barras. Ten a mano la ficha de seguridad de cada fabricante.',
    },
    wax: {
      title: 'Encerar y limpiar',
      lines: [
        'Encera el pie hasta la línea, todo alrededor: ahí no se pega esmalte.',
        'Limpia la pieza con esponja húmeda: sobre polvo el esmalte se recoge.',
        'Las dos tienen que secarse. El teléfono también lo cuenta.',
      ],
      caution:
        'La cera caliente quema y puede arder: termostato y extracción, no la dejes sola. Si arde: apaga, tapa, nunca agua. Mandan las normas locales.',
    },
    dip: {
      title: 'Bañar',
      lines: [
        'Remueve desde el fondo hasta que no quede nada abajo.',
        'Con la pieza en la mano, golpea EMPEZAR. Métela con DENTRO, sácala con FUERA.',
        'Deja que escurra, limpia el pie, ponla en su lugar.',
        'Si duró de más o era otra pieza: Corregir.',
      ],
      caution:
        'Guantes donde lo diga una etiqueta o la tarjeta. Nada de comida junto a los cubos. La batidora necesita un diferencial (GFCI) probado; su enchufe es cosa de un electricista autorizado.',
    },
    wait: {
      title: 'Esperar',
      lines: [
        'Una capa tiene que perder su agua antes de la siguiente: si no, se despega, se agrieta o sale fina.',
        'El teléfono cuenta cada espera y llama. Toca el esmalte y di qué notaste: así aprende.',
        'Mientras, te da otras piezas.',
      ],
      caution: 'Un ventilador no debe levantar polvo, ni tener el cable en lo mojado.',
    },
    end: {
      title: 'Terminar',
      lines: [
        'Limpia cada borde, cierra cada tapa, anota el nivel.',
        'Lava las herramientas en el cubo de decantar, no en el desagüe.',
        'Friega en mojado. Lávate las manos; deja allí el delantal.',
      ],
      caution:
        'Lo que puede ir al desagüe o a la basura depende de las normas de tu lugar: pregunta a quien lo gestiona.',
    },
    load: {
      title: 'Cargar',
      lines: [
        'Solo piezas secas para el horno: la tabla dice cuándo.',
        'Cada pie sin esmalte, placas protegidas, sitio en torno a cada pieza y bajo cada placa.',
        'Pon los conos donde los vea la mirilla.',
      ],
      caution:
        'Un horno lo colocan, conectan y ventilan personas autorizadas, según su manual y las normas locales. Se corta en su interruptor antes de meter una mano.',
    },
    fire: {
      title: 'Cocer',
      lines: [
        'Seca antes en el horno lo húmedo: el vapor revienta piezas.',
        'Anota lecturas. Que ya está lo dice el cono, no el reloj.',
        'Quédate cerca hasta que se apague: los controles fallan.',
      ],
      caution:
        'Humos: extracción en marcha, nadie en la sala. Por fuera quema: lejos los niños y lo que arde. Mira con gafas hechas para hornos. Mandan el manual y las normas locales.',
    },
    open: {
      title: 'Abrir',
      lines: [
        'Espera a que esté frío: la tarjeta del horno dice cuándo.',
        'Saca las piezas con guantes; las gotas cortan como vidrio.',
        'Di qué hizo cada pieza: enseña para la próxima cocción.',
      ],
      caution:
        'Que un esmalte se vea bien no dice que sea seguro para alimentos: solo lo dice una prueba de laboratorio de tu pieza cocida.',
    },
  },
}
