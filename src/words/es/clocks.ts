/** The hour with its article: "las 18:20", "la 1:05"; what begins with a day, as "mañana 18:20", goes without. */
export const hour = (clock: string): string =>
  /^\d+:/.test(clock) ? `${/^0?1:/.test(clock) ? 'la' : 'las'} ${clock}` : clock

/** When something was or will be: "a las 18:20", "ayer 18:20". */
export const at = (clock: string): string => (/^\d+:/.test(clock) ? `a ${hour(clock)}` : clock)

/** Of what a thing of that moment is: "de las 18:20", "de ayer 18:20", "del lunes 18:20". */
export const of = (clock: string): string =>
  /^(\d+:|ayer|hace)/.test(clock) ? `de ${hour(clock)}` : `del ${clock}`

/** An estimated moment: "hacia las 18:20", "mañana hacia las 10:34". */
export const about = (clock: string): string => {
  const [, day = '', time] = /^(.*?)(\d+:.*)$/.exec(clock) ?? []
  return time === undefined ? `hacia ${clock}` : `${day}hacia ${hour(time)}`
}
