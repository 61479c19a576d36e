/** Guards for what comes into the engine. Each throws RangeError naming the field, the value and the allowed range. */

/** `value` if it lies in [min, max], both ends allowed. NaN and infinities are refused. */
export function inRange(field: string, value: number, min: number, max: number): number {
  if (!(Number.isFinite(value) && value >= min && value <= max))
    throw new RangeError(`${field} is ${value}: must be from ${min} to ${max}`)
  return value
}

/** `value` if it lies strictly between the ends. */
export function between(field: string, value: number, above: number, below: number): number {
  if (!(Number.isFinite(value) && value > above && value < below))
    throw new RangeError(`${field} is ${value}: must be above ${above} and below ${below}`)
  return value
}

/** `value` if it is one of the allowed words. */
export function oneOf<T extends string>(field: string, value: string, allowed: readonly T[]): T {
  const found = allowed.find((word) => word === value)
  if (found === undefined) throw new RangeError(`${field} is ${value}: must be one of ${allowed.join(', ')}`)
  return found
}
