/** A moment on a day that has an article: "jueves 18:20", "10 de marzo 18:20"; not "mañana 18:20". */
const onDay = (clock: string): boolean =>
  /^(lunes|martes|miércoles|jueves|viernes|sábado|domingo|\d+ de) /.test(clock)

/** The hour or the day with its article: "las 18:20", "la 1:05", "el jueves 18:20"; "mañana 18:20" goes without. */
export const hour = (clock: string): string =>
  /^\d+:/.test(clock)
    ? `${/^0?1:/.test(clock) ? 'la' : 'las'} ${clock}`
    : onDay(clock)
      ? `el ${clock}`
      : clock

/** From one moment to another: "de 18:20 a mañana 01:05", "del martes 18:20 al jueves 03:46". */
export const fromTo = (from: string, to: string): string =>
  `${onDay(from) ? 'del' : 'de'} ${from} ${onDay(to) ? 'al' : 'a'} ${to}`

/** When something was or will be: "a las 18:20", "ayer 18:20". */
export const at = (clock: string): string => (/^\d+:/.test(clock) ? `a ${hour(clock)}` : clock)

/** Of what a thing of that moment is: "de las 18:20", "de ayer 18:20", "del lunes 18:20". */
export const of = (clock: string): string =>
  /^(\d+:|ayer|mañana|hace)/.test(clock) ? `de ${hour(clock)}` : `del ${clock}`

/** An estimated moment: "hacia las 18:20", "mañana hacia las 10:34". */
export const about = (clock: string): string => {
  const [, day = '', time] = /^(.*?)(\d+:.*)$/.exec(clock) ?? []
  return time === undefined ? `hacia ${clock}` : `${day}hacia ${hour(time)}`
}
