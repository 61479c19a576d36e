let tag = 'en'
const made = new Map<string, Intl.NumberFormat>()

/** Says in which language numbers are written, as a tag of BCP 47: before anything is drawn. */
export const writeNumbersIn = (language: string): void => {
  tag = language
}

/** A number with so many decimals at most, and at least: `2,5` where decimals come after a comma. */
export function decimal(value: number, most: number, least = most, language = tag): string {
  const key = `${language} ${most} ${least}`
  const by =
    made.get(key) ??
    new Intl.NumberFormat(language, {
      minimumFractionDigits: least,
      maximumFractionDigits: most,
      useGrouping: false,
    })
  made.set(key, by)
  return by.format(value)
}

/** A number with no more decimals than it has, two at most. */
export const plain = (value: number): string => decimal(value, 2, 0)

/** A text with the decimal points of its numbers as the language writes them. */
export const marked = (text: string): string => {
  const mark = decimal(0.5, 1).replace(/\p{Nd}/gu, '')
  return mark === '.' ? text : text.replace(/(\d)\.(?=\d)/g, `$1${mark}`)
}
