/** So many random bytes as hexadecimal digits. `randomUUID` is kept from pages that are not served safely; this is not. */
export const randomId = (bytes: number): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(bytes)), (byte) =>
    byte.toString(16).padStart(2, '0'),
  ).join('')
